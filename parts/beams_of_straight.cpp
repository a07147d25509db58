#include "parts/beams_of_straight.hpp"

#include <algorithm>
#include <cmath>

namespace parts {

int beams_of_straight(const sections::AreaProps& section, const sections::Material& steel,
                      double length) {
  constexpr double kLongest = 1.3;  // k l
  const double radius = std::sqrt(std::min(section.iyy, section.izz) / section.area);
  const double at_squash = length / radius * std::sqrt(steel.yield / steel.elastic);
  if (at_squash <= kLongest) return 1;
  return at_squash <= 2.0 * kLongest ? 2 : 4;
}

}  // namespace parts
