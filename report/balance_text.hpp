#pragma once

#include <array>
#include <string>

#include "checks/finding.hpp"
#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// Every load case as what acts on the parts and what holds them, with the sum that is left.
[[nodiscard]] std::string balance_section(const studies::Answer& answer, const TextStyle& style);

/// "(-2,340, 0, 4,320 lbf)": three components in the unit that the largest is shown in.
[[nodiscard]] std::string three_shown(const std::array<double, 3>& si, checks::Measure measure,
                                      bool inches);

/// Whether any component is other than 0.
[[nodiscard]] bool is_any(const std::array<double, 3>& vector);

}  // namespace report
