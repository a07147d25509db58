#pragma once

#include <cmath>
#include <string>

/// A number as a table prints it: a computed one agrees when it is within half a unit of the last
/// digit.
struct PrintedNumber {
  std::string text;

  [[nodiscard]] bool agrees_with(double computed) const {
    const std::size_t point = text.find('.');
    const std::size_t decimals = point == std::string::npos ? 0 : text.size() - point - 1;
    const double half_unit = 0.5 * std::pow(10.0, -static_cast<double>(decimals));
    return std::abs(computed - std::stod(text)) <= half_unit * (1.0 + 1e-9);
  }
};
