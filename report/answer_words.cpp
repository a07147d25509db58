#include "report/answer_words.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/droop_text.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using checks::Finding;
using checks::State;
using studies::Verdict;

std::string in_case(const Finding& f) {
  return f.load_case.empty() ? "" : " (" + f.load_case + ")";
}

/// The worst finding of a state; findings stand worst first.
const Finding* first_of(const studies::Answer& answer, State state) {
  const auto found = std::find_if(answer.findings.begin(), answer.findings.end(),
                                  [&](const Finding& f) { return f.state == state; });
  return found == answer.findings.end() ? nullptr : &*found;
}

std::string whose(const Finding& f) {
  // Whether a bar itself or its weld is too weak is what the reader does something about.
  const std::string what = f.where == "at its weld" ? what_gives(f) : what_gives_briefly(f);
  return f.part.empty() ? what : part_words(f.part) + ", " + what;
}

/// "3 checks are over, 1 is not decided"; empty when the sentence has said it all.
std::string counts(const studies::Answer& answer, const std::string& where_all) {
  const auto count = [&](State state) {
    return std::count_if(answer.findings.begin(), answer.findings.end(),
                         [&](const Finding& f) { return f.state == state; });
  };
  const auto over = count(State::over);
  const auto open = count(State::undecided);
  if (over + open < 2) return "";
  std::vector<std::string> parts;
  if (over > 0) parts.push_back(fmt::format("{} over", over));
  if (open > 0) parts.push_back(fmt::format("{} not decided", open));
  return fmt::format(" Of {} checks{}, {}.", answer.findings.size(), where_all,
                     joined(parts, ", "));
}

std::string reason_of(const studies::Answer& answer, const std::string& where_all) {
  switch (answer.verdict) {
    case Verdict::within:
      if (const Finding* f = first_of(answer, State::within)) {
        return fmt::format(": the nearest is {}, at {} of the limit{}.", whose(*f),
                           percent(f->utilization()), in_case(*f));
      }
      break;
    case Verdict::over:
      if (const Finding* f = first_of(answer, State::over)) {
        return fmt::format(": {}, at {} of the limit{}.{}", whose(*f), percent(f->utilization()),
                           in_case(*f), counts(answer, where_all));
      }
      break;
    case Verdict::not_decided:
      if (const Finding* f = first_of(answer, State::undecided)) {
        return fmt::format(": {}{}: {}.{}", whose(*f), in_case(*f), f->reason,
                           counts(answer, where_all));
      }
      if (answer.findings.empty()) return ": nothing was checked.";
      break;
  }
  return ".";
}

}  // namespace

std::string part_words(const std::string& part) {
  std::string words = part;
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::string key_words(const std::string& key) {
  // Whose friction or track it is goes without saying.
  constexpr std::string_view kVehicle = "vehicle.";
  std::string words = part_words(key.rfind(kVehicle, 0) == 0 ? key.substr(kVehicle.size()) : key);
  std::replace(words.begin(), words.end(), '.', ' ');
  return words;
}

std::string what_gives(const Finding& finding) {
  if (finding.where.empty()) return finding.check;
  // "root weld at the rail" names its check already.
  if (finding.where.find(finding.check) != std::string::npos) return finding.where;
  constexpr std::array<std::string_view, 7> kPlaces = {"at ",      "in ",     "on ", "near ",
                                                       "between ", "beside ", "of "};
  const bool reads_on = std::any_of(kPlaces.begin(), kPlaces.end(), [&](std::string_view place) {
    return finding.where.rfind(place, 0) == 0;
  });
  return finding.check + (reads_on ? " " : ", ") + finding.where;
}

std::string what_gives_briefly(const Finding& finding) {
  const std::string words = what_gives(finding);
  if (finding.check == "weld") return words.substr(0, words.find(" at the "));
  // A column is always a whole piece, from joint to joint.
  if (finding.where == "between its joints" || finding.where == "at its weld") {
    return finding.check;
  }
  return words;
}

std::string verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::within:
      return "within";
    case Verdict::over:
      return "OVER";
    case Verdict::not_decided:
      break;
  }
  return "NOT DECIDED";
}

Tone verdict_tone(Verdict verdict) {
  switch (verdict) {
    case Verdict::within:
      return Tone::within;
    case Verdict::over:
      return Tone::over;
    case Verdict::not_decided:
      break;
  }
  return Tone::undecided;
}

std::string state_word(State state) {
  switch (state) {
    case State::within:
      return verdict_word(Verdict::within);
    case State::over:
      return verdict_word(Verdict::over);
    case State::undecided:
      break;
  }
  return verdict_word(Verdict::not_decided);
}

Tone state_tone(State state) {
  switch (state) {
    case State::within:
      return Tone::within;
    case State::over:
      return Tone::over;
    case State::undecided:
      break;
  }
  return Tone::undecided;
}

std::string buckling_words(const studies::CriticalFactor& factor) {
  return fmt::format("{} at {} times {}", part_words(factor.what), multiple(factor.factor),
                     factor.load_case);
}

std::string verdict_head(Verdict verdict) {
  return verdict == Verdict::within ? "WITHIN THE LIMITS CHECKED" : verdict_word(verdict);
}

std::string scope_sentence(const studies::Scope& scope,
                           const std::vector<std::string>& not_offered) {
  std::string out;
  if (scope.cases_run < scope.cases_known) {
    out = fmt::format("{} of {} built-in load cases run", scope.cases_run, scope.cases_known);
    if (scope.own_cases > 0) out += fmt::format(", and {} of the file's own", scope.own_cases);
    out += ".";
  }
  if (not_offered.empty()) return out;
  return out + (out.empty() ? "" : " ") + "Not offered yet: " + joined(not_offered, ", ") + ".";
}

std::vector<std::string> caveats_of(const studies::Answer& answer) {
  struct Caveat {
    std::string words;
    std::string place;  ///< of the first finding that has it
    std::vector<std::string> parts = {};
  };
  std::vector<Caveat> all;
  for (const checks::Finding& f : answer.findings) {
    for (const std::string& note : f.notes) {
      if (!checks::is_caveat(note)) continue;
      const std::string words = checks::caveat_words(note);
      auto same = std::find_if(all.begin(), all.end(),
                               [&](const Caveat& known) { return known.words == words; });
      if (same == all.end()) {
        all.push_back({words, f.where.empty() ? f.check : f.where});
        same = all.end() - 1;
      }
      add_once(same->parts, part_words(f.part));
    }
  }
  std::vector<std::string> out;
  for (const studies::BeyondTravel& one : answer.beyond_travel) {
    out.push_back(beyond_travel_words(one, answer.inches));
  }
  for (const Caveat& one : all) {
    const std::string where =
        one.parts.size() > 1 ? joined(one.parts, " and ") : one.parts.front() + ", " + one.place;
    out.push_back(fmt::format("{}: {}", where, one.words));
  }
  return out;
}

std::string verdict_sentence(const studies::Answer& answer, const std::string& where_all) {
  const std::string rest = scope_sentence(answer.scope, answer.not_offered);
  return verdict_head(answer.verdict) + reason_of(answer, where_all) +
         (rest.empty() ? "" : " " + rest);
}

}  // namespace report
