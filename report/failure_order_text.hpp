#pragma once

#include <string>
#include <vector>

#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// "lateral link bends first, at 2.34 times; then bracket, weld breaks at 2.90": the first few.
[[nodiscard]] std::string order_words(const studies::FailureOrder& order);

/// Each load case, under a heading that says what was taken for what; nothing without any.
[[nodiscard]] std::string failure_order_section(const std::vector<studies::FailureOrder>& orders,
                                                const TextStyle& style);

/// Where something breaks before any bar or tube bends, in one sentence; else nothing.
[[nodiscard]] std::string breaks_first_sentence(const std::vector<studies::FailureOrder>& orders);

}  // namespace report
