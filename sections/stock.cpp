#include "sections/stock.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "sections/csv_table.hpp"
#include "sections/data_text.hpp"
#include "sections/nearest.hpp"
#include "sections/size_text.hpp"

namespace sections {
namespace {

using base::InputError;

double length(const CsvRow& row, const char* column, bool inches) {
  return row.number(std::string(column) + (inches ? "_in" : "_mm")) *
         (inches ? base::kInch : base::kMillimeter);
}

/// What stands after "# source: " at the head of a table, up to its next remark on marks.
std::string source_of(std::string_view table) {
  constexpr std::string_view kStart = "# source: ";
  INVARIANT(table.substr(0, kStart.size()) == kStart);
  std::string_view line = table.substr(kStart.size(), table.find('\n') - kStart.size());
  return std::string(line);
}

using MakeItem = std::optional<StockItem> (*)(const CsvRow& row, bool inches);

std::optional<StockItem> round_tube(const CsvRow& row, bool inches) {
  const RoundTube tube{length(row, "od", inches), length(row, "wall", inches)};
  const std::string label =
      inches
          ? fmt::format("{} x {} in DOM tube", inch_fraction(tube.outside), inch_decimal(tube.wall))
          : fmt::format("{} x {} mm tube", millimeters(tube.outside), millimeters(tube.wall));
  return StockItem{.label = label, .shape = tube};
}

std::optional<StockItem> seamless_tube(const CsvRow& row, bool inches) {
  std::optional<StockItem> item = round_tube(row, inches);
  const auto& tube = std::get<RoundTube>(item->shape);
  item->label =
      fmt::format("{} x {} mm seamless tube", millimeters(tube.outside), millimeters(tube.wall));
  return item;
}

bool of_system(const CsvRow& row, bool inches) {
  return row.text("system") == (inches ? "inch" : "metric");
}

std::optional<StockItem> round_bar(const CsvRow& row, bool inches) {
  if (!of_system(row, inches)) return std::nullopt;
  const RoundBar round{length(row, "d", inches)};
  return StockItem{.label = describe(round, inches), .shape = round};
}

std::optional<StockItem> flat_bar(const CsvRow& row, bool inches) {
  if (!of_system(row, inches)) return std::nullopt;
  const FlatBar flat{.depth = length(row, "b", inches), .width = length(row, "t", inches)};
  return StockItem{.label = describe(flat, inches), .shape = flat};
}

/// Inch lists give the design wall, 0.93 of the one that is ordered; metric ones one wall.
std::optional<StockItem> rectangular_tube(const CsvRow& row, bool inches) {
  const RectangularTube tube{.depth = length(row, "h", inches),
                             .width = length(row, "b", inches),
                             .wall = length(row, inches ? "t_design" : "t", inches),
                             .corner = length(row, "ro", inches)};
  const std::string label = inches ? std::string(row.text("name")) : describe(tube, inches);
  return StockItem{.label = label, .shape = tube};
}

StockList list_of(const char* name, std::string_view table, bool inches, MakeItem make) {
  StockList list{.name = name, .source = source_of(table), .items = {}};
  for_each_row(table, [&](const CsvRow& row) {
    std::optional<StockItem> item = make(row, inches);
    if (!item) return;
    item->list = name;
    item->inches = inches;
    item->mark = row.mark();
    list.items.push_back(std::move(*item));
  });
  return list;
}

// A user's own list.

constexpr std::array<std::string_view, 9> kColumns = {
    "shape", "unit", "depth", "width", "wall", "corner", "label", "price_per_ft", "price_per_m"};
constexpr double kFoot = 12.0 * base::kInch;

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

/// One line of a user's list.
class UserRow {
 public:
  UserRow(const std::vector<std::string_view>& heading, std::string_view line, base::Where where)
      : heading_(heading), cells_(split_cells(line)), where_(std::move(where)) {
    if (cells_.size() == heading.size()) return;
    fail("", fmt::format("{} cells are given under {} headings", cells_.size(), heading.size()));
  }

