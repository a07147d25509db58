#pragma once

#include <string>

#include "report/drawing_svg.hpp"
#include "report/page.hpp"

/// The parts of the page: pieces of HTML.
namespace report {

/// The verdict, what decides it, and the cautions in short.
[[nodiscard]] std::string page_verdict(const studies::Answer& answer);

/// The drawing with its choosers, the governing finding of each part, the legend.
[[nodiscard]] std::string page_assembly(const studies::Answer& answer, const View& view);

/// Parts, parts in load cases, variants, forces along a part, buckling, life, order of failure.
[[nodiscard]] std::string page_tables(const studies::Answer& answer, const Sheet& sheet);

/// Mass against utilization of the sizes that were tried, and those nearest to the limit.
[[nodiscard]] std::string pick_chart(const studies::Picked& picked);

/// Input as read, assumptions, load cases in balance, every finding with its worked lines, factors,
/// limits, cautions, and the place for a name and a signature.
[[nodiscard]] std::string calculation_sheet(const studies::Answer& answer, const Sheet& sheet);

}  // namespace report
