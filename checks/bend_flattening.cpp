#include "checks/bend_flattening.hpp"

#include <algorithm>
#include <cmath>

#include "base/invariant.hpp"

namespace checks {

Flattening bend_flattening(const sections::Shape& shape, double radius) {
  INVARIANT(radius > 0.0);
  const auto* tube = std::get_if<sections::RoundTube>(&shape);
  if (tube == nullptr) return {};
  const double middle = 0.5 * (tube->outside - tube->wall);
  const double h = tube->wall * radius / (middle * middle);
  return {std::max(1.0, 1.65 / h), std::max(1.0, 1.30 / std::pow(h, 2.0 / 3.0))};
}

}  // namespace checks
