#pragma once

#include <optional>
#include <string>

#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// The answer to `compare`: base and variants side by side, or one below the other when they are
/// wider than the screen; then what the brace does, and the cautions.
[[nodiscard]] std::string comparison_text(const studies::Comparison& comparison,
                                          const TextStyle& style);

/// The same without the first line and the cautions, to stand inside another answer.
[[nodiscard]] std::string comparison_body(const studies::Comparison& comparison,
                                          const TextStyle& style);

/// One line a variant, the base first; then what the brace does.
[[nodiscard]] std::string variant_lines(const studies::Comparison& comparison,
                                        const TextStyle& style);

}  // namespace report
