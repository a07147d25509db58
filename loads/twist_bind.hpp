#pragma once

#include <limits>

#include "base/units.hpp"

namespace loads {

/// Two rigid radius arms, each on two bushed bolts at the axle: when the frame rolls against the
/// axle they wind the axle up.
struct TwistBind {
  double arm_spacing = base::kUnset;   ///< left arm to right arm, b  [m]
  double arm_length = base::kUnset;    ///< axle to frame joint, La  [m]
  double bolt_spacing = base::kUnset;  ///< between an arm's two bolts, d  [m]
  double bushing_rate = base::kUnset;  ///< radial, each, k  [N/m]
  double axle_torsion = std::numeric_limits<double>::infinity();  ///< G J of the housing  [N m^2]
};

struct TwistBindForces {
  double moment = base::kUnset;       ///< in each arm, at the axle  [N m]
  double bolt_couple = base::kUnset;  ///< on each bolt, opposite  [N]
  double travel = base::kUnset;       ///< of each bushing  [m]
  double pivot = base::kUnset;        ///< vertical, at the frame joint  [N]
};

/// M = roll (b / La) / (2 / k_th + b / (G J)), k_th = k d^2 / 2; couple M / d; travel M / (k d).
/// @param roll  of the frame against the axle  [rad]
/// Statics of a stiff arm and a housing in torsion (Saint-Venant); no published source.
[[nodiscard]] TwistBindForces twist_bind(const TwistBind& arms, double roll);

}  // namespace loads
