#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/units.hpp"
#include "loads/case_builder.hpp"
#include "loads/strap_catch.hpp"
#include "loads/travel_energy.hpp"

namespace loads {
namespace {

std::string speed_words(const Vehicle& v, double speed) {
  return v.inches ? fmt::format("{:.2f} ft/s", speed / (12.0 * base::kInch))
                  : fmt::format("{:.2f} m/s", speed);
}

double coil_push(double at_ride, double rate, double travel) {
  return std::fmax(0.0, at_ride - 2.0 * rate * travel);
}

/// As given, or from what pushes the axle down.
double speed_of_droop(const Vehicle& v, double hanging, std::string_view name) {
  if (!std::isnan(v.droop_speed)) return v.droop_speed;
  const double travel =
      needed(v.droop_travel, "limit_strap.slack", name,
             "the speed of the axle as the strap comes tight (`vehicle.droop_speed`), or "
             "`limit_strap.slack`, the drop from ride height until it is tight");
  const double rate = needed(v.coil_rate, "droop_speed", name,
                             "the speed of the axle as the strap comes tight, or `axle:` with its "
                             "coils");
  const double start = v.axle_weight - hanging;
  return droop_speed(hanging / base::kGravity, start, coil_push(start, rate, travel), travel,
                     v.damper_takes);
}

/// Of both coils at the strap; none where they are not known.
double pushed_at_strap(const Vehicle& v, double hanging) {
  if (std::isnan(v.coil_rate) || std::isnan(v.droop_travel)) return 0.0;
  return coil_push(v.axle_weight - hanging, v.coil_rate, v.droop_travel);
}

}  // namespace

StrapCatch caught_by_straps(const Vehicle& v) {
  const std::string_view name = "strap_catch";
  (void)wheel_weight(v, name);
  StrapCatch out;
  out.weight = needed(v.unsprung_weight, "unsprung_weight", name, "the weight of axle and wheels");
  out.rate = needed(v.strap_rate, "limit_strap.rate", name, "`limit_strap.rate`, of one strap");
  out.speed = speed_of_droop(v, out.weight, name);
  const double mass = out.weight / base::kGravity;
  out.pushed = pushed_at_strap(v, out.weight);
  out.shared = strap_catch_force(mass, 2.0 * out.rate, out.speed, out.pushed);
  out.alone = strap_catch_force(mass, out.rate, out.speed, out.pushed);
  return out;
}

std::vector<LoadCase> strap_catch(const Vehicle& v) {
  LoadCase c = case_of("strap_catch");
  const StrapCatch caught = caught_by_straps(v);
  // Weight pushes by itself, and so do the coils with what is left of their push in the end.
  const double stretch = caught.shared / (2.0 * caught.rate);
  const double lost = std::isnan(v.coil_rate) ? 0.0 : 2.0 * v.coil_rate * stretch;
  const double blow = caught.shared - caught.weight - std::max(0.0, caught.pushed - lost);
  c.pushes = {{Role::axle_center, {0.0, 0.0, -blow}, {}, "axle and wheels, caught"}};
  c.place.heave = -v.droop_travel;
  c.figures = {{"two straps that share, together", caught.shared, Figure::Kind::force},
               {"they stretch", caught.shared / (2.0 * caught.rate), Figure::Kind::length},
               {"one strap that takes all", caught.alone, Figure::Kind::force},
               {"it stretches", caught.alone / caught.rate, Figure::Kind::length}};
  c.basis = fmt::format("axle at {}; {}", speed_words(v, caught.speed), c.basis);
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
  c.basis = fmt::format("{}, {} of crush, energy {:.2f} x force x crush; {}", speed_words(v, speed),
                        v.inches ? fmt::format("{:.3g} in", crush / base::kInch)
                                 : fmt::format("{:.0f} mm", crush / base::kMillimeter),
                        v.stop_fill, c.basis);
  return {c};
}

}  // namespace loads
