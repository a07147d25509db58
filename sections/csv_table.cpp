#include "sections/csv_table.hpp"

#include <algorithm>
#include <cstddef>
#include <system_error>

#include <fast_float/fast_float.h>

#include "base/invariant.hpp"
#include "base/units.hpp"

namespace sections {

std::string_view CsvRow::text(std::string_view column) const {
  INVARIANT(cells_.size() == heading_->size());
  const auto found = std::find(heading_->begin(), heading_->end(), column);
  INVARIANT(found != heading_->end());
  return cells_[static_cast<std::size_t>(found - heading_->begin())];
}

double CsvRow::number(std::string_view column) const {
  const std::string_view cell = text(column);
  double value = base::kUnset;
  const auto result = fast_float::from_chars(cell.data(), cell.data() + cell.size(), value);
  INVARIANT(result.ec == std::errc() && result.ptr == cell.data() + cell.size());
  return value;
}

std::string CsvRow::mark() const {
  const std::string_view in_table = text("mark");
  if (in_table == "cp") return "common practice";
  INVARIANT(in_table == "seen" || in_table == "memory");
  return in_table == "seen" ? "read" : "from memory";
}

std::vector<std::string_view> split_cells(std::string_view line) {
  std::vector<std::string_view> cells;
  while (true) {
    const std::size_t comma = line.find(',');
    cells.push_back(line.substr(0, comma));
    if (comma == std::string_view::npos) return cells;
    line.remove_prefix(comma + 1);
  }
}

}  // namespace sections
