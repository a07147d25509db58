#pragma once

#include <optional>

#include "studies/cell.hpp"

namespace studies {

/// Where the frame gives way in second order, when that is well before a critical factor: between
/// these multiples of the load, half a percent apart.
struct GivesWay {
  double carried = base::kUnset;
  double lost = base::kUnset;
};

/// Whether the frame carries a multiple of the load in second order.
[[nodiscard]] bool carries(const Cell& cell, double multiple);

/// @param upto  not looked for beyond this multiple
/// @return nothing when the frame carries `upto`, or does not carry the load itself
/// Method: down from `upto` in growing steps, then bisection; it is taken that what is lost stays
/// lost under more load.
[[nodiscard]] std::optional<GivesWay> gives_way(const Cell& cell, double upto);

}  // namespace studies