  [[nodiscard]] StockItem item() const {
    StockItem item{.label = std::string(text("label")),
                   .list = {},
                   .inches = inches(),
                   .shape = shape(),
                   .mark = "as entered",
                   .price = price()};
    try {
      require_valid(item.shape);
    } catch (const InputError& error) {
      fail(column_of(error.where().key, item.shape), error.problem());
    }
    if (item.label.empty()) item.label = describe(item.shape, item.inches);
    return item;
  }

 private:
  [[noreturn]] void fail(std::string key, const std::string& problem) const {
    throw InputError(base::Where{where_.file, where_.line, 1, std::move(key)}, problem);
  }

  [[nodiscard]] std::string_view text(std::string_view column) const {
    const auto found = std::find(heading_.begin(), heading_.end(), column);
    if (found == heading_.end()) return {};
    return trimmed(cells_[static_cast<std::size_t>(found - heading_.begin())]);
  }

  [[nodiscard]] bool inches() const {
    const std::string_view unit = text("unit");
    if (unit != "in" && unit != "mm") fail("unit", fmt::format("`{}` is neither in nor mm", unit));
    return unit == "in";
  }

  [[nodiscard]] double number(const char* column) const {
    const std::string_view cell = text(column);
    double value = base::kUnset;
    const auto result = fast_float::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (result.ec != std::errc() || result.ptr != cell.data() + cell.size()) {
      fail(column, fmt::format("`{}` is no decimal number, e.g. 1.5", cell));
    }
    return value;
  }

  [[nodiscard]] double size(const char* column) const {
    if (text(column).empty()) fail(column, "no value is given; this shape needs one");
    return number(column) * (inches() ? base::kInch : base::kMillimeter);
  }

  /// Of a meter; unset where the list gives none.
  [[nodiscard]] double price() const {
    for (const char* column : {"price_per_ft", "price_per_m"}) {
      if (text(column).empty()) continue;
      const double price = number(column);
      if (!(price > 0.0) || !std::isfinite(price)) {
        fail(column, fmt::format("`{}` is no price over 0", text(column)));
      }
      return column == std::string_view("price_per_ft") ? price / kFoot : price;
    }
    return base::kUnset;
  }

  [[nodiscard]] Shape shape() const {
    const std::string_view word = text("shape");
    if (word == "round_bar") return RoundBar{size("depth")};
    if (word == "round_tube") return RoundTube{size("depth"), size("wall")};
    if (word == "flat_bar") return FlatBar{size("depth"), size("width")};
    if (word == "angle") return Angle{size("depth"), size("width"), size("wall")};
    if (word == "channel") {
      return Channel{size("depth"), size("width"), size("wall"), size("wall")};
    }
    if (word == "rectangular_tube") {
      const double corner = text("corner").empty() ? 2.0 * size("wall") : size("corner");
      return RectangularTube{size("depth"), size("width"), size("wall"), corner};
    }
    fail("shape", fmt::format("`{}` is none of round_bar, round_tube, rectangular_tube, flat_bar, "
                              "channel, angle",
                              word));
  }

  static std::string column_of(const std::string& key, const Shape&) {
    if (key == "diameter" || key == "outside") return "depth";
    return key == "web" || key == "flange" ? "wall" : key;
  }

