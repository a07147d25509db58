#pragma once

#include <optional>

#include "loads/twist_bind.hpp"
#include "parts/design.hpp"

namespace parts {

/// Whether the arm's points lie on the left side. The design has an arm.
[[nodiscard]] bool arm_is_left(const Design& design);

/// What the vehicle's whole articulation does to a pair of radius arms with two bushed bolts each,
/// the bushings at the stiff end of their range, the axle taken as stiff. Nothing without such arms
/// or without the articulation.
[[nodiscard]] std::optional<loads::TwistBindForces> arm_twist(const Design& design);

}  // namespace parts
