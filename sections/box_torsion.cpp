#include "sections/box_torsion.hpp"

#include <algorithm>

namespace sections {

BoxTorsion box_torsion(const RectangularTube& tube) {
  const double t = tube.wall;
  const double depth = tube.depth - t;
  const double width = tube.width - t;
  const double corner = 0.5 * (tube.corner + std::max(0.0, tube.corner - t));
  const double girth = 2.0 * (depth + width) - 2.0 * corner * (4.0 - base::kPi);
  const double enclosed = depth * width - corner * corner * (4.0 - base::kPi);
  const double k = 2.0 * enclosed * t / girth;
  const double constant = t * t * t * girth / 3.0 + 2.0 * k * enclosed;
  return {.constant = constant, .modulus = constant / (t + k / t)};
}

}  // namespace sections
