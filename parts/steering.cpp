#include "parts/steering.hpp"

#include <cmath>

#include "base/input_error.hpp"
#include "parts/design.hpp"

namespace parts {

std::array<double, 3> kingpin(const Design& design, double side) {
  const VehicleEntry& v = *design.vehicle;
  if (std::isnan(v.kingpin_offset)) {
    throw base::InputError("vehicle.kingpin_offset",
                           "`steering:` needs it: kingpin to tire center on the ground, e.g. 3 in");
  }
  return {0.0, side * (0.5 * v.track - v.kingpin_offset), to_vehicle(v).tire_radius};
}

double drag_link_side(const Design& design) {
  return point_of(design, design.steering->knuckle_ball)[1] >= 0.0 ? 1.0 : -1.0;
}

double steering_arm_of(const Design& design) {
  const std::array<double, 3> ball = point_of(design, design.steering->tie_rod_ball);
  const std::array<double, 3> pin = kingpin(design, ball[1] >= 0.0 ? 1.0 : -1.0);
  return std::hypot(ball[0] - pin[0], ball[1] - pin[1]);
}

double wedged_wheel_moment(const Design& design, double across) {
  const std::array<double, 3> from = point_of(design, design.steering->pitman_ball);
  const std::array<double, 3> to = point_of(design, design.steering->knuckle_ball);
  const std::array<double, 3> pin = kingpin(design, drag_link_side(design));
  const double along = across * (to[0] - from[0]) / (to[1] - from[1]);
  return (to[1] - pin[1]) * along - (to[0] - pin[0]) * across;
}

}  // namespace parts
