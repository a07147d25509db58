#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cases {

/// A list of lengths at the start of a phrase, and what follows it.
struct Sizes {
  std::vector<double> si;          ///< [m]
  std::vector<std::string> found;  ///< as written, each with its unit: "1-1/2 in"
  std::string rest;                ///< what follows, squeezed, without a leading comma
};

/// Reads "1-1/2 x 0.250 in DOM": the last unit serves the sizes before it.
/// @param example  a phrase that would do, for messages
/// @return no sizes and the whole text when it does not start with a number
/// @throws base::InputError without a key: no unit, a size that is not over 0 or not finite
[[nodiscard]] Sizes read_sizes(std::string_view text, std::string_view example);

/// "1.5 x 0.25 in": reads back to exactly the same lengths.
/// @param si  finite  [m]
[[nodiscard]] std::string write_sizes(const std::vector<double>& si, bool inches);

}  // namespace cases
