#pragma once

#include "loads/vehicle.hpp"
#include "parts/field.hpp"

namespace parts {

/// The vehicle as a tape measure and a scale give it.
struct VehicleEntry {
  double axle_weight = base::kUnset;         ///< [N]
  double tire = base::kUnset;                ///< outside diameter, not loaded  [m]
  double hub_height = base::kUnset;          ///< loaded radius; unset = 0.965 of half the tire  [m]
  double track = base::kUnset;               ///< [m]
  double total_weight = base::kUnset;        ///< [N]
  double wheelbase = base::kUnset;           ///< [m]
  double mass_center_height = base::kUnset;  ///< [m]
  double unsprung_weight = base::kUnset;     ///< [N]
  double friction = 0.9;
  bool off_road = false;
  double brake_share = base::kUnset;
  double engine_torque = base::kUnset;  ///< [N m]
  double gear = base::kUnset;
  double transfer = base::kUnset;
  double final_drive = base::kUnset;
  double driveline_efficiency = base::kUnset;
  double articulation = base::kUnset;  ///< [rad]
  double droop_speed = base::kUnset;   ///< [m/s]
  double damper_takes = base::kUnset;
  double slam_speed = base::kUnset;      ///< [m/s]
  double stop_crush = base::kUnset;      ///< [m]
  double tire_width = base::kUnset;      ///< [m]
  double patch_length = base::kUnset;    ///< [m]
  double tire_pressure = base::kUnset;   ///< [Pa]
  double kingpin_offset = base::kUnset;  ///< [m]
  double steering_arm = base::kUnset;    ///< [m]
  double gear_torque = base::kUnset;     ///< [N m]
  double pitman_arm = base::kUnset;      ///< [m]
  bool operator==(const VehicleEntry&) const = default;
};

template <class Visitor>
void fields(Visitor& v, VehicleEntry& e) {
  using enum Dimension;
  using enum Presence;
  v.quantity({"axle_weight", required, "both front tires on the scale"}, e.axle_weight,
             positive(force));
  v.quantity({"tire", required, "printed tire size: its outside diameter, or as 315/70R17"}, e.tire,
             positive(length));
  v.quantity({"hub_height", optional, "ground to wheel center, loaded",
              "0.965 of half of `tire`; common practice, no source"},
             e.hub_height, positive(length));
  v.quantity({"track", required, "tire center to tire center"}, e.track, positive(length));
  v.quantity({"total_weight", optional, "the whole truck"}, e.total_weight, positive(force));
  v.quantity({"wheelbase", optional, "front axle to rear axle"}, e.wheelbase, positive(length));
  v.quantity({"mass_center_height", optional, "ground to the truck's mass center"},
             e.mass_center_height, positive(length));
  v.quantity({"unsprung_weight", optional, "axle and wheels without the truck", "not counted"},
             e.unsprung_weight, positive(force));
  v.quantity({"friction", assumed, "tire on ground",
              "upper end of dry pavement; Wong, Theory of Ground Vehicles (from memory)"},
             e.friction, {.dimension = ratio, .above = 0.0, .at_most = 2.0});
  v.flag({"off_road", assumed, "bumps at 4 x the static load instead of 3 x", "road use; proposal"},
         e.off_road);
  v.quantity({"brake_share", optional, "front axle's share of the brake force",
              "as much as the tires can"},
             e.brake_share, {.dimension = ratio, .above = 0.0, .at_most = 1.0});
  v.quantity({"engine_torque", optional, "most torque of the engine"}, e.engine_torque,
             positive(moment));
  v.quantity({"gear", optional, "ratio of the lowest gear"}, e.gear, positive(ratio));
  v.quantity({"transfer", optional, "low ratio of the transfer case"}, e.transfer, positive(ratio));
  v.quantity({"final_drive", optional, "ratio of the front axle's final drive"}, e.final_drive,
             positive(ratio));
  v.quantity(
      {"driveline_efficiency", optional, "torque that comes through, engine to wheels", "85 %"},
      e.driveline_efficiency, {.dimension = ratio, .above = 0.0, .at_most = 1.0});
  v.quantity({"articulation", optional, "most roll of the axle against the frame"}, e.articulation,
             {.dimension = angle, .above = 0.0, .at_most = 45 * base::kDegree});
  v.quantity({"droop_speed", optional, "of the axle as the limit straps come tight",
              "from the coils' push and `limit_strap.slack`"},
             e.droop_speed, positive(speed));
  v.quantity(
      {"damper_takes", optional, "share of the energy in droop that the dampers take", "nothing"},
      e.damper_takes, {.dimension = ratio, .at_least = 0.0, .at_most = 0.95});
  v.quantity({"slam_speed", optional, "of the frame onto a bump stop"}, e.slam_speed,
             positive(speed));
  v.quantity({"stop_crush", optional, "how far a bump stop gives"}, e.stop_crush, positive(length));
  v.quantity({"tire_width", optional, "on the ground"}, e.tire_width, positive(length));
  v.quantity({"patch_length", optional, "of tire on the ground"}, e.patch_length, positive(length));
  v.quantity({"tire_pressure", optional, "cold, for the load carried"}, e.tire_pressure,
             positive(stress));
  v.quantity({"kingpin_offset", optional, "kingpin to tire center, on the ground"},
             e.kingpin_offset, not_negative(length));
  v.quantity({"steering_arm", optional, "kingpin to tie rod ball"}, e.steering_arm,
             positive(length));
  v.quantity({"gear_torque", optional, "steering gear at its relief, at the pitman shaft"},
             e.gear_torque, positive(moment));
  v.quantity({"pitman_arm", optional, "shaft to drag link ball"}, e.pitman_arm, positive(length));
}

/// Loaded radius 0.965 of half the printed size unless the hub height is given (common practice,
/// no source).
[[nodiscard]] loads::Vehicle to_vehicle(const VehicleEntry& entry);

}  // namespace parts
