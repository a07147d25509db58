#include "report/text_table.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include "base/invariant.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

int longest_word(const std::string& text) {
  int longest = 0;
  for (const std::string& line : wrapped_lines(text, 1 << 14)) {
    std::size_t at = 0;
    while (at <= line.size()) {
      const std::size_t end = std::min(line.find(' ', at), line.size());
      longest = std::max(longest, display_width(std::string_view(line).substr(at, end - at)));
      at = end + 1;
    }
  }
  return longest;
}

/// Width at which no cell of a column wraps, and no word of its head.
int content_width(const TextTable& table, std::size_t column) {
  int width = column < table.head.size() ? longest_word(table.head[column].text) : 0;
  for (const std::vector<TableCell>& row : table.rows) {
    if (column < row.size()) width = std::max(width, display_width(row[column].text));
  }
  return width;
}

/// Natural width of each column. The head of a column of numbers wraps rather than widen it.
std::vector<int> natural_widths(const TextTable& table) {
  std::vector<int> widths;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    widths.push_back(content_width(table, c));
    if (c < table.head.size() && !table.columns[c].numbers) {
      widths[c] = std::max(widths[c], display_width(table.head[c].text));
    }
  }
  return widths;
}

int total(const std::vector<int>& widths, const TextTable& table) {
  int sum = std::accumulate(widths.begin(), widths.end(), 0);
  for (std::size_t c = 1; c < table.columns.size(); ++c) sum += table.columns[c].gap;
  return sum;
}

/// Takes columns away until the table fits: first where only the head wraps, then from the widest
/// column of words, and last from whatever is widest.
void shrink(std::vector<int>& widths, const TextTable& table, int width) {
  for (std::size_t c = 0; c < widths.size(); ++c) {
    const int spare = widths[c] - content_width(table, c);
    widths[c] -= std::clamp(total(widths, table) - width, 0, std::max(spare, 0));
  }
  while (total(widths, table) > width) {
    std::size_t widest = widths.size();
    for (std::size_t c = 0; c < widths.size(); ++c) {
      const TableColumn& column = table.columns[c];
      if (column.numbers || widths[c] <= column.least_width) continue;
      if (widest == widths.size() || widths[c] > widths[widest]) widest = c;
    }
    if (widest == widths.size()) {
      widest = static_cast<std::size_t>(
          std::distance(widths.begin(), std::max_element(widths.begin(), widths.end())));
      if (widths[widest] <= 1) return;
    }
    --widths[widest];
  }
}

std::string spaces(int n) {
  return std::string(static_cast<std::size_t>(std::max(n, 0)), ' ');
}

void append_row(std::string& out, const std::vector<TableCell>& row, const TextTable& table,
                const std::vector<int>& widths, int indent, bool color) {
  std::vector<std::vector<std::string>> cells;
  std::size_t height = 1;
  for (std::size_t c = 0; c < row.size(); ++c) {
    cells.push_back(wrapped_lines(row[c].text, widths[c]));
    height = std::max(height, cells.back().size());
  }
  for (std::size_t line = 0; line < height; ++line) {
    std::string text = spaces(indent);
    int pending = 0;  // spaces owed; none are written at the end of a line
    for (std::size_t c = 0; c < cells.size(); ++c) {
      const std::string cell = line < cells[c].size() ? cells[c][line] : "";
      const int rest = widths[c] - display_width(cell);
      if (table.columns[c].numbers) pending += rest;
      if (!cell.empty()) {
        text += spaces(pending) + toned(cell, row[c].tone, color);
        pending = 0;
      }
      if (!table.columns[c].numbers) pending += rest;
      if (c + 1 < table.columns.size()) pending += table.columns[c + 1].gap;
    }
    out += text + "\n";
  }
}

}  // namespace

int natural_width(const TextTable& table) {
  return total(natural_widths(table), table);
}

std::string laid_out(const TextTable& table, int width, bool color, int indent) {
  for (const std::vector<TableCell>& row : table.rows) {
    INVARIANT(row.size() <= table.columns.size());
  }
  std::vector<int> widths = natural_widths(table);
  shrink(widths, table, width - indent);
  std::string out;
  if (!table.head.empty()) append_row(out, table.head, table, widths, indent, color);
  for (const std::vector<TableCell>& row : table.rows) {
    append_row(out, row, table, widths, indent, color);
  }
  return out;
}

}  // namespace report
