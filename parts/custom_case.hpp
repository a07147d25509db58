#pragma once

#include <array>
#include <string>

#include "parts/field.hpp"

namespace parts {

inline constexpr std::array<double, 3> kNoVector = {base::kUnset, base::kUnset, base::kUnset};

[[nodiscard]] inline bool is_given(const std::array<double, 3>& vector) {
  return vector[0] == vector[0];
}

/// A load case of the case file: by the forces on the wheels, by the acceleration of the whole
/// truck, or by a force on a point. Axes of the case: forward, left, up.
struct CustomCase {
  std::array<double, 3> left_wheel = kNoVector;    ///< on the wheel, static load included  [N]
  std::array<double, 3> right_wheel = kNoVector;   ///< [N]
  bool at_hub = false;                             ///< the wheel forces act at the hubs
  std::array<double, 3> acceleration = kNoVector;  ///< besides gravity  [m/s^2]
  std::string at;                                  ///< point
  std::array<double, 3> force = kNoVector;         ///< on that point  [N]
  std::array<double, 3> moment = kNoVector;        ///< [N m]
  bool both_sides = false;                         ///< its mirror image is run too
  bool routine = true;                             ///< otherwise abuse
  bool operator==(const CustomCase&) const = default;
};

template <class Visitor>
void fields(Visitor& v, CustomCase& c) {
  using enum Presence;
  v.vector({"left_wheel", optional, "ground on the left wheel: forward, left, up", "none"},
           c.left_wheel, Dimension::force);
  v.vector({"right_wheel", optional, "ground on the right wheel: forward, left, up", "none"},
           c.right_wheel, Dimension::force);
  v.flag({"at_hub", optional, "the wheel forces act at the hubs, not at the ground"}, c.at_hub);
  v.vector({"acceleration", optional, "of the whole truck: forward, left, up"}, c.acceleration,
           Dimension::acceleration);
  v.point({"at", optional, "point the force acts at"}, c.at);
  v.vector({"force", optional, "on that point: x, y, z"}, c.force, Dimension::force);
  v.vector({"moment", optional, "on that point: about x, y, z"}, c.moment, Dimension::moment);
  v.flag({"both_sides", optional, "its mirror image is run too"}, c.both_sides);
  v.flag({"routine", assumed, "happens again and again (otherwise rare abuse)", "routine loads"},
         c.routine);
}

}  // namespace parts
