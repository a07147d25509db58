#pragma once

#include "loads/vehicle.hpp"

/// From vehicle to wheel loads: closed forms.
namespace loads {

/// Weight that a stop moves to the front axle, height / wheelbase x weight x deceleration.
/// @param deceleration  [g]
/// Source: Gillespie, Fundamentals of Vehicle Dynamics, ch. 1 (from memory); the same form with the
///         sign turned for a truck that speeds up: Jazar, Vehicle Dynamics, ch. 2 (read).
[[nodiscard]] double braking_transfer(const Vehicle& vehicle, double deceleration);

/// Deceleration at which the front tires reach their friction; never over the friction itself.
/// Without a brake share each axle brakes as hard as its tires hold.  [g]
[[nodiscard]] double stop_deceleration(const Vehicle& vehicle);

/// Torque of the axle's two shafts together: engine x gear x transfer x final drive x efficiency.
/// [N m]
[[nodiscard]] double axle_torque(const Vehicle& vehicle);

/// Horizontal over vertical force of a free wheel that meets a step, 1 / tan(a), sin(a) = 1 - H/R.
/// @param height_over_radius  in (0, 1)
/// Source: Brown, Robertson, Serpento, Motor Vehicle Structures, p. 22 (read).
[[nodiscard]] double step_ratio(double height_over_radius);

}  // namespace loads
