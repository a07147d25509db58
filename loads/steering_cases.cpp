#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "loads/case_builder.hpp"
#include "loads/parking_moment.hpp"

namespace loads {

std::vector<LoadCase> dry_park_lock_to_lock(const Vehicle& v) {
  LoadCase c = case_of("dry_park_lock_to_lock");
  const double weight = wheel_weight(v, c.id);
  (void)friction(v, c.id);
  const double arm = needed(v.steering_arm, "steering_arm", c.id,
                            "the steering arm's length, kingpin to tie rod ball");
  const ParkingMoment moment = parking_moment(v, weight);
  if (!(moment.value > 0.0)) {
    throw base::InputError(
        std::isnan(v.kingpin_offset) ? "vehicle.kingpin_offset" : "vehicle.tire_width",
        "the load case dry park, lock to lock needs kingpin_offset with "
        "tire_width or patch_length, or tire_pressure; give them, or leave the "
        "case out");
  }
  const double tie_rod = moment.value / arm;
  c.id += "_left";
  c.name += ", to the left";
  c.side = Side::left;
  c.pushes = static_pushes(v);
  // The ground turns back what the steering turns to the left.
  for (const Role knuckle : {Role::left_knuckle, Role::right_knuckle}) {
    c.pushes.push_back({knuckle, {0.0, 0.0, 0.0}, {0.0, 0.0, -moment.value}});
  }
  c.figures = {{"about each kingpin", moment.value, Figure::Kind::moment},
               {"tie rod (one wheel)", tie_rod, Figure::Kind::force},
               {"drag link (both wheels), and through it the lateral link", 2.0 * tie_rod,
                Figure::Kind::force}};
  c.basis = fmt::format("highest of three formulas: {}; {}", moment.formula, c.basis);
  return both_sides(c);
}

std::vector<LoadCase> steering_jammed(const Vehicle& v) {
  LoadCase c = case_of("steering_jammed");
  const double torque = needed(v.gear_torque, "gear_torque", c.id,
                               "the steering gear's torque at its relief pressure");
  const double arm =
      needed(v.pitman_arm, "pitman_arm", c.id, "the pitman arm's length, shaft to drag link ball");
  c.id += "_left";
  c.name += ", to the left";
  c.side = Side::left;
  c.pushes = static_pushes(v);
  c.pushes.push_back({Role::pitman_end, {0.0, torque / arm, 0.0}});
  c.figures = {{"drag link", torque / arm, Figure::Kind::force}};
  return both_sides(c);
}

}  // namespace loads
