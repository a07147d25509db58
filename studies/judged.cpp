#include "studies/judged.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "checks/caveat.hpp"
#include "studies/first_look.hpp"

namespace studies {
namespace {

std::string place_of(const checks::Finding& f) {
  return f.load_case.empty() ? f.check : fmt::format("{}, {}", f.check, f.load_case);
}

void add_caveats(std::vector<std::string>& all, const checks::Finding& finding) {
  for (const std::string& note : finding.notes) {
    if (!checks::is_caveat(note)) continue;
    const std::string words = checks::caveat_words(note);
    if (std::find(all.begin(), all.end(), words) == all.end()) all.push_back(words);
  }
}

Judged judged_by(const Run& done, const Counted& counted, const std::string& other_tube) {
  Judged out{.verdict = Verdict::within};
  bool any_own = false;
  for (const checks::Finding& f : done.answer.findings) {
    if (!counted.has(f.part)) continue;
    const bool asked = counted.is_asked(f.part);
    if (asked) add_caveats(out.beware, f);
    if (f.state == checks::State::undecided) {
      if (out.open.empty()) out.open = fmt::format("{}: {}", place_of(f), f.reason);
    } else if (asked && !(f.utilization() <= out.utilization)) {
      out.utilization = f.utilization();
      out.part = f.part;
      out.check = f.check;
      out.load_case = f.load_case;
    }
    if (f.state == checks::State::within) continue;
    if (!asked && out.other_over.empty() && f.state == checks::State::over) {
      out.other_over =
          fmt::format("{}, {} at {:.0f} %", f.part, place_of(f), 100.0 * f.utilization());
    }
    const bool of_other = !other_tube.empty() && f.where.rfind(other_tube, 0) == 0;
    any_own = any_own || !of_other;
    if (f.state == checks::State::over) {
      out.verdict = Verdict::over;
    } else if (out.verdict == Verdict::within) {
      out.verdict = Verdict::not_decided;
    }
  }
  out.only_other_tube = out.verdict != Verdict::within && !any_own;
  return out;
}

Judged judged(const SeenOver& over) {
  return {.verdict = Verdict::over,
          .part = over.part,
          .check = over.check,
          .load_case = over.load_case,
          .in_full = false};
}

/// Where a check that counts is past what it may be, or is not decided; unset where that is in no
/// one load case.
CellName cell_over(const Run& done, const Counted& counted, double most) {
  for (const checks::Finding& f : done.answer.findings) {
    if (!counted.has(f.part) || f.set.empty()) continue;
    const double may = counted.is_asked(f.part) ? most : 1.0;
    if (f.state == checks::State::within && f.utilization() <= may) continue;
    return {f.set, f.load_case};
  }
  return {};
}

/// Puts a cell before the others that are looked at first.
void look_there_first(Counted& counted, const CellName& cell) {
  constexpr std::size_t kMost = 6;
  std::vector<CellName>& all = counted.look_first;
  if (cell.set.empty() || (!all.empty() && all.front() == cell)) return;
  all.erase(std::remove(all.begin(), all.end(), cell), all.end());
  all.insert(all.begin(), cell);
  if (all.size() > kMost) all.pop_back();
}

/// The load cases in two shares, mirrored ones apart, whatever they are spread over; all in one
/// where they are few.
std::vector<Counted> in_two(const std::vector<parts::DesignCase>& cases) {
  constexpr std::size_t kFew = 4;
  std::vector<Counted> shares(cases.size() < kFew ? 1 : 2);
  for (std::size_t i = 0; i < cases.size(); ++i) {
    shares[i % shares.size()].load_cases.push_back(cases[i].name);
  }
  return shares;
}

/// Why a design makes no sense; empty when it does.
std::string refusal(const parts::Design& design) {
  const std::vector<base::InputError> broken = cases::broken_rules(design);
  return broken.empty() ? "" : broken.front().problem();
}

}  // namespace

Judged judged(const parts::Design& design, const Counted& counted, const Watch& watch,
              const std::string& other_tube, const Judged* looked_at) {
  if (const std::string why = refusal(design); !why.empty()) return {.open = why, .no_sense = true};
  Judged worst = judged_by(run_for_worst(design, counted, watch), counted, other_tube);
  const bool seen_over = looked_at != nullptr && looked_at->verdict == Verdict::over;
  return seen_over && worst.verdict == Verdict::within ? *looked_at : worst;
}

std::optional<Judged> judged_at_minimum(const parts::Design& sized, const Counted& counted,
                                        const Watch& watch, const std::string& other_tube) {
  if (sized.sizes == sections::Sizes::minimum) return std::nullopt;
  parts::Design thin = sized;
  thin.sizes = sections::Sizes::minimum;
  try {
    return judged(thin, {.asked = counted.asked, .known = counted.known}, watch, other_tube);
  } catch (const Stopped&) {
    return std::nullopt;
  }
}

Judged judged_at_first_look(const parts::Design& design, const Counted& counted) {
  if (const std::string why = refusal(design); !why.empty()) return {.open = why, .no_sense = true};
  if (const std::optional<SeenOver> over = first_look(design, counted)) return judged(*over);
  return {.in_full = false};
}

Judged judged_until_over(const parts::Design& design, Counted& counted, double most,
                         const Watch& watch) {
  if (const std::string why = refusal(design); !why.empty()) return {.open = why, .no_sense = true};
  const auto judged_in = [&](const Counted& where, double leave_over) {
    const Run done = run_until_over(design, "", where, leave_over, watch);
    Judged out = judged_by(done, where, {});
    out.in_full = out.verdict == Verdict::within && out.utilization <= most;
    if (!out.in_full) look_there_first(counted, cell_over(done, counted, most));
    return out;
  };
  const auto run_in = [&](const CellName& cell) {
    Counted there = counted;
    there.load_cases = {cell.load_case};
    there.sets = {cell.set};
    return judged_in(there, most);
  };
  const std::vector<CellName> cells = counted.look_first;
  // A first look knows nothing of rated joints, nor of the other parts, and leaves what is over by
  // little: where the design before this one was over, it is solved at once.
  Counted others = counted;
  if (!cells.empty()) others.look_first.erase(others.look_first.begin());
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i == 1) {
      if (const std::optional<SeenOver> over = first_look(design, others, most)) {
        look_there_first(counted, {over->set, over->load_case});
        return judged(*over);
      }
    }
    if (Judged out = run_in(cells[i]); !out.in_full) return out;
  }
  // As `judged` does, so that its utilization is the same whatever it may be.
  return judged_in(counted, 1.0);
}

