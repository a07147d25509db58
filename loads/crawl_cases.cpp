#include <cmath>

#include <fmt/format.h>

#include "loads/axle_formulas.hpp"
#include "loads/case_builder.hpp"

namespace loads {

std::vector<LoadCase> wheel_wedged_low_range(const Vehicle& v) {
  const LoadCase kind = case_of("wheel_wedged_low_range");
  const double weight = wheel_weight(v, kind.id);
  const double radius = needed(v.tire_radius, "tire", kind.id, "the tire's radius");
  (void)needed(v.engine_torque, "engine_torque", kind.id, "the engine's torque");
  (void)needed(v.gear, "gear", kind.id, "the ratio of the lowest gear");
  (void)needed(v.transfer, "transfer", kind.id, "the low ratio of the transfer case");
  const double final_drive =
      needed(v.final_drive, "final_drive", kind.id, "the final drive's ratio");
  const double torque = axle_torque(v);
  const double shaft = torque / final_drive;
  std::vector<LoadCase> out;
  for (const bool forward : {true, false}) {
    for (const double turns : {1.0, -1.0}) {
      LoadCase c = kind;
      c.side = Side::left;
      c.id += fmt::format("_left_{}_{}", forward ? "forward" : "backward",
                          turns > 0.0 ? "shaft_right" : "shaft_left");
      c.name += fmt::format(", left wheel, driving {}, shaft rolls the axle to the {}",
                            forward ? "forward" : "backward", turns > 0.0 ? "right" : "left");
      c.pushes = {
          {Role::left_contact, {(forward ? 1.0 : -1.0) * torque / radius, 0.0, 1.5 * weight}},
          {Role::right_contact, {0.0, 0.0, 0.5 * weight}},
          {Role::axle_center, {0.0, 0.0, 0.0}, {turns * shaft, 0.0, 0.0}, "propeller shaft"}};
      c.figures = {{"torque of both axle shafts", torque, Figure::Kind::moment},
                   {"torque of the propeller shaft", shaft, Figure::Kind::moment}};
      for (LoadCase& one : both_sides(c)) out.push_back(std::move(one));
    }
  }
  return out;
}

std::vector<LoadCase> full_cross_up(const Vehicle& v) {
  LoadCase c = case_of("full_cross_up");
  (void)needed(v.articulation, "articulation", c.id,
               "the most the axle rolls against the frame, such as 10 deg");
  c.id += "_left";
  c.name += ", left wheel up";
  c.side = Side::left;
  c.pushes = static_pushes(v);
  c.place.roll = v.articulation;
  return both_sides(c);
}

std::vector<LoadCase> dragged_over_a_rock(const Vehicle& v) {
  const LoadCase kind = case_of("dragged_over_a_rock");
  const double weight = wheel_weight(v, kind.id);
  const double mu = friction(v, kind.id);
  const auto dragged = [&](Role role, double factor, Need need) {
    LoadCase c = kind;
    c.pushes = static_pushes(v);
    c.pushes.push_back({role, {-mu * factor * weight, 0.0, factor * weight}});
    c.needs = {need};
    c.basis = fmt::format(
        "{:g} x the static load of one wheel up, and {:.2f} of it rearward as "
        "friction; {}",
        factor, mu, c.basis);
    return c;
  };
  LoadCase arm = dragged(Role::left_arm_midspan, v.off_road ? 2.0 : 1.0, Need::arms);
  arm.id += "_left_arm";
  arm.name += ", left arm";
  arm.side = Side::left;
  std::vector<LoadCase> out = both_sides(arm);
  out.insert(out.begin(), dragged(Role::link_midspan, 1.0, Need::lateral_link));
  return out;
}

}  // namespace loads
