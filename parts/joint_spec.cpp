#include "parts/joint_spec.hpp"

#include <cmath>

namespace parts {

std::array<double, 6> bushing_rates(BushingGrade grade, Bound bound) {
  using Rates = std::array<double, 6>;
  const bool hard = grade == BushingGrade::hard;
  const Rates low = hard ? Rates{2.0e6, 5.0e6, 5.0e6, 500.0, 1500.0, 1500.0}
                         : Rates{0.4e6, 1.0e6, 1.0e6, 120.0, 300.0, 300.0};
  const Rates high = hard ? Rates{5.0e6, 20.0e6, 20.0e6, 1000.0, 6000.0, 6000.0}
                          : Rates{1.0e6, 5.0e6, 5.0e6, 250.0, 1500.0, 1500.0};
  if (bound == Bound::low) return low;
  if (bound == Bound::high) return high;
  Rates mean = low;
  for (std::size_t i = 0; i < mean.size(); ++i) mean[i] = std::sqrt(low[i] * high[i]);
  return mean;
}

}  // namespace parts
