#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/case_list.hpp"

namespace report {

/// The library of load cases, or what becomes of it in a design, and the duty, for a terminal.
[[nodiscard]] std::string case_list_text(const studies::CaseList& list, const TextStyle& style);

/// The cases of a kind, each with its pushes, factors and basis.
[[nodiscard]] std::string named_case_lines(const studies::ListedKind& kind, bool inches,
                                           const TextStyle& style);

}  // namespace report
