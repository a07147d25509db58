#pragma once

#include <string>

#include "checks/finding.hpp"
#include "report/text_style.hpp"

namespace report {

/// One check that can be followed by hand: symbols, then numbers with units, then the result.
[[nodiscard]] std::string finding_text(const checks::Finding& finding, bool inches,
                                       const TextStyle& style);

/// The same from the member forces and how they were solved down to the source and its range.
[[nodiscard]] std::string explained_text(const checks::Finding& finding, bool inches,
                                         const TextStyle& style);

}  // namespace report
