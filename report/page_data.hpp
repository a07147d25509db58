#pragma once

#include <string>

#include "report/drawing_svg.hpp"
#include "studies/answer.hpp"

namespace report {

/// What the script of the page draws from, as JSON for a script element: no character of it ends
/// one. Lengths in m, forces in N; six significant digits, utilizations in full.
/// @param answer  with a drawing
[[nodiscard]] std::string page_data(const studies::Answer& answer, const View& view);

}  // namespace report
