#pragma once

#include <string>

#include "report/tone.hpp"
#include "studies/answer.hpp"

namespace report {

/// "lateral_link" -> "lateral link".
[[nodiscard]] std::string part_words(const std::string& part);

/// "vehicle.friction" -> "friction", "arm.frame_joint" -> "arm frame joint".
[[nodiscard]] std::string key_words(const std::string& key);

/// "yield at the bend", "column, lower tube": the check and where, all of it.
[[nodiscard]] std::string what_gives(const checks::Finding& finding);

/// The same in as few words as tell it: "root weld", "column".
[[nodiscard]] std::string what_gives_briefly(const checks::Finding& finding);

/// "within", "OVER", "NOT DECIDED"; for a row of a table.
[[nodiscard]] std::string verdict_word(studies::Verdict verdict);
[[nodiscard]] Tone verdict_tone(studies::Verdict verdict);
[[nodiscard]] std::string state_word(checks::State state);
[[nodiscard]] Tone state_tone(checks::State state);

/// "brace at 3.21 times slid into a curb, left".
[[nodiscard]] std::string buckling_words(const studies::CriticalFactor& factor);

/// The verdict, what decides it, and the kinds of check that have no part in it.
/// @param where_all  after the number of checks, where they are listed
[[nodiscard]] std::string verdict_sentence(const studies::Answer& answer,
                                           const std::string& where_all = " (--all lists them)");

/// "WITHIN THE LIMITS CHECKED", "OVER", "NOT DECIDED": how the sentence starts.
[[nodiscard]] std::string verdict_head(studies::Verdict verdict);

/// What the findings warn of, each once: "brace, at its weld: welds' reach assumed".
[[nodiscard]] std::vector<std::string> caveats_of(const studies::Answer& answer);

/// "3 of 16 built-in load cases run. Not offered yet: bolts and pins, fatigue."
[[nodiscard]] std::string scope_sentence(const studies::Scope& scope,
                                         const std::vector<std::string>& not_offered);

}  // namespace report
