#pragma once

#include <functional>
#include <optional>

#include "studies/cell.hpp"

namespace studies {

/// Where the frame gives way in second order, when that is well before a critical factor: between
/// these multiples of the load.
struct GivesWay {
  double carried = base::kUnset;
  double lost = base::kUnset;
};

/// Whether the frame carries a multiple of the load in second order.
[[nodiscard]] bool carries(const Cell& cell, double multiple);

/// The same closer in, by bisection.
/// @param apart  what is lost over what is carried, in the end
[[nodiscard]] GivesWay closed_in(GivesWay between, double apart,
                                 const std::function<bool(double)>& carries);

/// @param upto  not looked for beyond this multiple
/// @return half a percent apart; nothing when the frame carries `upto`, or not the load itself
/// Method: down from `upto` in growing steps, then bisection; it is taken that what is lost stays
/// lost under more load.
[[nodiscard]] std::optional<GivesWay> gives_way(const Cell& cell, double upto);

}  // namespace studies
