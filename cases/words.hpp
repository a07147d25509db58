#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Plain handling of short texts, without regard to the language of the machine.
namespace cases {

/// Small letters in place of capitals (ASCII).
[[nodiscard]] std::string lower(std::string_view text);

/// Without spaces and tabs at both ends.
[[nodiscard]] std::string_view trim(std::string_view text);

/// Trimmed, with every run of spaces, tabs and line ends as one space.
[[nodiscard]] std::string squeeze(std::string_view text);

/// Small letters without spaces, so that "M16x2" is "M16 x 2".
[[nodiscard]] std::string packed(std::string_view text);

/// The pieces between separators, trimmed; "" gives one empty piece.
[[nodiscard]] std::vector<std::string> split(std::string_view text, std::string_view separator);

/// The words between spaces.
[[nodiscard]] std::vector<std::string> words_of(std::string_view text);

/// @return the items with the separator between them
[[nodiscard]] std::string join(const std::vector<std::string>& items, std::string_view separator);

/// The same words, capitals or not.
[[nodiscard]] bool same_words(std::string_view a, std::string_view b);

/// The text between backquotes, as messages show what was found.
[[nodiscard]] std::string quoted(std::string_view text);

/// "; did you mean `plates`?", or nothing when no candidate comes near.
[[nodiscard]] std::string did_you_mean(std::string_view name,
                                       const std::vector<std::string>& candidates);

[[nodiscard]] bool is_digit(char c);
[[nodiscard]] bool is_letter(char c);

}  // namespace cases
