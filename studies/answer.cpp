#include "studies/answer.hpp"

#include <algorithm>

namespace studies {

Verdict verdict_of(const std::vector<checks::Finding>& findings) {
  const auto any_is = [&](checks::State state) {
    return std::any_of(findings.begin(), findings.end(),
                       [state](const checks::Finding& f) { return f.state == state; });
  };
  if (any_is(checks::State::over)) return Verdict::over;
  return any_is(checks::State::undecided) ? Verdict::not_decided : Verdict::within;
}

const std::vector<std::string>& cautions() {
  static const std::vector<std::string> kCautions = {
      "Steering and suspension parts can kill when they fail. This is a screening calculation, not "
      "an approval.",
      "A licensed engineer decides; local vehicle codes and inspection come first.",
      "Welds need a qualified welder, a procedure and an inspection. Never weld, heat or bend "
      "factory steering parts.",
      "After a curb, rock or roll, inspect or replace: a bent link is scrap."};
  return kCautions;
}

const std::vector<std::string>& checks_not_offered() {
  static const std::vector<std::string> kNotOffered = {"other welds"};
  return kNotOffered;
}

bool judged_at_ride_height(const checks::Finding& finding) {
  return std::any_of(finding.notes.begin(), finding.notes.end(),
                     [](const std::string& note) { return note.rfind(kAtRideHeight, 0) == 0; });
}

}  // namespace studies
