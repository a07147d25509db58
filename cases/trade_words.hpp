#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/design.hpp"

/// What a shop says of a tube in words of the trade that have one meaning.
namespace cases {

/// A phrase of sizes in the words that the readers know, and what it was taken as.
struct InFull {
  std::string text;
  std::vector<parts::Assumption> assumed = {};
};

/// "1.5 in OD x 1/8 wall DOM" -> "1.5 in x 1/8 in DOM"; "4 x 2 x 1/4 in C channel A36" without the
/// C; "1-1/2 in sch 40 pipe A53B" -> "1.9 x 0.145 in A53B". Pipe: outside diameter and wall of
/// schedules 40 and 80, NPS 1/2 to 3, ASME B36.10M (from memory).
/// @throws base::InputError without a key: a schedule or size of pipe that is not known here
[[nodiscard]] InFull in_full(std::string_view text);

/// What would do in place of a word that names no steel, such as "chromoly" or "ERW"; empty for
/// others. "; that is 4130: ..."
[[nodiscard]] std::string steel_meant(std::string_view name);

/// The same in place of "C4 x 5.4", which gives a rolled shape by its weight.
[[nodiscard]] std::string shape_meant(std::string_view text);

}  // namespace cases
