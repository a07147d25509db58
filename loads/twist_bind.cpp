#include "loads/twist_bind.hpp"

namespace loads {

TwistBindForces twist_bind(const TwistBind& arms, double roll) {
  const double turning = 0.5 * arms.bushing_rate * arms.bolt_spacing * arms.bolt_spacing;
  const double give = 2.0 / turning + arms.arm_spacing / arms.axle_torsion;
  const double moment = roll * (arms.arm_spacing / arms.arm_length) / give;
  return {.moment = moment,
          .bolt_couple = moment / arms.bolt_spacing,
          .travel = moment / (arms.bushing_rate * arms.bolt_spacing),
          .pivot = moment / arms.arm_length};
}

}  // namespace loads
