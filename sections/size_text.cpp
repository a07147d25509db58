#include "sections/size_text.hpp"

#include <cmath>
#include <numeric>

#include <fmt/format.h>

#include "base/units.hpp"

namespace sections {
namespace {

/// Far below any tolerance of a mill, far above the rounding of a unit conversion.
constexpr double kExact = 1e-6;  // [in]

bool whole(double value, double tolerance) {
  return std::abs(value - std::round(value)) <= tolerance;
}

}  // namespace

std::string inch_fraction(double length) {
  constexpr int kParts = 64;
  const double inches = length / base::kInch;
  if (!whole(kParts * inches, kParts * kExact) || inches < 0.5 / kParts || inches > 1e4) {
    return inch_decimal(length);
  }
  const int parts = static_cast<int>(std::lround(kParts * inches));
  const int units = parts / kParts;
  const int rest = parts % kParts;
  if (rest == 0) return fmt::format("{}", units);
  const int divisor = std::gcd(rest, kParts);
  const std::string fraction = fmt::format("{}/{}", rest / divisor, kParts / divisor);
  return units == 0 ? fraction : fmt::format("{}-{}", units, fraction);
}

std::string inch_decimal(double length) {
  const double inches = length / base::kInch;
  return whole(1000.0 * inches, 1000.0 * kExact) ? fmt::format("{:.3f}", inches)
                                                 : fmt::format("{:.4f}", inches);
}

std::string millimeters(double length) {
  return fmt::format("{:.5g}", length / base::kMillimeter);
}

std::string both_units(double value, int power) {
  const std::string exponent = power == 1 ? "" : fmt::format("^{}", power);
  return fmt::format("{:.6g} mm{} ({:.5g} in{})", value / std::pow(base::kMillimeter, power),
                     exponent, value / std::pow(base::kInch, power), exponent);
}

}  // namespace sections
