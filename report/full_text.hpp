#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// Everything after the verdict: every finding with its worked lines, what buckles in every case,
/// load cases, stiffness sets, masses, variants, assumptions with their basis.
[[nodiscard]] std::string full_text(const studies::Answer& answer, const TextStyle& style);

}  // namespace report
