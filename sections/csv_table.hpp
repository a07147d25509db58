#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sections {

/// One row of a table, its cells found by the heading of their column.
class CsvRow {
 public:
  CsvRow(const std::vector<std::string_view>& heading, std::vector<std::string_view> cells)
      : heading_(&heading), cells_(std::move(cells)) {}
  [[nodiscard]] std::string_view text(std::string_view column) const;
  [[nodiscard]] double number(std::string_view column) const;
  /// How far the row is to be trusted: "read", "from memory" or "common practice".
  [[nodiscard]] std::string mark() const;

 private:
  const std::vector<std::string_view>* heading_;
  std::vector<std::string_view> cells_;
};

/// Calls `use(row)` for each row of a table that is compiled in: lines that start with `#` are
/// remarks, then comes one line of headings, then the rows; cells are parted by commas and never
/// quoted. A table that breaks these rules is our own fault and stops the program.
/// @param table  must outlive the views that `use` keeps
template <typename Use>
void for_each_row(std::string_view table, Use use);

/// The cells of one line.
[[nodiscard]] std::vector<std::string_view> split_cells(std::string_view line);

template <typename Use>
void for_each_row(std::string_view table, Use use) {
  std::vector<std::string_view> heading;
  while (!table.empty()) {
    const std::string_view line = table.substr(0, table.find('\n'));
    table.remove_prefix(line.size() < table.size() ? line.size() + 1 : line.size());
    if (line.empty() || line.front() == '#') continue;
    if (heading.empty()) {
      heading = split_cells(line);
    } else {
      use(CsvRow(heading, split_cells(line)));
    }
  }
}

}  // namespace sections
