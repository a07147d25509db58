#include "loads/vehicle.hpp"

#include <cmath>

#include "base/input_error.hpp"

namespace loads {

std::vector<Push> static_pushes(const Vehicle& vehicle) {
  if (!(std::isfinite(vehicle.axle_weight) && vehicle.axle_weight > 0.0)) {
    throw base::InputError("vehicle.axle_weight",
                           "give the weight under both front tires, such as 2900 lbf");
  }
  const double wheel = 0.5 * vehicle.axle_weight;
  return {{Role::left_contact, {0.0, 0.0, wheel}}, {Role::right_contact, {0.0, 0.0, wheel}}};
}

}  // namespace loads
