#pragma once

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "fea/stress_state.hpp"

namespace fea {

/// What a Solution keeps. Numbers are kUnset unless it converged.
struct Solution::Data {
  /// One beam, ready for its resultants at any station.
  struct Cut {
    LoadsBetween loads;                 ///< as seen from the axes of the resultants
    Vector6 start_l = Vector6::Zero();  ///< what acts on end a
    Vector3 gap_l = Vector3::Zero();    ///< moment at end b that statics from end a leaves open
    Eigen::Vector2d about_y = Eigen::Vector2d::Zero();  ///< rotations of a and b from the chord
    Eigen::Vector2d about_z = Eigen::Vector2d::Zero();

    /// (k l)^2 = P l^2 / (E I) of a beam that is pressed and bows, else 0: between its ends it may
    /// bend more than at them, by an eighth of that.
    [[nodiscard]] double bows(const BeamPart& beam) const;
  };

  std::shared_ptr<const BeamParts> beams;  ///< not the system: solutions outlive their factor
  std::size_t n_gaps = 0;
  SolveStatus status = SolveStatus::not_converged;
  double residual = base::kUnset;
  Eigen::VectorXd motion;              ///< full
  std::vector<Vector12> end_forces_l;  ///< one a beam
  std::vector<Cut> cuts;               ///< one a beam
  std::vector<Vector6> springs_s;      ///< what acts on b's side, spring axes
  Eigen::VectorXd reactions;           ///< full; zero where nothing holds

  // Large displacement only.
  std::vector<Matrix3> moved_axes;             ///< one a beam, rows
  std::vector<std::array<Vector6, 2>> ends_g;  ///< placements of the beams' ends
  std::vector<double> gaps;                    ///< force in each
  double local_rotation = base::kUnset;
  std::string words;
  std::shared_ptr<const MovedState> state;
};

/// Where a solution of a system is to be put.
[[nodiscard]] std::shared_ptr<Solution::Data> data_for(const System& system);

/// The answer to `motion`.
/// @param state  the forces that gave Kg in the last solve; null in a linear solution
[[nodiscard]] Solution make_solution(const System& system, const LoadCase& load_case,
                                     const Eigen::VectorXd& motion, const StressState* state);

/// A beam of a frame, perhaps with another section than it has there.
struct BeamAt {
  std::size_t index = 0;
  BeamPart part;
};

/// The forces in some beams by a motion of their ends, undeformed position; all else is unset.
/// @param system  of a frame of the same build, with the same lengths and axes
/// @param loads   between the ends of each of these beams
[[nodiscard]] Solution make_partial(const System& system, const std::vector<BeamAt>& beams,
                                    const std::vector<MemberLoads>& loads,
                                    const Eigen::VectorXd& motion);

/// A solution without numbers.
[[nodiscard]] Solution make_failed(const System& system, SolveStatus status);

}  // namespace fea
