#pragma once

#include "checks/finding.hpp"
#include "studies/answer.hpp"

/// The words that other programs read: they change with the format's number alone.
namespace report {

[[nodiscard]] const char* unit_in_si(checks::Measure measure);         ///< "Pa", "N m", "1"
[[nodiscard]] const char* verdict_in_words(studies::Verdict verdict);  ///< "over the limit"
[[nodiscard]] const char* state_in_words(checks::State state);

}  // namespace report
