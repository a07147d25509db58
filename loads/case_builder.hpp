#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loads/case_library.hpp"

/// What the builders of load cases share. Internal to loads/.
namespace loads {

/// A number that a case cannot do without.
/// @param key  of the vehicle, or with its part: "limit_strap.rate"
/// @throws base::InputError when it is unset or not over zero
[[nodiscard]] double needed(double value, const char* key, std::string_view case_name,
                            const char* what);

/// Static load of one wheel.  [N]
[[nodiscard]] double wheel_weight(const Vehicle& vehicle, std::string_view case_name);
[[nodiscard]] double friction(const Vehicle& vehicle, std::string_view case_name);

/// Checks what load transfer along the truck needs: weights, wheelbase, height of the mass center.
void need_transfer(const Vehicle& vehicle, std::string_view case_name);

/// Inertia of axle and wheels while the whole truck is accelerated, at the axle's center; nothing
/// when their weight is not given, which leaves out a relief.
/// @param acceleration  x y z  [g]
void add_inertia(LoadCase& load_case, const Vehicle& vehicle,
                 const std::array<double, 3>& acceleration);

/// An empty case of a kind of the library.
[[nodiscard]] LoadCase case_of(std::string_view name);

/// The case and its mirror image, left one first.
[[nodiscard]] std::vector<LoadCase> both_sides(const LoadCase& left);

[[nodiscard]] std::vector<LoadCase> hard_stop(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> hard_stop_in_reverse(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> hard_corner(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> both_wheels_hit_hard(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> one_wheel_hits_hard(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> hole_with_brakes_on(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> square_edge_head_on(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> slid_into_a_curb(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> corner_plus_hole(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> wheel_wedged_low_range(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> full_cross_up(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> strap_catch(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> bump_stop_slammed(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> dry_park_lock_to_lock(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> steering_jammed(const Vehicle& vehicle);
[[nodiscard]] std::vector<LoadCase> dragged_over_a_rock(const Vehicle& vehicle);

}  // namespace loads
