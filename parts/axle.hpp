#pragma once

#include <vector>

#include "parts/field.hpp"
#include "parts/stick.hpp"

namespace parts {

/// One tube of an axle's housing.
struct HousingTube {
  Stick stick;
  double to = 0.0;  ///< where it ends, from the truck's middle, left +; not of the last one, which
                    ///< ends at the right arm  [m]
  bool operator==(const HousingTube&) const = default;
};

/// "80 x 8 mm S355H", or tubes from the left arm to the right one: "80 x 8 mm S355H to 250 mm, then
/// 140 x 12 mm S355H to 50 mm, then 80 x 8 mm S355H".
struct Housing {
  std::vector<HousingTube> tubes;
  [[nodiscard]] bool given() const { return !tubes.empty(); }
  bool operator==(const Housing&) const = default;
};

/// The beam axle as a rigid body with its two coils, or as two that its housing joins between the
/// arms. Its center is midway between the wheels at
/// hub height, over the origin of the case's axes.
struct Axle {
  double coil_spacing = base::kUnset;        ///< coil center to coil center  [m]
  double coil_rate = base::kUnset;           ///< one coil  [N/m]
  double seat_height = base::kUnset;         ///< ground to the coil's lower seat; unset = hub  [m]
  double bump_travel = base::kUnset;         ///< ride height to the bump stop; unset = unknown  [m]
  double stop_rate = base::kUnset;           ///< of one bump stop  [N/m]
  double stop_spacer = base::kUnset;         ///< under each bump stop; unset = none  [m]
  double damper_bump_travel = base::kUnset;  ///< ride height to dampers at their shortest  [m]
  double coil_bump_travel = base::kUnset;    ///< ride height to a coil whose turns touch  [m]
  double joint_bump_travel = base::kUnset;   ///< ride height to a joint at its angle's end  [m]
  double coil_preload = base::kUnset;        ///< one coil at ride height; unset = from weights  [N]
  double seat_rating = base::kUnset;         ///< of one coil seat, from its maker  [N]
  double seat_diameter = base::kUnset;       ///< of the weld around a coil seat  [m]
  double seat_weld = base::kUnset;           ///< leg of its fillet  [m]
  double stop_rating = base::kUnset;         ///< of one bump stop, from its maker  [N]
  double pad_diameter = base::kUnset;        ///< of the weld around a bump stop's pad  [m]
  double pad_weld = base::kUnset;            ///< leg of its fillet  [m]
  Housing housing;                           ///< from arm to arm; unset = rigid
  bool operator==(const Axle&) const = default;
};

/// Upward travel from ride height until the bump stop is met; unset = unknown.  [m]
[[nodiscard]] inline double stop_travel(const Axle& axle) {
  return axle.bump_travel - (axle.stop_spacer > 0.0 ? axle.stop_spacer : 0.0);
}

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
  v.quantity({"stop_spacer", optional, "spacer under each bump stop, taken off its travel", "none"},
             axle.stop_spacer, positive(length));
  v.quantity({"damper_bump_travel", optional,
              "upward travel until the dampers are at their shortest", "not compared"},
             axle.damper_bump_travel, positive(length));
  v.quantity(
      {"coil_bump_travel", optional, "upward travel until a coil's turns touch", "not compared"},
      axle.coil_bump_travel, positive(length));
  v.quantity({"joint_bump_travel", optional,
              "upward travel until a joint is at the end of its angle", "not compared"},
             axle.joint_bump_travel, positive(length));
  v.quantity({"coil_preload", optional, "what one coil carries at ride height",
              "half of `axle_weight` less `unsprung_weight`"},
             axle.coil_preload, positive(force));
  v.quantity({"seat_rating", optional, "load that one coil seat may carry, from its maker",
              "its load is not judged"},
             axle.seat_rating, positive(force));
  v.quantity({"seat_diameter", optional, "diameter of the weld around a coil seat",
              "that weld is not checked"},
             axle.seat_diameter, positive(length));
  v.quantity(
      {"seat_weld", optional, "leg of the fillet around a coil seat", "that weld is not checked"},
      axle.seat_weld, positive(length));
  v.quantity({"stop_rating", optional, "load that one bump stop may carry, from its maker",
              "its load is not judged"},
             axle.stop_rating, positive(force));
  v.quantity({"pad_diameter", optional, "diameter of the weld around a bump stop's pad",
              "that weld is not checked"},
             axle.pad_diameter, positive(length));
  v.quantity({"pad_weld", optional, "leg of the fillet around a bump stop's pad",
              "that weld is not checked"},
             axle.pad_weld, positive(length));
  v.phrase(
      {"housing", optional, "its tube or tubes between the arms, with their steel", "a rigid axle"},
      axle.housing);
}

}  // namespace parts