AsDrawn as_drawn(const parts::Design& design, const std::vector<std::string>& asked,
                 const Watch& watch, const Spread& spread) {
  constexpr std::size_t kMostFirst = 4;
  std::vector<Counted> shares = in_two(parts::design_cases(design));
  std::vector<Answer> answers(shares.size());
  std::vector<KnownDesign> known(shares.size());
  spread_out(spread, shares.size(), [&](std::size_t i) {
    shares[i].asked = asked;
    shares[i].others = true;
    answers[i] = run_as_drawn(design, shares[i], watch, &known[i]).answer;
  });
  AsDrawn out{.answer = std::move(answers.front()), .counted = {.asked = asked, .others = true}};
  for (std::size_t i = 1; i < shares.size(); ++i) {
    std::move(answers[i].findings.begin(), answers[i].findings.end(),
              std::back_inserter(out.answer.findings));
    known.front().take(std::move(known[i]));
  }
  out.counted.known = std::make_shared<KnownDesign>(std::move(known.front()));
  Counted& counted = out.counted;
  for (const checks::Finding& f : out.answer.findings) {
    if (f.state != checks::State::within) counted.left_out.push_back(f.part);
  }
  for (const CellName& name : counted.known->worst_cells(
           [&](const std::string& part) { return counted.is_asked(part); })) {
    std::vector<CellName>& all = counted.look_first;
    if (all.size() == kMostFirst) break;
    if (std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
  }
  return out;
}

}  // namespace studies
