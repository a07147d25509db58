#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "cases/document.hpp"

namespace cases {

inline constexpr std::size_t kDeepest = 30;  ///< mappings and lists within each other

/// What to say of a text that is nested deeper.
[[nodiscard]] std::string too_deep();

/// Checks that a text can be a case file at all, before it is read as YAML.
/// @throws base::InputError with line and column: over 1 MB, a zero byte or another control
///         character, not UTF-8, a tab that indents a line, runaway brackets
void require_plain_text(std::string_view text);

/// The place of a byte of a text: its line, and the character within the line.
/// @param line, byte  counted from 0
[[nodiscard]] Place place_of(std::string_view text, int line, int byte);

}  // namespace cases
