#include "parts/arm_twist.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "parts/stiffness_set.hpp"

namespace parts {

bool arm_is_left(const Design& design) {
  return point_of(design, design.arm->axle_lower)[1] >= 0.0;
}

std::optional<loads::TwistBindForces> arm_twist(const Design& design) {
  if (!design.arm || !design.vehicle || std::isnan(design.vehicle->articulation)) return {};
  const Arm& arm = *design.arm;
  const ArmLayout layout = layout_of(arm);
  const bool on_two_bolts = layout == ArmLayout::joined || layout == ArmLayout::two_bolts;
  if (!on_two_bolts || !arm.mirror || arm.axle_joint.kind != JointKind::bushing) return {};
  const std::array<double, 3> lower = point_of(design, arm.axle_lower);
  const std::array<double, 3> upper = point_of(design, arm.axle_upper);
  const std::array<double, 3> frame = point_of(design, arm.frame);
  const double along = upper[0] - lower[0];
  const double up = upper[2] - lower[2];
  const double spacing = std::hypot(along, up);
  // The couple pushes square to the line between the bolts, in the arm's side view.
  const std::array<double, 6> rates = rates_in(arm.axle_joint, Bound::high);
  // A graded bushing is as stiff one way across its bolt as the other.
  const double rate = arm.axle_joint.grade == BushingGrade::given
                          ? (rates[0] * up * up + rates[2] * along * along) / (spacing * spacing)
                          : rates[1];
  return loads::twist_bind({.arm_spacing = 2.0 * std::abs(lower[1]),
                            .arm_length = std::abs(0.5 * (lower[0] + upper[0]) - frame[0]),
                            .bolt_spacing = spacing,
                            .bushing_rate = rate},
                           design.vehicle->articulation);
}

}  // namespace parts
