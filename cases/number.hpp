#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace cases {

/// A number at the start of a text, and how many characters it takes.
struct NumberStart {
  double value = 0.0;  ///< infinite for 1e400, not a number for 1/0
  std::size_t length = 0;
};

/// Reads `2`, `-0.25`, `.5`, `5e3`, `1/4`, `1-1/4` or `1 1/4` at the start of a text.
/// @return nothing when the text does not start with a number
[[nodiscard]] std::optional<NumberStart> number_at_start(std::string_view text);

/// Where the number at the end of a text starts ("2 of 1/4" -> 5); text.size() when it does not
/// end with one.
[[nodiscard]] std::size_t number_at_end(std::string_view text);

/// A decimal with `digits` significant digits, without an exponent where that reads well.
[[nodiscard]] std::string decimal(double value, int digits);

}  // namespace cases
