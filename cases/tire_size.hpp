#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace cases {

/// A tire size as it is printed on the sidewall, and what follows from it.
struct TireSize {
  double outside;     ///< diameter of the new tire, not loaded  [m]
  std::string words;  ///< how it follows: "17 in rim and twice 0.70 of 315 mm"
};

/// Reads "315/70R17", "LT315/70R17", "P235/75 R15 105S" (section width in mm, height of the
/// sidewall in % of it, rim in in) and "37x12.50R17LT" (outside diameter, width, rim).
/// @return nothing when the text is no such size
/// Source: the size designations of ISO 4000-1 and of ETRTO's and the Tire and Rim Association's
/// yearbooks, from memory.
[[nodiscard]] std::optional<TireSize> read_tire_size(std::string_view text);

}  // namespace cases
