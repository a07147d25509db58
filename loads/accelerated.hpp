#pragma once

#include <array>

#include "loads/vehicle.hpp"

namespace loads {

/// The case in which the whole truck is accelerated: the front axle gets what its wheels carry.
/// Along x each axle takes the share of the force that it has of the weight then (its brake share
/// in a stop, when given); along y its share of the weight at rest; load moves across the axle by
/// height / track (Milliken, Race Car Vehicle Dynamics, from memory); along z all weights grow.
/// @param name, key       of the case, and its key for messages
/// @param acceleration    forward, left, up, on top of gravity  [g]
/// @throws base::InputError when a number is unset that it needs, or a wheel lifts
[[nodiscard]] LoadCase accelerated(const Vehicle& vehicle, const std::string& name,
                                   const std::string& key,
                                   const std::array<double, 3>& acceleration);

}  // namespace loads
