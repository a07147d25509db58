#pragma once

#include <vector>

#include "fea/member_loads.hpp"

/// The forces in a frame, and the geometric stiffness they give it.
namespace fea {

struct StressState {
  std::vector<Vector12>
      elastic_l;                 ///< K q - strains of each beam, in balance by itself; member axes
  std::vector<Vector12> ends_l;  ///< what acts on each beam's ends: the same, less its loads
  std::vector<Vector6> springs_g;  ///< K times relative motion of each spring, global axes

  /// Largest force and largest moment, each at least what the other makes with `lever`.
  struct Size {
    double force = 0.0;
    double moment = 0.0;
  };
  [[nodiscard]] Size size(double lever) const;

  Size rounding;  ///< what rounding can make of zero in the forces above
};

/// @param motion  full vector
[[nodiscard]] StressState stress_state(const System& system, const LoadCase& load_case,
                                       const Eigen::VectorXd& motion);
/// The same into memory that is there.
void stress_state(const System& system, const LoadCase& load_case, const Eigen::VectorXd& motion,
                  StressState& state);

/// Largest change of a force or a moment, less what rounding can make of it, over the size of what
/// there is: very stiff pieces turn the last digits of a displacement into visible forces.  [-]
/// @param lever  makes forces and moments comparable  [m]
[[nodiscard]] double change(const StressState& before, const StressState& after, double lever);

/// Geometric stiffness: one block a beam (its joints and arms included), one a spring, one a node
/// (dead loads at arms), as System::n_blocks. Applied moments are semi-tangential: no block.
[[nodiscard]] Blocks geometric_stiffness(const System& system, const LoadCase& load_case,
                                         const StressState& state);
/// The same scaled and put together, sooner for a frame of which it is asked for often: from the
/// terms that its beams keep.
/// @param values  gets those of the matrix, in the stored order of System::scaled
void scaled_geometric_stiffness(const System& system, const LoadCase& load_case,
                                const StressState& state, Eigen::VectorXd& values);

}  // namespace fea
