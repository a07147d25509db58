#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "loads/case_builder.hpp"
#include "loads/travel_energy.hpp"

namespace loads {
namespace {

/// As given, or from what pushes the axle down.
double speed_of_droop(const Vehicle& v, double hanging, std::string_view name) {
  if (!std::isnan(v.droop_speed)) return v.droop_speed;
  const double travel =
      needed(v.droop_travel, "droop_travel", name,
             "the speed of the axle as the strap comes tight (`droop_speed`), or the travel from "
             "ride height to a tight strap");
  const double rate = needed(v.coil_rate, "droop_speed", name,
                             "the speed of the axle as the strap comes tight, or `axle:` with its "
                             "coils");
  const double start = v.axle_weight - hanging;
  const double end = std::fmax(0.0, start - 2.0 * rate * travel);
  return droop_speed(hanging / base::kGravity, start, end, travel, v.damper_takes);
}

}  // namespace

std::vector<LoadCase> strap_catch(const Vehicle& v) {
  LoadCase c = case_of("strap_catch");
  (void)wheel_weight(v, c.id);
  const double hanging =
      needed(v.unsprung_weight, "unsprung_weight", c.id, "the weight of axle and wheels");
  const double rate = needed(v.strap_rate, "strap_rate", c.id, "the rate of one limit strap");
  const double speed = speed_of_droop(v, hanging, c.id);
  const double mass = hanging / base::kGravity;
  const double shared = strap_catch_force(mass, 2.0 * rate, speed);
  const double alone = strap_catch_force(mass, rate, speed);
  c.pushes = {{Role::axle_center, {0.0, 0.0, -shared}, {}, "axle and wheels, caught"}};
  c.figures = {{"two straps that share, together", shared, Figure::Kind::force},
               {"they stretch", shared / (2.0 * rate), Figure::Kind::length},
               {"one strap that takes all", alone, Figure::Kind::force},
               {"it stretches", alone / rate, Figure::Kind::length}};
  c.basis = fmt::format("axle at {:.2f} m/s; {}", speed, c.basis);
  return {c};
}

std::vector<LoadCase> bump_stop_slammed(const Vehicle& v) {
  LoadCase c = case_of("bump_stop_slammed");
  const double weight = wheel_weight(v, c.id);
  const double speed = needed(v.slam_speed, "slam_speed", c.id,
                              "the speed of the frame onto a bump stop, such as 1 m/s");
  const double crush =
      needed(v.stop_crush, "stop_crush", c.id, "how far a bump stop gives, such as 2 in");
  const double unsprung = std::isnan(v.unsprung_weight) ? 0.0 : v.unsprung_weight;
  const double mass = (weight - 0.5 * unsprung) / base::kGravity;
  const double blow = stop_force(mass, speed, crush, v.stop_fill);
  const double fz = (v.off_road ? 4.0 : 3.0) * weight + blow;
  c.pushes = {{Role::left_contact, {0.0, 0.0, fz}}, {Role::right_contact, {0.0, 0.0, fz}}};
  c.figures = {{"each stop, on top of the springs", blow, Figure::Kind::force}};
  c.basis = fmt::format("{:.2f} m/s, {:.0f} mm of crush, energy {:.2f} x force x crush; {}", speed,
                        1000.0 * crush, v.stop_fill, c.basis);
  return {c};
}

}  // namespace loads
