#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// The answer to `check`: verdict first, then the parts, what buckles, the variants, what was
/// assumed and left out, and the cautions.
[[nodiscard]] std::string text(const studies::Answer& answer, const TextStyle& style);

}  // namespace report
