#include "checks/column_strength.hpp"

#include <algorithm>
#include <cmath>

#include "base/units.hpp"

namespace checks {

double column_e3_limit(double elastic, double yield) {
  return 4.71 * std::sqrt(elastic / yield);
}

double column_e3(double elastic, double yield, double slenderness) {
  const double fe = base::kPi * base::kPi * elastic / (slenderness * slenderness);
  if (slenderness <= column_e3_limit(elastic, yield)) return std::pow(0.658, yield / fe) * yield;
  return 0.877 * fe;
}

double flexural_torsional_e4(const FlexuralTorsional& m) {
  const auto sum = [&](double f) {
    return (f - m.about_y) * (f - m.about_z) * (f - m.torsional) -
           f * f * (f - m.about_z) * m.offset_y * m.offset_y -
           f * f * (f - m.about_y) * m.offset_z * m.offset_z;
  };
  // Negative at 0, not negative at the least of the three stresses, one root in between.
  double low = 0.0;
  double high = std::min({m.about_y, m.about_z, m.torsional});
  for (int i = 0; i < 100; ++i) {
    const double middle = 0.5 * (low + high);
    (sum(middle) < 0.0 ? low : high) = middle;
  }
  return high;
}

double round_tube_e7(double elastic, double yield, double diameter_over_wall) {
  // The formula passes 1 by a hair at the lower limit, so it is capped.
  if (diameter_over_wall <= 0.11 * elastic / yield) return 1.0;
  return std::min(1.0, 0.038 * elastic / (yield * diameter_over_wall) + 2.0 / 3.0);
}

double euler_load(double elastic, double second_moment, double effective_length) {
  return base::kPi * base::kPi * elastic * second_moment / (effective_length * effective_length);
}

double johnson_limit(double elastic, double yield) {
  return std::sqrt(2.0 * base::kPi * base::kPi * elastic / yield);
}

double johnson_load(double elastic, double yield, double area, double slenderness) {
  const double drop = yield * slenderness / (2.0 * base::kPi);
  return area * (yield - drop * drop / elastic);
}

double crooked_column(const CrookedColumn& c) {
  const double squash = c.yield * c.area;
  const double sum = squash + (1.0 + c.bow * c.area / c.modulus) * c.euler;
  // The smaller root, in the form that does not cancel when the bow is small.
  return 2.0 * squash * c.euler / (sum + std::sqrt(sum * sum - 4.0 * squash * c.euler));
}

double secant_column(const CrookedColumn& c) {
  const double squash = c.yield * c.area;
  double low = 0.0;
  double high = std::min(c.euler, squash);
  for (int i = 0; i < 100; ++i) {
    const double load = 0.5 * (low + high);
    const double grown = 1.0 / std::cos(0.5 * base::kPi * std::sqrt(load / c.euler));
    (load * (1.0 + c.bow * c.area / c.modulus * grown) < squash ? low : high) = load;
  }
  return 0.5 * (low + high);
}

}  // namespace checks
