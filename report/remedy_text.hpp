#pragma once

#include <string>

#include "checks/finding.hpp"
#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// What was tried against a check that is over: "tried, mends it: 1-1/2 x 0.134 in DOM tube, then
/// at 97 %"; empty where nothing was asked.
[[nodiscard]] std::string remedy_words(const studies::Answer& answer,
                                       const checks::Finding& finding);

/// The same of all parts that are over, in few lines.
[[nodiscard]] std::string remedy_lines(const studies::Answer& answer, const TextStyle& style);

/// "all of them at once: within, worst brace, combined forces, 94 %"; empty where there are not
/// several.
[[nodiscard]] std::string together_words(const studies::Answer& answer);

}  // namespace report
