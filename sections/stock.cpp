#include "sections/stock.hpp"

#include <string_view>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "sections/csv_table.hpp"
#include "sections/data_text.hpp"
#include "sections/size_text.hpp"

namespace sections {
namespace {

std::string mark(std::string_view in_table) {
  if (in_table == "cp") return "common practice";
  INVARIANT(in_table == "seen" || in_table == "memory");
  return in_table == "seen" ? "read" : "from memory";
}

StockItem inch_tube(const CsvRow& row) {
  const RoundTube tube{.outside = row.number("od_in") * base::kInch,
                       .wall = row.number("wall_in") * base::kInch};
  return {.label = fmt::format("{} x {} in DOM tube", inch_fraction(tube.outside),
                               inch_decimal(tube.wall)),
          .list = "round tube, inch",
          .inches = true,
          .shape = tube,
          .mark = mark(row.text("mark"))};
}

StockItem metric_tube(const CsvRow& row) {
  const RoundTube tube{.outside = row.number("od_mm") * base::kMillimeter,
                       .wall = row.number("wall_mm") * base::kMillimeter};
  return {
      .label = fmt::format("{} x {} mm tube", millimeters(tube.outside), millimeters(tube.wall)),
      .list = "round tube, metric",
      .inches = false,
      .shape = tube,
      .mark = mark(row.text("mark"))};
}

StockItem bar(const CsvRow& row, bool inches) {
  const RoundBar round{inches ? row.number("d_in") * base::kInch
                              : row.number("d_mm") * base::kMillimeter};
  return {.label = describe(round, inches),
          .list = inches ? "round bar, inch" : "round bar, metric",
          .inches = inches,
          .shape = round,
          .mark = mark(row.text("mark"))};
}

}  // namespace

std::vector<StockItem> round_stock(bool inches) {
  std::vector<StockItem> items;
  for_each_row(inches ? data::tube_dom_inch() : data::tube_dom_metric(), [&](const CsvRow& row) {
    items.push_back(inches ? inch_tube(row) : metric_tube(row));
  });
  const std::string_view system = inches ? "inch" : "metric";
  for_each_row(data::bar_round(), [&](const CsvRow& row) {
    if (row.text("system") == system) items.push_back(bar(row, inches));
  });
  return items;
}

}  // namespace sections
