#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "fea/solver.hpp"
#include "parts/assembly.hpp"

namespace studies {

/// How far a joint has turned from ride height, its bolt turning with what holds the bolt.
struct JointAngles {
  std::string part;
  std::string where;
  bool ball = false;
  double twist = base::kUnset;  ///< about its bolt; unset for a ball, which turns freely  [rad]
  /// Of a bushing: of its sleeve against its bolt (cone angle). Of a ball: how far its bar leaves
  /// the place square to its bolt or stud that it had at ride height.  [rad]
  double tilt = base::kUnset;
  double most_tilt = base::kUnset;  ///< allowed; unset = not given  [rad]
  double give = base::kUnset;       ///< of a bushing, across its bolt  [m]
};

/// Between the sleeve and the shell of a common bonded bushing, of radii 12 and 25 mm: a rate that
/// squeezes it by more knows nothing of its coming up solid. Proposal, no source.  [m]
inline constexpr double kBushingThickness = 0.013;

/// @param solution  converged
[[nodiscard]] JointAngles angles_of(const parts::TurningJoint& joint,
                                    const parts::Assembly& assembly, const fea::Solution& solution);

/// What a bump stop or limit strap carries.
struct StopForce {
  std::string name;
  double force = 0.0;  ///< [N]
};

/// Where the axle is in one solved case.
struct AxlePlace {
  std::array<double, 6> moved = {};  ///< its middle from ride height, rotation vector  [m, rad]
  std::vector<JointAngles> joints;
  std::vector<StopForce> stops;
  /// Least and most rise of its coils, bump stops and straps, or of its middle.  [m]
  double lowest_corner = 0.0;
  double highest_corner = 0.0;
  double ground_force = 0.0;   ///< that holds it in its posture, up  [N]
  double ground_moment = 0.0;  ///< about x, left wheel up  [N m]
};

class SetModel;
struct CaseSolution;
}  // namespace studies

namespace parts {
struct DesignCase;
}

namespace studies {

/// Nothing without an axle, or where there is no equilibrium.
[[nodiscard]] std::optional<AxlePlace> axle_place(const SetModel& model,
                                                  const parts::DesignCase& load_case,
                                                  const CaseSolution& solved);

/// The farthest in a posture over its load cases and stiffness sets.
struct PostureExtremes {
  std::string posture;                                   ///< "bump"
  double lowest = base::kUnset, highest = base::kUnset;  ///< heave of the axle's middle  [m]
  double sideways = 0.0;                                 ///< largest either way  [m]
  double roll = 0.0;                                     ///< largest either way  [rad]
  double ground_moment = 0.0;       ///< largest that rolls it so, either way  [N m]
  std::vector<JointAngles> joints;  ///< largest twist and tilt of each, not of one case
  std::vector<StopForce> stops;     ///< largest of each that carries any
};

struct SolvedCase;

/// In the order in which the postures come.
[[nodiscard]] std::vector<PostureExtremes> extremes_of(const std::vector<SolvedCase>& solved);

}  // namespace studies
