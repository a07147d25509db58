#pragma once

/// Blows at the ends of the suspension's travel, from energy. Statics of energy, common practice.
namespace loads {

/// A hanging mass caught by straps: F = W + sqrt(W^2 + k m v^2), W = m g + what coils still push.
/// @param mass    axle, wheels and what hangs with them  [kg]
/// @param rate    of all straps that hold it  [N/m]
/// @param speed   as the straps come tight  [m/s]
/// @param pushed  by both coils then; taken to last while the straps stretch (cautious)  [N]
/// @return force of all those straps together  [N]
[[nodiscard]] double strap_catch_force(double mass, double rate, double speed, double pushed);

/// Speed of a mass that its springs and its weight push down.
/// @param spring_start, spring_end  force of both coils at ride height and at the strap  [N]
/// @param travel                    [m]
/// @param damper_takes              share of the energy that the dampers take, 0 to 1
/// @return [m/s]
[[nodiscard]] double droop_speed(double mass, double spring_start, double spring_end, double travel,
                                 double damper_takes);

/// Force of a bump stop on top of the springs, m v^2 / (2 eta s).
/// @param mass   that the stop halts  [kg]
/// @param crush  how far the stop gives  [m]
/// @param fill   energy over force times crush: 0.4 to 0.5 for foam or rubber (common practice)
[[nodiscard]] double stop_force(double mass, double speed, double crush, double fill);

}  // namespace loads
