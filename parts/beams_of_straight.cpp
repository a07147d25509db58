#include "parts/beams_of_straight.hpp"

#include <algorithm>
#include <cmath>

namespace parts {

int beams_of_straight(const sections::AreaProps& section, const sections::Material& steel,
                      double length, bool held) {
  constexpr double kLongest = 1.3;            // k l
  constexpr double kLongestHeldOfFour = 1.4;  // beyond it a bar may buckle between fixed ends
  const double radius = std::sqrt(std::min(section.iyy, section.izz) / section.area);
  const double at_squash = length / radius * std::sqrt(steel.yield / steel.elastic);
  if (at_squash <= kLongest) return 1;
  if (at_squash <= 2.0 * kLongest) return 2;
  return !held || at_squash <= 4.0 * kLongestHeldOfFour ? 4 : 8;
}

}  // namespace parts
