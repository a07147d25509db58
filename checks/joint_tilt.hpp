#pragma once

#include "checks/finding.hpp"

namespace checks {

/// A ball joint, rod end or bushing that tilts on its bolt as the suspension moves.
struct JointTiltInput {
  double tilt = base::kUnset;           ///< from ride height  [rad]
  double most = base::kUnset;           ///< what its maker allows  [rad]
  double required = 1.0;                ///< an angle is asked for no factor
  double safety_factor = base::kUnset;  ///< multiple of the load at which it gets there
};

/// Tilt against the most that is allowed: beyond it a housing meets its bolt or stud, which no
/// strength covers. Geometry, no source; the angle is its maker's.
[[nodiscard]] Finding joint_tilt(const JointTiltInput& input);

}  // namespace checks
