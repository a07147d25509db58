#pragma once

#include <string>
#include <vector>

#include "report/tone.hpp"

namespace report {

struct TableCell {
  std::string text;
  Tone tone = Tone::plain;
};

struct TableColumn {
  bool numbers = false;  ///< right-aligned, and never narrower than its longest number
  int least_width = 8;   ///< of a column of words, when the table must shrink
  int gap = 2;           ///< spaces before it, unless it is the first
};

/// Rows of cells; a cell that does not fit its column goes on in the next line.
struct TextTable {
  std::vector<TableColumn> columns;
  std::vector<TableCell> head;  ///< may wrap, in columns of numbers too
  std::vector<std::vector<TableCell>> rows;
};

/// Width at which no cell wraps, without the indent.
[[nodiscard]] int natural_width(const TextTable& table);

/// The table at most `width` columns wide, every line ending in a newline.
[[nodiscard]] std::string laid_out(const TextTable& table, int width, bool color, int indent = 0);

}  // namespace report
