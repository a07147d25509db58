#pragma once

#include <string>
#include <vector>

#include "sections/shape.hpp"

namespace sections {

/// A size that is sold.
struct StockItem {
  std::string label;  ///< "1-1/2 x 0.250 in DOM tube", "1-1/2 in round bar", "40 x 5 mm tube"
  std::string list;   ///< which list it comes from: "round tube, inch"
  bool inches = false;
  Shape shape;
  std::string mark;  ///< "common practice", "from memory", "read"
};

/// Round tubes drawn over a mandrel and round bars: the inch lists, or the metric ones.
[[nodiscard]] std::vector<StockItem> round_stock(bool inches);

}  // namespace sections
