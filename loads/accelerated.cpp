#include "loads/accelerated.hpp"

#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "loads/axle_formulas.hpp"
#include "loads/case_builder.hpp"

namespace loads {

LoadCase accelerated(const Vehicle& v, const std::string& name, const std::string& key,
                     const std::array<double, 3>& acceleration) {
  const auto& [ax, ay, az] = acceleration;
  const double at_rest = 2.0 * wheel_weight(v, name);
  double front = at_rest * (1.0 + az);
  double along = 0.0;
  if (ax != 0.0) {
    need_transfer(v, name);
    front -= braking_transfer(v, ax);
    const bool stops = ax < 0.0 && !std::isnan(v.brake_share);
    const double share = stops ? v.brake_share : front / (v.total_weight * (1.0 + az));
    along = share * v.total_weight * ax;
  }
  double moved = 0.0;
  if (ay != 0.0) {
    moved = at_rest * ay *
            needed(v.mass_center_height, "mass_center_height", name,
                   "the height of the truck's mass center") /
            needed(v.track, "track", name, "the track");
  }
  const double left = 0.5 * front - moved;  // pushed to the left, the right wheel is outside
  const double right = 0.5 * front + moved;
  if (!(left >= 0.0 && right >= 0.0 && front > 0.0)) {
    throw base::InputError(key, fmt::format("in the load case {} a front wheel lifts ({:.1f} and "
                                            "{:.1f} kN under left and right); give the wheel "
                                            "forces instead, or less",
                                            name, left / 1000.0, right / 1000.0));
  }
  LoadCase c{.id = name, .name = name};
  const double across = at_rest * ay;
  c.pushes = {{Role::left_contact, {along * left / front, across * left / front, left}},
              {Role::right_contact, {along * right / front, across * right / front, right}}};
  c.basis = fmt::format(
      "the whole truck accelerated by {:g}, {:g}, {:g} g as the case file says; "
      "load moves by height over wheelbase and track (from memory)",
      ax, ay, az);
  add_inertia(c, v, acceleration);
  return c;
}

}  // namespace loads
