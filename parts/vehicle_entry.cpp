#include "parts/vehicle_entry.hpp"

#include <cmath>

namespace parts {
namespace {

double given_or(double value, double usual) {
  return std::isnan(value) ? usual : value;
}

}  // namespace

loads::Vehicle to_vehicle(const VehicleEntry& entry) {
  const loads::Vehicle usual;
  constexpr double kLoadedOverFree = 0.965;
  return {.axle_weight = entry.axle_weight,
          .tire_radius =
              std::isnan(entry.hub_height) ? kLoadedOverFree * 0.5 * entry.tire : entry.hub_height,
          .track = entry.track,
          .total_weight = entry.total_weight,
          .wheelbase = entry.wheelbase,
          .mass_center_height = entry.mass_center_height,
          .friction = entry.friction,
          .unsprung_weight = entry.unsprung_weight,
          .off_road = entry.off_road,
          .brake_share = entry.brake_share,
          .engine_torque = entry.engine_torque,
          .gear = entry.gear,
          .transfer = entry.transfer,
          .final_drive = entry.final_drive,
          .driveline_efficiency = given_or(entry.driveline_efficiency, usual.driveline_efficiency),
          .articulation = entry.articulation,
          .coil_rate = base::kUnset,
          .strap_rate = base::kUnset,
          .droop_travel = base::kUnset,
          .droop_speed = entry.droop_speed,
          .damper_takes = given_or(entry.damper_takes, usual.damper_takes),
          .slam_speed = entry.slam_speed,
          .stop_crush = entry.stop_crush,
          .stop_fill = usual.stop_fill,
          .tire_width = entry.tire_width,
          .patch_length = entry.patch_length,
          .tire_pressure = entry.tire_pressure,
          .kingpin_offset = entry.kingpin_offset,
          .steering_arm = entry.steering_arm,
          .gear_torque = entry.gear_torque,
          .pitman_arm = entry.pitman_arm};
}

}  // namespace parts
