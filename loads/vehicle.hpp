#pragma once

#include <vector>

#include "loads/load_case.hpp"

namespace loads {

/// What a scale and a tape measure give. Unset numbers are optional unless a case needs them.
struct Vehicle {
  double axle_weight = base::kUnset;         ///< both front tires on the scale  [N]
  double tire_radius = base::kUnset;         ///< loaded: hub height  [m]
  double track = base::kUnset;               ///< tire center to tire center  [m]
  double total_weight = base::kUnset;        ///< whole truck; unset = unknown  [N]
  double wheelbase = base::kUnset;           ///< [m]
  double mass_center_height = base::kUnset;  ///< unset = unknown  [m]
  double friction = 0.9;                     ///< tire on ground  [-]
  double unsprung_weight = base::kUnset;     ///< axle and wheels; unset = not in the model  [N]
  bool off_road = false;                     ///< surface class: 4 x static on bumps instead of 3 x

  double brake_share = base::kUnset;  ///< front share of the brake force; unset = tires' limit  [-]

  double engine_torque = base::kUnset;  ///< [N m]
  double gear = base::kUnset;           ///< lowest gear of the gearbox  [-]
  double transfer = base::kUnset;       ///< low range of the transfer case  [-]
  double final_drive = base::kUnset;    ///< [-]
  double driveline_efficiency = 0.85;   ///< [-]

  double articulation = base::kUnset;  ///< most roll of the axle against the frame  [rad]

  double coil_rate = base::kUnset;     ///< one coil  [N/m]
  double strap_rate = base::kUnset;    ///< one limit strap  [N/m]
  double droop_travel = base::kUnset;  ///< ride height to a tight strap  [m]
  double droop_speed = base::kUnset;   ///< of the axle as the strap comes tight  [m/s]
  double damper_takes = 0.0;           ///< share of the energy in droop that the dampers take  [-]

  double slam_speed = base::kUnset;  ///< of the frame onto a bump stop  [m/s]
  double stop_crush = base::kUnset;  ///< how far the stop gives  [m]
  double stop_fill = 0.45;           ///< its energy over force times crush  [-]

  double tire_width = base::kUnset;      ///< on the ground  [m]
  double patch_length = base::kUnset;    ///< of tire on the ground  [m]
  double tire_pressure = base::kUnset;   ///< [Pa]
  double kingpin_offset = base::kUnset;  ///< kingpin to tire center on the ground  [m]
  double steering_arm = base::kUnset;    ///< kingpin to tie rod ball  [m]
  double gear_torque = base::kUnset;     ///< steering gear at its relief, at the pitman shaft [N m]
  double pitman_arm = base::kUnset;      ///< shaft to drag link ball  [m]
  bool inches = false;                   ///< units of what is said in words
  bool operator==(const Vehicle&) const = default;
};

/// The load of each wheel at rest: left and right contact, upward.
/// @throws base::InputError key `vehicle.axle_weight` when it is unset
[[nodiscard]] std::vector<Push> static_pushes(const Vehicle& vehicle);

}  // namespace loads
