#pragma once

#include "loads/vehicle.hpp"
#include "parts/field.hpp"

namespace parts {

/// The vehicle as a tape measure and a scale give it.
struct VehicleEntry {
  double axle_weight = base::kUnset;         ///< [N]
  double tire = base::kUnset;                ///< printed size  [m]
  double hub_height = base::kUnset;          ///< loaded radius; unset = 0.965 of half the tire  [m]
  double track = base::kUnset;               ///< [m]
  double total_weight = base::kUnset;        ///< [N]
  double wheelbase = base::kUnset;           ///< [m]
  double mass_center_height = base::kUnset;  ///< [m]
  double unsprung_weight = base::kUnset;     ///< [N]
  double friction = 0.9;
  bool off_road = false;
  bool operator==(const VehicleEntry&) const = default;
};

template <class Visitor>
void fields(Visitor& v, VehicleEntry& e) {
  using enum Dimension;
  using enum Presence;
  v.quantity({"axle_weight", required, "both front tires on the scale"}, e.axle_weight,
             positive(force));
  v.quantity({"tire", required, "printed tire size (outside diameter)"}, e.tire, positive(length));
  v.quantity({"hub_height", optional, "ground to wheel center, loaded"}, e.hub_height,
             positive(length));
  v.quantity({"track", required, "tire center to tire center"}, e.track, positive(length));
  v.quantity({"total_weight", optional, "the whole truck"}, e.total_weight, positive(force));
  v.quantity({"wheelbase", optional, "front axle to rear axle"}, e.wheelbase, positive(length));
  v.quantity({"mass_center_height", optional, "ground to the truck's mass center"},
             e.mass_center_height, positive(length));
  v.quantity({"unsprung_weight", optional, "axle and wheels without the truck"}, e.unsprung_weight,
             positive(force));
  v.quantity({"friction", assumed, "tire on ground",
              "upper end of dry pavement; Wong, Theory of Ground Vehicles (from memory)"},
             e.friction, {.dimension = ratio, .above = 0.0, .at_most = 2.0});
  v.flag({"off_road", assumed, "bumps at 4 x the static load instead of 3 x", "road use; proposal"},
         e.off_road);
}

/// Loaded radius 0.965 of half the printed size unless the hub height is given (common practice,
/// no source).
[[nodiscard]] loads::Vehicle to_vehicle(const VehicleEntry& entry);

}  // namespace parts
