#pragma once

#include "parts/field.hpp"
#include "parts/stick.hpp"

namespace parts {

/// The beam axle as a rigid body with its two coils, or as two that its housing joins between the
/// arms. Its center is midway between the wheels at
/// hub height, over the origin of the case's axes.
struct Axle {
  double coil_spacing = base::kUnset;  ///< coil center to coil center  [m]
  double coil_rate = base::kUnset;     ///< one coil  [N/m]
  double seat_height = base::kUnset;   ///< ground to the coil's lower seat; unset = hub  [m]
  double bump_travel = base::kUnset;   ///< ride height to the bump stop; unset = unknown  [m]
  double stop_rate = base::kUnset;     ///< of one bump stop  [N/m]
  Stick housing;                       ///< tube from arm to arm; unset = rigid
  bool operator==(const Axle&) const = default;
};

template <class Visitor>
void fields(Visitor& v, Axle& axle) {
  using enum Dimension;
  using enum Presence;
  v.quantity({"coil_spacing", required, "coil center to coil center"}, axle.coil_spacing,
             positive(length));
  v.quantity({"coil_rate", required, "one coil"}, axle.coil_rate, positive(stiffness));
  v.quantity({"seat_height", optional, "ground to the lower coil seat", "hub height"},
             axle.seat_height, positive(length));
  v.quantity({"bump_travel", optional, "upward travel to the bump stop", "no bump stops"},
             axle.bump_travel, positive(length));
  v.quantity({"stop_rate", optional, "one bump stop", "no bump stops"}, axle.stop_rate,
             positive(stiffness));
  v.phrase({"housing", optional, "its tube between the arms, with its steel", "a rigid axle"},
           axle.housing);
}

}  // namespace parts
