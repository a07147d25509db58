#pragma once

#include <string>
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
  bool off_road = false;                     ///< 4 x static on bumps instead of 3 x
  bool operator==(const Vehicle&) const = default;
};

/// The names of the built-in cases, in order: "hard_stop", "hard_corner", "both_wheels_hit_hard",
/// "one_wheel_hits_hard", "slid_into_a_curb", "dragged_over_a_rock".
[[nodiscard]] const std::vector<std::string>& case_names();

/// The built-in load cases, left and right where they differ.
/// @param names  which of case_names()
/// @throws base::InputError key `vehicle.wheelbase` etc. when a case needs a number that is unset
[[nodiscard]] std::vector<LoadCase> built_in_cases(const Vehicle& vehicle,
                                                   const std::vector<std::string>& names);

/// The load of each wheel at rest: left and right contact, upward.
[[nodiscard]] std::vector<Push> static_pushes(const Vehicle& vehicle);

}  // namespace loads
