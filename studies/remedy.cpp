#include "studies/remedy.hpp"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "studies/design_change.hpp"
#include "studies/run.hpp"

namespace studies {
namespace {

using checks::Finding;
using checks::State;

// Unknowns, of all load cases with all stiffness sets. Above it a design is solved where some check
// is worst alone.
constexpr long long kFewUnknowns = 40'000;
// Unknowns of one. Above it a frame is not solved again.
constexpr long long kMostUnknowns = 5'000;
// Checks of a large design that something is tried for, the worst of a part each.
constexpr std::size_t kMostOfLarge = 3;
// Of a large design, a check below it is not looked at again in its own load case.
constexpr double kNearLimit = 0.9;
// Steps of a ladder that are taken one by one before they grow.
constexpr int kSingleSteps = 8;
// Changes that hold where the check is worst and are then solved elsewhere too.
constexpr int kMostProofs = 3;

/// Of one tube of an arm, one link, one brace: what one size is asked.
bool same_size(const Finding& a, const Finding& b) {
  const auto is_upper = [](const Finding& f) { return f.where.rfind("upper", 0) == 0; };
  return a.part == b.part && is_upper(a) == is_upper(b);
}

/// The upper arm's yield and the lower tube's are one kind of check of one part.
bool same_place(const Finding& a, const Finding& b) {
  return a.check == b.check && same_size(a, b);
}

const Finding* worst_like(const std::vector<Finding>& findings, const Finding& wanted) {
  const Finding* worst = nullptr;
  for (const Finding& f : findings) {
    if (!same_place(f, wanted)) continue;
    if (f.state == State::undecided) return &f;
    if (worst == nullptr || f.utilization() > worst->utilization()) worst = &f;
  }
  return worst;
}

/// @param whole  all checks of the same size must hold
bool holds(const std::vector<Finding>& findings, const Finding& wanted, bool whole = false) {
  return std::none_of(findings.begin(), findings.end(), [&](const Finding& f) {
    return f.state != State::within && (whole ? same_size(f, wanted) : same_place(f, wanted));
  });
}

void add_name(std::vector<std::string>& all, const std::string& one) {
  if (!one.empty() && std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

class Search {
 public:
  Search(Answer& answer, const parts::Design& design, const Watch& watch)
      : answer_(answer), design_(design), watch_(watch) {
    long long unknowns = 0;
    for (const SolvedCase& s : answer.solved) {
      unknowns += s.factor.unknowns;
      if (s.factor.unknowns > kMostUnknowns) most_looked_for_ = 0;
    }
    large_ = unknowns > kFewUnknowns;
    if (!large_) return;
    most_looked_for_ = std::min(most_looked_for_, kMostOfLarge);
    for (const Finding& f : answer.findings) {
      if (f.state == State::within && f.utilization() < kNearLimit) continue;
      add_name(governing_.load_cases, f.load_case);
      add_name(governing_.sets, f.set);
    }
  }

  void run_all() {
    for (const Finding& f : answer_.findings) {
      if (f.state != State::over) continue;
      if (!mended_already(f)) answer_.remedies.push_back(remedy_of(f));
    }
    if (made_.size() > 1) answer_.together = together();
  }

 private:
  /// A change that mends some check, and what all of them are with it.
  struct Made {
    DesignChange change;
    std::vector<Finding> findings;
  };

  bool mended_already(const Finding& f) {
    for (const Made& made : made_) {
      if (!holds(made.findings, f)) continue;
      answer_.remedies.push_back(mended(f, made));
      return true;
    }
    return false;
  }

  [[nodiscard]] Remedy empty_remedy(const Finding& f) const {
    return {.part = f.part, .check = f.check, .where = f.where, .change = {}, .in_full = !large_};
  }

  [[nodiscard]] Remedy mended(const Finding& f, const Made& made) const {
    Remedy out = empty_remedy(f);
    out.change = made.change.words;
    out.tried = 1;
    if (const Finding* now = worst_like(made.findings, f)) out.utilization = now->utilization();
    return out;
  }

  Remedy remedy_of(const Finding& f) {
    const std::vector<ChangeLadder> ladders = changes_for(design_, f);
    Remedy out = empty_remedy(f);
    const bool again = large_ && std::any_of(answer_.remedies.begin(), answer_.remedies.end(),
                                             [&](const Remedy& r) { return r.part == f.part; });
    if (!ladders.empty() && (again || looked_for_ >= most_looked_for_)) {
      out.left = true;
      return out;
    }
    if (!ladders.empty()) ++looked_for_;
    tried_ = 0;
    spoils_.clear();
    // A size that mends one check and leaves another of the same part over is no answer, unless
    // none does better.
    for (const bool whole : {true, false}) {
      whole_ = whole;
      const bool found = std::any_of(ladders.begin(), ladders.end(),
                                     [&](const ChangeLadder& ladder) { return climb(ladder, f); });
      if (!found) continue;
      out = mended(f, made_.back());
      break;
    }
    out.tried = tried_;
    if (out.change.empty()) out.spoils = spoils_;
    if (!out.change.empty()) return out;
    for (const ChangeLadder& ladder : ladders) {
      out.most += (out.most.empty() ? "" : ", ") + ladder.back().words;
    }
    return out;
  }

  /// Looks for the first of a ladder that mends a check, of those that make sense (a weld is no
  /// larger than its plate): in growing steps up to one that holds
  /// where the check is worst, then back between that and the last one that does not.
  bool climb(ChangeLadder ladder, const Finding& f) {
    ladder.erase(std::remove_if(ladder.begin(), ladder.end(),
                                [&](const DesignChange& change) {
                                  return !cases::broken_rules(change.on(design_)).empty();
                                }),
                 ladder.end());
    worst_in_ = {.asked = {f.part}, .load_cases = {f.load_case}, .sets = {f.set}};
    if (f.load_case.empty()) worst_in_ = {.asked = {f.part}};
    std::size_t fails = 0;  // of that many, the last one does not hold
    for (int proofs = 0; proofs < kMostProofs && fails < ladder.size(); ++proofs) {
      const std::size_t found = first_to_hold(ladder, fails, f);
      if (found == ladder.size()) return false;
      if (proved(ladder[found], f)) return true;
      fails = found + 1;
    }
    return false;
  }

  /// @param from  of the ladder; @return its size where none holds
  std::size_t first_to_hold(const ChangeLadder& ladder, std::size_t from, const Finding& f) {
    std::size_t low = from;  // all before it are passed over
    std::size_t at = from;
    std::size_t step = 1;
    for (int taken = 0; !holds_where_worst(ladder[at], f); ++taken) {
      low = at + 1;
      if (low >= ladder.size()) return ladder.size();
      if (taken >= kSingleSteps) step *= 2;
      at = std::min(at + step, ladder.size() - 1);
    }
    while (low < at) {
      const std::size_t middle = low + (at - low) / 2;
      if (holds_where_worst(ladder[middle], f)) {
        at = middle;
      } else {
        low = middle + 1;
      }
    }
    return at;
  }

  bool holds_where_worst(const DesignChange& change, const Finding& f) {
    const std::optional<Run> run = solved(change.on(design_), worst_in_);
    return run && holds(run->answer.findings, f, whole_);
  }

  /// Whether a change mends a check and puts nothing over that was not; remembers it then.
  bool proved(const DesignChange& change, const Finding& f) {
    std::optional<Run> run = solved(change.on(design_), governing_);
    if (!run) return false;
    const std::vector<Finding>& now = run->answer.findings;
    if (!holds(now, f, whole_)) {
      for (const Finding& other : now) {
        if (other.state == State::within ||
            !(whole_ ? same_size(other, f) : same_place(other, f))) {
          continue;
        }
        add_name(worst_in_.load_cases, other.load_case);
        add_name(worst_in_.sets, other.set);
      }
      return false;
    }
    const auto spoiled = std::find_if(now.begin(), now.end(), [&](const Finding& other) {
      if (other.state == State::within) return false;
      const Finding* before = worst_like(answer_.findings, other);
      if (before == nullptr || before->state == State::within) return true;
      return before->state == State::undecided && other.state == State::over;
    });
    if (spoiled != now.end()) {
      if (spoils_.empty()) {
        spoils_ = fmt::format("{} would, but then {}, {} does not hold", change.words,
                              spoiled->part, spoiled->check);
      }
      return false;
    }
    made_.push_back({change, std::move(run->answer.findings)});
    return true;
  }

  [[nodiscard]] std::optional<RemediesTogether> together() {
    parts::Design all = design_;
    all.variants.clear();
    for (const Made& made : made_) made.change.make(all);
    const std::optional<Run> run = solved(all, governing_);
    if (!run) return std::nullopt;
    return RemediesTogether{run->answer.verdict, run->figures.worst,
                            run->figures.worst_utilization};
  }

  /// Nothing where a design cannot be solved.
  std::optional<Run> solved(const parts::Design& changed, const Counted& counted) {
    ++tried_;
    if (watch_ && watch_({1.0, "what would mend it"}) == Go::stop) throw Stopped{};
    try {
      return run(changed, "", {}, counted, Extras::none);
    } catch (const base::InputError&) {
      return std::nullopt;
    }
  }

  Answer& answer_;
  const parts::Design& design_;
  const Watch& watch_;
  bool large_ = false;
  Counted governing_;
  Counted worst_in_;
  std::vector<Made> made_;
  std::size_t looked_for_ = 0;
  std::size_t most_looked_for_ = std::numeric_limits<std::size_t>::max();
  std::size_t tried_ = 0;
  bool whole_ = false;
  std::string spoils_;
};

}  // namespace

void add_remedies(Answer& answer, const parts::Design& design, const Watch& watch) {
  answer.remedies.clear();
  answer.together.reset();
  Search(answer, design, watch).run_all();
}

}  // namespace studies
