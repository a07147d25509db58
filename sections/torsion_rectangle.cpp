#include "sections/torsion_rectangle.hpp"

#include <cmath>

namespace sections {
namespace {

constexpr double kPi = base::kPi;

/// Sum of 1/n^5 over odd n: 31/32 zeta(5).
constexpr double kOddFifthPowers = 1.00452376279513961613;

}  // namespace

RectangleTorsion rectangle_torsion(double side, double other) {
  const bool turned = other > side;  // std::max would lose an unset side, which is NaN
  const double a = turned ? other : side;
  const double b = turned ? side : other;
  // tanh(n pi a / 2b) = 1 - 2 p^n / (1 + p^n) with p = exp(-pi a / b) <= 0.044: the part that
  // stays is summed in closed form, the rest dies away within two or three terms.
  const double p = std::exp(-kPi * a / b);
  double sum = kOddFifthPowers;
  double p_n = p;
  for (int n = 1; n <= 7; n += 2) {
    sum -= 2.0 * p_n / (1.0 + p_n) / std::pow(n, 5);
    p_n *= p * p;
  }
  const double bracket = 1.0 - 192.0 * b / (std::pow(kPi, 5) * a) * sum;
  return {.longer = a, .shorter = b, .constant = a * b * b * b / 3.0 * bracket};
}

double RectangleTorsion::on_long_side(double at) const {
  // cosh(n pi z / b) / cosh(n pi a / 2b), with the large exponentials divided out.
  const double z = 0.5 * longer * std::abs(at);
  const double edge = std::exp(-kPi * (0.5 * longer - z) / shorter);
  const double mirror = std::exp(-2.0 * kPi * z / shorter);
  const double p = std::exp(-kPi * longer / shorter);
  double edge_n = edge;
  double mirror_n = mirror;
  double p_n = p;
  double sum = 0.0;
  for (int n = 1; n <= 31; n += 2) {
    sum += edge_n * (1.0 + mirror_n) / (1.0 + p_n) / (n * n);
    edge_n *= edge * edge;
    mirror_n *= mirror * mirror;
    p_n *= p * p;
  }
  return shorter / constant * (1.0 - 8.0 / (kPi * kPi) * sum);
}

double RectangleTorsion::on_short_side(double at) const {
  // sum over odd n of (-1)^((n-1)/2) tanh(n pi a / 2b) cos(n pi at / 2) / n^2; the mean of the
  // last two partial sums takes most of the remainder off an alternating series.
  const double angle = 0.5 * kPi * at;
  const double step = 2.0 * std::cos(2.0 * angle);
  const double p = std::exp(-kPi * longer / shorter);
  double p_n = p;
  double cosine = std::cos(angle);
  double cosine_before = cosine;  // cos(-angle): the recurrence runs over odd multiples
  double sign = 1.0;
  double sum = 0.0;
  double last = 0.0;
  for (int n = 1; n <= 47; n += 2) {
    last = sign * (1.0 - p_n) / (1.0 + p_n) * cosine / (n * n);
    sum += last;
    const double next = step * cosine - cosine_before;
    cosine_before = cosine;
    cosine = next;
    sign = -sign;
    p_n *= p * p;
  }
  return shorter / constant * 8.0 / (kPi * kPi) * (sum - 0.5 * last);
}

}  // namespace sections
