#include "loads/axle_formulas.hpp"

#include <algorithm>
#include <cmath>

namespace loads {

double braking_transfer(const Vehicle& v, double deceleration) {
  return v.mass_center_height / v.wheelbase * v.total_weight * deceleration;
}

double stop_deceleration(const Vehicle& v) {
  if (std::isnan(v.brake_share)) return v.friction;
  const double rest = v.brake_share - v.friction * v.mass_center_height / v.wheelbase;
  if (!(rest > 0.0)) return v.friction;
  return v.friction * std::min(1.0, v.axle_weight / v.total_weight / rest);
}

double axle_torque(const Vehicle& v) {
  return v.engine_torque * v.gear * v.transfer * v.final_drive * v.driveline_efficiency;
}

double step_ratio(double height_over_radius) {
  return 1.0 / std::tan(std::asin(1.0 - height_over_radius));
}

}  // namespace loads
