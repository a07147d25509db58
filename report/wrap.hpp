#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace report {

/// Columns a text takes on a terminal: one a character, two for a wide one (East Asian, picture).
[[nodiscard]] int display_width(std::string_view utf8);

/// The text with every control character replaced by `?`, so that what a case file says cannot
/// steer the terminal.
[[nodiscard]] std::string without_controls(std::string_view utf8);

/// The text cut into lines of at most `width` columns, at spaces; a number stays with its unit, and
/// a word that is longer than a line is cut. Never empty.
/// @param indent  columns that each line after the first has less
[[nodiscard]] std::vector<std::string> wrapped_lines(std::string_view text, int width,
                                                     int indent = 0);

/// The same as a paragraph, whose lines all start with `first` spaces, and those after the first
/// line with `further` more. Each line ends in a newline.
[[nodiscard]] std::string paragraph(std::string_view text, int width, int first = 0,
                                    int further = 0);

/// The items with `separator` between them.
[[nodiscard]] std::string joined(const std::vector<std::string>& items, std::string_view separator);

/// Adds an item unless it is there.
void add_once(std::vector<std::string>& items, const std::string& item);

}  // namespace report