  const std::vector<std::string_view>& heading_;
  std::vector<std::string_view> cells_;
  base::Where where_;
};

std::vector<std::string_view> user_heading(std::string_view line, const base::Where& where) {
  std::vector<std::string_view> heading = split_cells(line);
  for (std::string_view& column : heading) {
    column = trimmed(column);
    if (std::find(kColumns.begin(), kColumns.end(), column) != kColumns.end()) continue;
    const std::vector<std::string> known(kColumns.begin(), kColumns.end());
    throw InputError(where, fmt::format("unknown column `{}`; did you mean `{}`? There is shape, "
                                        "unit, depth, width, wall, corner, label, "
                                        "price_per_ft, price_per_m",
                                        column, nearest(column, known)));
  }
  for (const std::string_view needed : {"shape", "unit", "depth"}) {
    if (std::find(heading.begin(), heading.end(), needed) != heading.end()) continue;
    throw InputError(where, fmt::format("the column `{}` is missing among the headings", needed));
  }
  return heading;
}

bool is_round(const Shape& shape) {
  return std::holds_alternative<RoundBar>(shape) || std::holds_alternative<RoundTube>(shape);
}

}  // namespace

const std::vector<StockList>& stock_lists() {
  static const std::vector<StockList> all = {
      list_of("round tube, inch", data::tube_dom_inch(), true, round_tube),
      list_of("round bar, inch", data::bar_round(), true, round_bar),
      list_of("rectangular tube, inch", data::tube_rect_inch(), true, rectangular_tube),
      list_of("flat bar, inch", data::flat_bar(), true, flat_bar),
      list_of("round tube, metric", data::tube_dom_metric(), false, round_tube),
      list_of("seamless round tube, metric", data::tube_seamless_metric(), false, seamless_tube),
      list_of("round bar, metric", data::bar_round(), false, round_bar),
      list_of("rectangular tube, metric", data::tube_rect_metric(), false, rectangular_tube),
      list_of("flat bar, metric", data::flat_bar(), false, flat_bar)};
  return all;
}

const std::vector<PlateList>& plate_lists() {
  static const std::vector<PlateList> all = [] {
    std::vector<PlateList> lists;
    for_each_row(data::plate(), [&](const CsvRow& row) {
      const std::string name = fmt::format("plate, {}", row.text("series"));
      if (lists.empty() || lists.back().name != name) {
        lists.push_back({name, source_of(data::plate()), {}});
      }
      lists.back().sizes.push_back(
          {std::string(row.text("label")), row.number("t_mm") * base::kMillimeter, row.mark()});
    });
    return lists;
  }();
  return all;
}

StockList read_stock(std::string_view text, const std::string& file) {
  StockList list{.name = file, .source = "a list of the user's own", .items = {}};
  std::vector<std::string_view> heading;
  base::Where where{file, 0, 1, {}};
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(line.size() < text.size() ? line.size() + 1 : line.size());
    ++where.line;
    if (trimmed(line).empty() || line.front() == '#') continue;
    if (heading.empty()) {
      heading = user_heading(line, where);
      continue;
    }
    list.items.push_back(UserRow(heading, line, where).item());
    list.items.back().list = file;
  }
  if (list.items.empty()) {
    throw InputError(base::Where{file, 0, 0, {}},
                     "holds no sizes; it needs a line of headings (shape,unit,depth,width,wall) "
                     "and a line for each size");
  }
  return list;
}

std::vector<StockItem> round_stock(bool inches) {
  std::vector<StockItem> items;
  for (const char* kind : {"round tube, ", "round bar, "}) {
    const std::string name = kind + std::string(inches ? "inch" : "metric");
    for (const StockList& list : stock_lists()) {
      if (list.name == name) items.insert(items.end(), list.items.begin(), list.items.end());
    }
  }
  return items;
}

std::vector<StockItem> stock_like(const Shape& shape, bool inches,
                                  const std::vector<StockItem>& more) {
  std::vector<StockItem> items;
  if (is_round(shape)) {
    items = round_stock(inches);
  } else {
    for (const StockList& list : stock_lists()) {
      const bool fits =
          list.items.front().inches == inches && list.items.front().shape.index() == shape.index();
      if (fits) items.insert(items.end(), list.items.begin(), list.items.end());
    }
  }
  for (const StockItem& item : more) {
    const bool fits = is_round(shape) ? is_round(item.shape) : item.shape.index() == shape.index();
    if (fits) items.push_back(item);
  }
  return items;
}

}  // namespace sections
