#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/pick_grid.hpp"

namespace report {

/// The answer to `pick` of several parts: the designs that no other betters, how many were solved,
/// and the cautions. A full answer lists what was assumed.
[[nodiscard]] std::string grid_text(const studies::PickedGrid& grid, const TextStyle& style);

}  // namespace report
