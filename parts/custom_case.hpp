#pragma once

#include <array>
#include <string>

#include "loads/load_case.hpp"
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
  loads::Posture posture = loads::Posture::ride;
  double heave = base::kUnset;  ///< of the axle, held there; unset = free  [m]
  double roll = base::kUnset;   ///< left wheel up, held there; unset = free  [rad]
  bool both_sides = false;      ///< its mirror image is run too
  bool routine = true;          ///< otherwise abuse
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
  constexpr std::array<Word<loads::Posture>, 4> kPostures = {
      Word<loads::Posture>{"ride height", loads::Posture::ride},
      Word<loads::Posture>{"bump", loads::Posture::bump},
      Word<loads::Posture>{"droop", loads::Posture::droop},
      Word<loads::Posture>{"crossed", loads::Posture::crossed}};
  v.choice({"posture", optional, "where the axle stands against the frame", "ride height"},
           c.posture, kPostures);
  v.quantity({"heave", optional, "the axle is held this much above ride height", "free"}, c.heave,
             any(Dimension::length));
  v.quantity({"roll", optional, "the axle is held rolled, left wheel up", "free"}, c.roll,
             any(Dimension::angle));
  v.flag({"both_sides", optional, "its mirror image is run too"}, c.both_sides);
  v.flag({"routine", assumed, "happens again and again (otherwise rare abuse)", "routine loads"},
         c.routine);
}

}  // namespace parts
