#include "sections/tolerance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "sections/csv_table.hpp"
#include "sections/data_text.hpp"
#include "sections/size_text.hpp"

namespace sections {
namespace {

// A size that was typed in millimeters falls on a row of inches no nearer than this.
constexpr double kSameSize = 0.0006 * base::kInch;
constexpr double kHeavyWall = 0.05;  // where the table has no sure row; common practice, no source
constexpr double kWeldedWall = 0.10;

struct Less {
  double by;  ///< [m]
  const char* mark;
};

std::string taken_off(const char* what, const Less& less) {
  return fmt::format("{} less {} ({})", what, both_units(less.by), less.mark);
}

/// A row of the tables for ASTM A513: what is taken off a diameter or a wall of one range of sizes.
struct A513Row {
  bool drawn;  ///< type 5; else type 1
  std::string quantity;
  double outside_from, outside_to;
  double wall_to;  ///< 0 = any
  Less less;
};

const std::vector<A513Row>& a513_rows() {
  static const std::vector<A513Row> all = [] {
    std::vector<A513Row> list;
    for_each_row(data::tube_tolerance_a513(), [&](const CsvRow& row) {
      list.push_back(
          {.drawn = row.text("a513_type").substr(0, 1) == "5",
           .quantity = std::string(row.text("quantity")),
           .outside_from = row.number("od_from_in") * base::kInch,
           .outside_to = row.number("od_to_in") * base::kInch,
           .wall_to = row.text("wall_to_in").empty() ? 0.0 : row.number("wall_to_in") * base::kInch,
           .less = {row.number("minus_in") * base::kInch,
                    row.text("mark") == "seen" ? "read" : "from memory"}});
    });
    return list;
  }();
  return all;
}

/// What is taken off: of the rows for this outside diameter the one with the next heavier wall.
std::optional<Less> a513(bool drawn, std::string_view quantity, const RoundTube& tube) {
  std::optional<Less> found;
  double nearest = std::numeric_limits<double>::infinity();
  for (const A513Row& row : a513_rows()) {
    if (row.drawn != drawn || row.quantity != quantity) continue;
    if (tube.outside > row.outside_to + kSameSize) continue;
    if (tube.outside < row.outside_from - 2.0 * kSameSize) continue;
    if (row.wall_to > 0.0 && tube.wall > row.wall_to + kSameSize) continue;
    if (!(row.wall_to < nearest)) continue;
    nearest = row.wall_to;
    found = row.less;
  }
  return found;
}

MinimumShape a513_tube(const RoundTube& tube, bool drawn) {
  const char* type = drawn ? "5" : "1";
  std::optional<Less> wall = a513(drawn, "wall", tube);
  const Less heavy{kHeavyWall * tube.wall, "5 %; common practice, no source"};
  if (!wall || (std::string_view(wall->mark) != "read" && wall->by < heavy.by)) wall = heavy;
  const std::optional<Less> outside = a513(drawn, "OD", tube);
  RoundTube least{tube.outside - (outside ? outside->by : 0.0), tube.wall - wall->by};
  std::string basis = fmt::format("ASTM A513 type {}: {}", type, taken_off("wall", *wall));
  if (outside && outside->by > 0.0) basis += ", " + taken_off("outside", *outside);
  if (!outside) basis += ", outside as entered (no row for it here)";
  return {least, true, basis};
}

/// Outside diameter tolerance of EN 10305-1, that of the next larger size in its list.
Less en10305_outside(double outside) {
  double nearest = std::numeric_limits<double>::infinity();
  double by = 0.0;
  for_each_row(data::tube_seamless_metric(), [&](const CsvRow& row) {
    const double size = row.number("od_mm") * base::kMillimeter;
    if (size < outside - kSameSize || !(size < nearest)) return;
    nearest = size;
    by = row.number("od_tol_pm_mm") * base::kMillimeter;
  });
  return {by, "from memory"};
}

MinimumShape en10305_tube(const RoundTube& tube) {
  const Less wall{std::max(0.10 * tube.wall, 0.1 * base::kMillimeter), "read"};
  const Less outside = en10305_outside(tube.outside);
  return {
      RoundTube{tube.outside - outside.by, tube.wall - wall.by}, true,
      fmt::format("EN 10305-1: {}, {}", taken_off("wall", wall), taken_off("outside", outside))};
}

/// @param standard  "ASTM A500"
template <typename Tube>
MinimumShape thinner_by_tenth(Tube tube, const char* standard) {
  const Less wall{kWeldedWall * tube.wall, "10 %, read"};
  tube.wall -= wall.by;
  return {tube, true, fmt::format("{}: {}", standard, taken_off("wall", wall))};
}

std::optional<Less> bar_minus(std::string_view product, std::string_view column, double diameter) {
  std::optional<Less> found;
  for_each_row(data::bar_tolerance_a108(), [&](const CsvRow& row) {
    if (found || row.text("shape") != "round") return;
    if (row.text("product").substr(0, product.size()) != product) return;
    if (diameter > row.number("size_to_in") * base::kInch + 0.1 * kSameSize) return;
    found = Less{row.number(column) * base::kInch, "read"};
  });
  return found;
}

MinimumShape bar(const RoundBar& s, const std::string& standard) {
  const bool rolled = standard == "a29";
  const std::optional<Less> less =
      bar_minus(rolled ? "A29" : "A108",
                standard == "a108_medium" ? "minus_c_028_055_in" : "minus_c_le_028_in", s.diameter);
  const char* name = rolled ? "ASTM A29/A6 hot rolled" : "ASTM A108 cold finished";
  if (!less) return {s, false, fmt::format("{}: no row for a bar this large here", name)};
  if (!(less->by < s.diameter)) return {s, false, fmt::format("{}: no such bar", name)};
  return {RoundBar{s.diameter - less->by}, true,
          fmt::format("{}: {}", name, taken_off("diameter", *less))};
}

}  // namespace

MinimumShape minimum_material(const Shape& shape, const Material& steel) {
  const std::string& by = steel.sizes_by;
  if (const auto* s = std::get_if<RoundBar>(&shape)) {
    if (by == "a29" || by == "a108_low" || by == "a108_medium") return bar(*s, by);
  } else if (const auto* tube = std::get_if<RoundTube>(&shape)) {
    if (by == "a513_5") return a513_tube(*tube, true);
    if (by == "a513_1") return a513_tube(*tube, false);
    if (by == "en10305") return en10305_tube(*tube);
    if (by == "a500") return thinner_by_tenth(*tube, "ASTM A500");
  } else if (const auto* box = std::get_if<RectangularTube>(&shape)) {
    if (by == "a500") return thinner_by_tenth(*box, "ASTM A500");
    if (by == "a513_5" || by == "a513_1") return thinner_by_tenth(*box, "ASTM A513");
  }
  return {shape, false,
          "no table of tolerances for this shape and steel here: nothing is taken off"};
}

Shape used_shape(const Shape& shape, const Material& steel, Sizes sizes) {
  return sizes == Sizes::nominal ? shape : minimum_material(shape, steel).shape;
}

}  // namespace sections
