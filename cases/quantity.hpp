#pragma once

#include <string>
#include <string_view>

#include "parts/field.hpp"

namespace cases {

/// A quantity that was read.
struct Measured {
  double si = 0.0;
  std::string weight_unit;  ///< "lb", "kg" when a mass was taken as the force of its weight
};

/// Reads `2 in`, `1-1/4 in`, `34"`, `5500 lb`, `35 N/mm`, `12 kip in`, `0.9` (a ratio), ...
/// @return the value in SI, finite
/// @throws base::InputError without a key: no number, not finite, no unit, unknown unit, or a unit
///         of the wrong dimension; says what was found and which units would do
[[nodiscard]] Measured read_quantity(std::string_view text, parts::Dimension dimension);

/// The shortest text that reads back to exactly the same value, in customary units.
/// @param si      finite
/// @param inches  inches and pounds rather than millimeters and newtons
[[nodiscard]] std::string write_quantity(double si, parts::Dimension dimension, bool inches);

/// A value to be read, not read back: four digits in the first customary unit that suits.
/// @param si  finite
[[nodiscard]] std::string shown_quantity(double si, parts::Dimension dimension, bool inches);

struct CustomaryUnit {
  std::string_view name;  ///< empty for a ratio
  double factor = 1.0;    ///< [SI]
};

/// The unit that values of a dimension are written in first: in, lbf, ksi or mm, N, MPa ...
[[nodiscard]] CustomaryUnit customary_unit(parts::Dimension dimension, bool inches);

/// A value that would do, for messages: "9 in" or "230 mm".
[[nodiscard]] std::string_view example_quantity(parts::Dimension dimension, bool inches);

/// @throws base::InputError without a key when the value is outside `limits`
void require_within(double si, std::string_view text, const parts::Quantity& limits, bool inches);

}  // namespace cases
