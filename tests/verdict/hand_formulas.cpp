#include "tests/verdict/hand_formulas.hpp"

#include <cmath>

namespace hand {
namespace {

struct Block {
  double area;
  double inertia;
};

/// A rectangle with rounded corners: a full-depth middle, two strips beside it, four quarter
/// circles whose centroids lie 4 r / (3 pi) beyond their centers.
Block rounded(double depth, double width, double radius) {
  const double middle = width - 2.0 * radius;
  const double strip = depth - 2.0 * radius;
  const double quarter = kPi * radius * radius / 4.0;
  const double own = std::pow(radius, 4) * (kPi / 16.0 - 4.0 / (9.0 * kPi));
  const double arm = 0.5 * depth - radius + 4.0 * radius / (3.0 * kPi);
  return {middle * depth + 2.0 * radius * strip + 4.0 * quarter,
          middle * std::pow(depth, 3) / 12.0 + 2.0 * radius * std::pow(strip, 3) / 12.0 +
              4.0 * (own + quarter * arm * arm)};
}

}  // namespace

Section tube(double outside, double wall) {
  const double inside = outside - 2.0 * wall;
  const double inertia = kPi / 64.0 * (std::pow(outside, 4) - std::pow(inside, 4));
  return {kPi / 4.0 * (outside * outside - inside * inside), inertia, 2.0 * inertia / outside};
}

Section bar(double diameter) {
  return tube(diameter, 0.5 * diameter);
}

Section box(double depth, double width, double wall, double corner) {
  const Block outer = rounded(depth, width, corner);
  const Block inner = rounded(depth - 2.0 * wall, width - 2.0 * wall, corner - wall);
  const double inertia = outer.inertia - inner.inertia;
  return {outer.area - inner.area, inertia, 2.0 * inertia / depth};
}

double column_stress(double young, double yield, double slenderness) {
  const double elastic = kPi * kPi * young / (slenderness * slenderness);
  return slenderness <= 4.71 * std::sqrt(young / yield) ? std::pow(0.658, yield / elastic) * yield
                                                        : 0.877 * elastic;
}

double euler_load(double young, double inertia, double length) {
  return kPi * kPi * young * inertia / (length * length);
}

}  // namespace hand
