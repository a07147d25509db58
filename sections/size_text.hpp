#pragma once

#include <string>

/// Sizes in words, the way a shop writes them. The unit itself is left to the caller, since
/// "1-1/2 x 0.250 in" names it once.
namespace sections {

/// "1-1/2" when the length is a multiple of 1/64 in, else a decimal as inch_decimal gives it.
[[nodiscard]] std::string inch_fraction(double length);

/// "0.250", "0.120", "1.5748": three decimals where they are exact, else four.
[[nodiscard]] std::string inch_decimal(double length);

/// "38.1", five significant digits at most.
[[nodiscard]] std::string millimeters(double length);

/// "25.4 mm (1 in)"; with `power` 2, 3, 4 for areas, moduli and second moments.
[[nodiscard]] std::string both_units(double value, int power = 1);

}  // namespace sections
