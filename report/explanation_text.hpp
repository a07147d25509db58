#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/explain.hpp"

namespace report {

/// The findings of one part for a terminal, each from its member forces to its source, then the
/// load cases they come from.
[[nodiscard]] std::string explanation_text(const studies::Explanation& explanation,
                                           const TextStyle& style);

}  // namespace report
