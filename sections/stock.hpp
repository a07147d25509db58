#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sections/shape.hpp"

namespace sections {

/// A size that is sold.
struct StockItem {
  std::string label = {};  ///< "1-1/2 x 0.250 in DOM tube", "1-1/2 in round bar", "40 x 5 mm tube"
  std::string list = {};   ///< which list it comes from: "round tube, inch"
  bool inches = false;
  Shape shape = {};
  std::string mark = {};        ///< "common practice", "from memory", "read", "as entered"
  double price = base::kUnset;  ///< of a length, in the user's own money  [1/m]
};

/// A list of sizes and where it comes from.
struct StockList {
  std::string name;    ///< "round tube, inch"
  std::string source;  ///< in words
  std::vector<StockItem> items;
};

/// A thickness of plate or sheet that is sold.
struct PlateSize {
  std::string label;                ///< "1/4 in", "16 gauge"
  double thickness = base::kUnset;  ///< [m]
  std::string mark;
};

struct PlateList {
  std::string name;
  std::string source;
  std::vector<PlateSize> sizes;
};

/// The built-in lists of bars and tubes.
[[nodiscard]] const std::vector<StockList>& stock_lists();

/// The built-in lists of plate: fractions, millimeters, the sheet gauge.
[[nodiscard]] const std::vector<PlateList>& plate_lists();

/// A user's own list: lines that start with `#` are remarks, then one line of headings, then one
/// line a size, cells parted by commas. Columns, in any order:
/// - shape: round_bar, round_tube, rectangular_tube, flat_bar, channel or angle;
/// - unit: in or mm;
/// - depth: diameter, depth, or one leg; width: of what is not round; wall; corner: outside radius
///   of a rectangular tube (2 walls when empty);
/// - label: may be left out;
/// - price_per_ft or price_per_m: in any money, the same in all of the list; may be empty.
/// @throws base::InputError with file, line and the column's name
[[nodiscard]] StockList read_stock(std::string_view text, const std::string& file);

/// Round tubes and round bars of the built-in lists in one system of units, for choosing from.
[[nodiscard]] std::vector<StockItem> round_stock(bool inches);

/// The sizes that can stand in for a shape: bars and tubes for a round one, else those of its own
/// kind; from the built-in lists in one system of units, and all of `more`.
[[nodiscard]] std::vector<StockItem> stock_like(const Shape& shape, bool inches,
                                                const std::vector<StockItem>& more);

}  // namespace sections
