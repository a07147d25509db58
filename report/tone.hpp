#pragma once

#include <string>

namespace report {

/// What a word means, for a terminal with colors.
enum class Tone {
  plain,
  label,      ///< the head of a paragraph or a column
  within,     ///< within the limits checked
  over,       ///< over a limit
  undecided,  ///< not decided
};

/// The text, wrapped in the terminal's color codes when `color` is on.
[[nodiscard]] std::string toned(const std::string& text, Tone tone, bool color);

}  // namespace report
