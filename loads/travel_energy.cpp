#include "loads/travel_energy.hpp"

#include <cmath>

#include "base/units.hpp"

namespace loads {

double strap_catch_force(double mass, double rate, double speed, double pushed) {
  const double weight = mass * base::kGravity + pushed;
  return weight + std::sqrt(weight * weight + rate * mass * speed * speed);
}

double droop_speed(double mass, double spring_start, double spring_end, double travel,
                   double damper_takes) {
  const double pushed = 0.5 * (spring_start + spring_end) + mass * base::kGravity;
  return std::sqrt(2.0 * (1.0 - damper_takes) * pushed * travel / mass);
}

double stop_force(double mass, double speed, double crush, double fill) {
  return mass * speed * speed / (2.0 * fill * crush);
}

}  // namespace loads
