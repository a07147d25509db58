#include "studies/worst_case.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "studies/give_way.hpp"
#include "studies/load_limit.hpp"
#include "studies/stability.hpp"
#include "studies/unsolved_cell.hpp"

namespace studies {
namespace {

using Ends = LoadLimit::Ends;

// A second multiple for checks that are asked for no more than the load itself.
constexpr double kSecondMultiple = 1.5;
// Cells whose estimated utilization comes this near the worst one are searched too: the estimate
// is good to a few percent.
constexpr double kNearWorst = 0.95;
// Sets of one load case whose estimates differ by less than this are taken as one.
constexpr double kSameEstimate = 2.0e-4;
// What the estimates from the load itself alone may be off by, where the frame goes on as it is and
// where a stop may come to carry.
constexpr double kSmooth = 1.15;
constexpr double kWithStops = 1.5;
// What the estimates from another set of the same load case may be off by at the least, where other
// stops or straps carry and where the same ones do, and of the change that they tell.
constexpr double kBesides = 0.05;
constexpr double kAlike = 3.0e-3;
constexpr double kOfChange = 0.5;
// The same from another design, where the same stops and straps carry.
constexpr double kLikeDesign = 0.01;
// Of the largest demand of all: below it another set is not looked at.
constexpr double kBesideTheMost = 0.8;
// Half of the capacity to spare at the required multiple.
constexpr double kFarWithin = 0.5;
// Another set of the same load case that may come to this much more than one that has been looked
// at is not told apart from it (proposal): where it is far within, and where both are on the same
// side of the limit.
constexpr double kSameFarWithin = 0.05;
constexpr double kSameSide = 3.0e-3;
constexpr double kSoarsFrom = 0.25;
// Of a demand over that in proportion to the load.
constexpr double kGrows = 1.25;
constexpr double kSoared = 2.0;
// Of the multiple at which the frame gives way: so far under it, what it comes to does not hang on
// how near that was gone to.
constexpr double kShortOfEdge = 0.98;
// To which that is closed in, as load_limit does.
constexpr double kEdgeApart = 1.001;

struct Ranked {
  Asked asked;
  double at_one = base::kUnset;     ///< demand over capacity at the load itself
  double at_looked = base::kUnset;  ///< at the multiple at which it is looked at
  double limit = base::kUnset;      ///< estimated multiple at which the check just holds
  [[nodiscard]] double estimate() const { return asked.factor.value / limit; }
  /// At the required multiple, that much in proportion to where it is looked at.
  [[nodiscard]] double at_required() const {
    return at_looked * (asked.factor.value / asked.factor.looked_at());
  }
};

/// Where demand / capacity reaches 1, on the low side, from its values at the load and at another
/// multiple: in proportion to either, or as a beam-column's, a m / (1 - x m).
double estimated_limit(double at_one, double multiple, double there) {
  if (!(at_one > 0.0) && !(there > 0.0)) return kHighestMultiple;
  if (!std::isfinite(at_one)) return 0.5;
  // The frame gives way in between: taken as growing half as much again as the load does.
  if (!std::isfinite(there)) return std::min(1.0 / (1.5 * at_one), kHighestMultiple);
  double limit = std::min({1.0 / at_one, multiple / there, kHighestMultiple});
  const double growth = there / (multiple * at_one);
  if (growth > 1.0) {
    const double x = (growth - 1.0) / (multiple * growth - 1.0);
    limit = std::min(limit, 1.0 / (at_one * (1.0 - x) + x));
  }
  return limit;
}

/// A part that is pressed on while something else comes to hold it from bending is asked more as
/// the load grows: the factor is that of the load itself or of a multiple, whichever is larger.
AskedFactor larger(const AskedFactor& at_load, const Criterion& criterion, const Cell& cell,
                   double multiple) {
  if (!carried(cell.kept(multiple))) return at_load;
  const AskedFactor there = asked_in(criterion, cell, multiple);
  return there.value > at_load.value ? there : at_load;
}

Ranked ranked(const Criterion& criterion, const Asked& asked) {
  Ranked out{.asked = asked};
  out.at_one = asked.cell->ratio_kept(criterion, 1.0);
  const double looked_at = asked.factor.looked_at();
  if (criterion.kind == Criterion::Kind::combined && looked_at > 1.0) {
    out.asked.factor = larger(asked.factor, criterion, *asked.cell, looked_at);
  }
  out.at_looked = asked.cell->ratio_kept(criterion, looked_at);
  // What is far within is not followed farther.
  if (looked_at > 1.0 || out.at_required() < kFarWithin) {
    out.limit = estimated_limit(out.at_one, looked_at, out.at_looked);
  } else {
    out.limit = estimated_limit(out.at_one, kSecondMultiple,
                                asked.cell->ratio_kept(criterion, kSecondMultiple));
  }
  return out;
}

// Of a multiple: to a critical factor nearer than that it is not said how a demand grows. Where it
// is known how it grows in another set, it is taken to come to no more than so many times as much
// as the two factors tell, up to the second and up to the third (proposals).
constexpr double kTooNear = 1.5;
constexpr double kNearBeside = 1.3;
constexpr double kTooNearBeside = 1.1;
constexpr double kSomeMore = 1.3;
constexpr double kManyTimes = 5.0;

/// How much more than in proportion the demand may grow to `multiple`, as a beam-column's does;
/// infinite where that is too near to the critical factor to say.
/// @param critical  the lowest critical factor
double growth_over_load(double critical, double multiple, double too_near = kTooNear) {
  if (!(critical > too_near * multiple)) return std::numeric_limits<double>::infinity();
  return (1.0 - 1.0 / critical) / (1.0 - multiple / critical);
}

/// Demand over capacity at the load itself; the most it may be where the cell is not solved.
double at_load(const Criterion& criterion, const Asked& a) {
  return a.is_solved() ? a.cell->ratio_kept(criterion, 1.0) : *a.at_most;
}

/// The multiple up to which a demand may grow more than in proportion: a rated joint's at most up
/// to the factor asked of stability (Cell::followed_to).
double grows_up_to(const Criterion& criterion, const Asked& a) {
  const double looked_at = a.factor.looked_at();
  if (criterion.kind != Criterion::Kind::joint) return looked_at;
  const Cell& cell = *a.cell;
  if (std::isfinite(cell.followed_to)) {
    return cell.beyond_followed(criterion, looked_at) ? cell.followed_to : looked_at;
  }
  const double most =
      most_asked_of(cell.assembly(), cell.model().design().factors, cell.load_case().abuse);
  return std::min(looked_at, std::max(1.0, most));
}

/// Between what the demand at the required multiple lies, by that at the load itself.
struct Bounds {
  double low;
  double high;
  double in_proportion;
};

Bounds bounds_of(const Criterion& criterion, const Asked& a) {
  const double at_one = at_load(criterion, a);
  const bool has_stops = !a.cell->assembly().stops.empty();
  const double in_proportion = at_one * a.factor.value;
  // The factor of combined forces may be larger at a multiple than at the load: see larger.
  const bool to_looked_at = has_stops || criterion.kind == Criterion::Kind::combined;
  const double at_most =
      at_one * std::max(a.factor.value, to_looked_at ? a.factor.looked_at() : 0.0);
  const double off = has_stops ? kWithStops : kSmooth;
  Bounds out{
      a.is_solved() ? in_proportion / off : 0.0,
      at_most * off * growth_over_load(a.cell->lowest_critical_factor, grows_up_to(criterion, a)),
      in_proportion};
  // Without any demand at the load itself nothing can be said.
  if (!(in_proportion > 0.0) && has_stops) out.high = std::numeric_limits<double>::infinity();
  return out;
}

/// The most that the demand at the required multiple can be by the largest multiple below the one
/// looked at that is solved, on the stops and straps of the load itself: what the bounds leave for
/// all of the way is left for the rest of it. Infinite where nothing is solved.
double at_most_from_below(const Criterion& criterion, const Asked& a) {
  constexpr double kUnknown = std::numeric_limits<double>::infinity();
  const double looked_at = a.factor.looked_at();
  const auto below = a.is_solved() ? a.cell->kept_below(looked_at) : std::nullopt;
  if (!below || a.cell->beyond_followed(criterion, looked_at)) return kUnknown;
  const double there = a.cell->ratio_kept(criterion, *below);
  if (!(there > 0.0)) return kUnknown;
  const double off = a.cell->assembly().stops.empty() ? kSmooth : kWithStops;
  const double left = (looked_at - *below) / (looked_at - 1.0);
  const double most = there / *below * std::max(a.factor.value, looked_at) * std::pow(off, left) *
                      growth_over_load(a.cell->lowest_critical_factor, looked_at) /
                      growth_over_load(a.cell->lowest_critical_factor, *below);
  return std::isfinite(most) ? most : kUnknown;
}

/// The demand at the required multiple from which on a utilization may be over the floor: the two
/// are the same at 1.
double matters_from(double floor) {
  return floor >= 1.0 ? std::max(1.0, kBesideTheMost * floor) : kBesideTheMost * floor;
}

/// The cells that can be the worst, by the demand at the load itself: the rest need not be solved
/// at other multiples. Most demand first.
/// @param from  demand from which on they matter
std::vector<Asked> foremost(const Criterion& criterion, const std::vector<Asked>& asked,
                            double from) {
  struct Estimate {
    const Asked* asked;
    Bounds demand;
  };
  std::vector<Estimate> all;
  double most = from;
  for (const Asked& a : asked) {
    all.push_back({&a, bounds_of(criterion, a)});
    if (std::isfinite(all.back().demand.low)) most = std::max(most, all.back().demand.low);
  }
  all.erase(std::remove_if(all.begin(), all.end(),
                           [&](const Estimate& e) { return e.demand.high < most; }),
            all.end());
  std::stable_sort(all.begin(), all.end(), [](const Estimate& a, const Estimate& b) {
    return a.demand.in_proportion > b.demand.in_proportion;
  });
  std::vector<Asked> out;
  for (const Estimate& e : all) out.push_back(*e.asked);
  return out;
}

double in_proportion(double multiple, double ratio) {
  return ratio > 0.0 ? std::min(multiple / ratio, kHighestMultiple) : kHighestMultiple;
}

/// The cells of one load case, in the place reached or at ride height, that are looked at at one
/// multiple.
struct Sets {
  double looked_at;
  std::vector<Asked> asked;
};

std::vector<Sets> by_load_case(const std::vector<Asked>& asked) {
  std::vector<Sets> all;
  for (const Asked& a : asked) {
    const auto same = std::find_if(all.begin(), all.end(), [&](const Sets& s) {
      const Asked& one = s.asked.front();
      return &one.cell->load_case() == &a.cell->load_case() &&
             s.looked_at == a.factor.looked_at() && one.at_ride == a.at_ride;
    });
    if (same == all.end()) {
      all.push_back({a.factor.looked_at(), {a}});
    } else {
      same->asked.push_back(a);
    }
  }
  return all;
}

/// How much more a demand grows than in a set that has been looked at, where the frame may grow by
/// so much here and there: of that growth it is taken to feel as much as it has there, where that
/// was not much less.
double grows_more(double here, double there, const LookedAt& known) {
  constexpr double kMuchLess = 0.5;
  const double has_grown = known.there / (known.multiple * known.at_load);
  const double felt = (has_grown - 1.0) / (there - 1.0);
  const bool is_known = there - 1.0 > kMuchLess * (here - 1.0);
  if (!is_known || !(felt < 1.0)) return std::max(1.0, here / there);
  return std::max(1.0, (1.0 + std::max(felt, 0.0) * (here - 1.0)) / std::max(has_grown, 1.0));
}

/// The most that the demand at the required multiple can be in another set than one that has been
/// looked at: grown as there; infinite where that cannot be told.
/// @param alike  what it may be off by at the least, where the same stops carry
double at_most_beside(const Criterion& criterion, const Asked& a, const LookedAt& known,
                      double alike) {
  if (!std::isfinite(known.there)) return std::numeric_limits<double>::infinity();
  const double at_one = at_load(criterion, a);
  const double looked_at = a.factor.looked_at();
  const double in_proportion = known.there * std::fmax(a.factor.value, known.required) / looked_at;
  // Nothing at the load itself: all that there is comes with the stops and straps that close later.
  if (!(at_one > 0.0) && !(known.at_load > 0.0)) return kWithStops * in_proportion;
  const double critical = a.cell->lowest_critical_factor;
  const bool is_near = !(critical > kTooNear * looked_at);
  const double too_near = is_near ? kTooNearBeside : kTooNear;
  const double times = !is_near ? 1.0 : critical > kNearBeside * looked_at ? kSomeMore : kManyTimes;
  const double growth = growth_over_load(critical, looked_at, too_near);
  if (!std::isfinite(growth)) return std::numeric_limits<double>::infinity();
  const double growth_there = growth_over_load(known.lowest_critical_factor, looked_at, too_near);
  const double more = at_one / known.at_load;
  const double estimate = more * grows_more(growth, growth_there, known);
  if (!std::isfinite(estimate)) return std::numeric_limits<double>::infinity();
  const double change = more * std::max(1.0, growth / growth_there) - 1.0;
  const bool same_stops = (a.is_solved() ? a.cell->closed_at(1.0) : *a.closed) == known.closed;
  const double off = std::max(same_stops ? alike : kBesides, kOfChange * std::abs(change));
  return times * estimate * (1.0 + off) * in_proportion;
}

const LookedAt* named(const std::vector<LookedAt>& all, const CellName& name) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const LookedAt& l) { return l.name == name; });
  return found == all.end() ? nullptr : &*found;
}

/// The most that the demand at the required multiple can be where a design that differs in little
/// was looked at in the same set, and in one that has been looked at here. Infinite where that
/// cannot be told.
double at_most_between(const Asked& a, const LookedAt& known, const std::vector<LookedAt>& like) {
  const LookedAt* same = named(like, name_of(*a.cell));
  const LookedAt* beside = named(like, known.name);
  // What second order makes of another size differs from set to set.
  if (same == nullptr || beside == nullptr || same->is_sized) {
    return std::numeric_limits<double>::infinity();
  }
  const double required = std::fmax(a.factor.value, std::fmax(known.required, same->required));
  return at_most_as_there(known.there, same->there, beside->there) * required / known.multiple;
}

/// Over its limit, and less in proportion the more load there is, as a link that hangs between its
/// ends: a set that asks less at the load may reach its limit sooner.
bool levels_off(const Ranked& r) {
  return r.estimate() > 1.0 && r.estimate() > (1.0 + kBesides) * r.at_required();
}

/// By how much two sets of one load case have to differ, of what the first of them comes to at the
/// required multiple, to be told apart.
double told_apart(double first, double other_at_most) {
  if (other_at_most < kFarWithin) return kSameFarWithin;
  return (first > 1.0) == (other_at_most > 1.0) ? kSameSide : kSameEstimate;
}

LookedAt as_looked_at(const Criterion& criterion, const Ranked& r) {
  const Cell& cell = *r.asked.cell;
  const double multiple = r.asked.factor.looked_at();
  LookedAt out{.cell = &cell,
               .name = name_of(cell),
               .at_ride = r.asked.at_ride,
               .multiple = multiple,
               .required = r.asked.factor.value,
               .at_load = r.at_one,
               .there = r.at_looked,
               .lowest_critical_factor = cell.lowest_critical_factor};
  if (std::isfinite(out.there)) {
    out.closed =
        cell.closed_at(cell.beyond_followed(criterion, multiple) ? cell.followed_to : multiple);
  }
  return out;
}

/// Of a load case in a design that differs in little, what is to be looked at as these sets are.
std::vector<LookedAt> like_these(const std::vector<LookedAt>& all, const Sets& sets) {
  std::vector<LookedAt> out;
  const Asked& one = sets.asked.front();
  std::copy_if(all.begin(), all.end(), std::back_inserter(out), [&](const LookedAt& l) {
    return l.name.load_case == one.cell->load_case().name && l.at_ride == one.at_ride &&
           l.multiple == sets.looked_at;
  });
  return out;
}

/// Of the sets of one load case one is solved at the multiple that is looked at, the others where
/// they may come to more than that one, grown as it has; none where a design that differs in little
/// says that none matters.
/// @param from  demand from which on one of them is solved
std::vector<Ranked> ranked_ones(const Criterion& criterion, const std::vector<Asked>& asked,
                                double floor, double from, const SolveAsked& solve,
                                const std::vector<LookedAt>& like) {
  std::vector<Ranked> all;
  double most_of_all = 0.0;
  for (Sets& sets : by_load_case(asked)) {
    const auto looked = std::find_if(sets.asked.begin(), sets.asked.end(), [&](const Asked& a) {
      return a.is_solved() && a.cell->has_kept(sets.looked_at);
    });
    if (looked != sets.asked.end()) std::iter_swap(sets.asked.begin(), looked);
    const std::size_t n_before = all.size();
    const std::vector<LookedAt> in_other = like_these(like, sets);
    std::vector<LookedAt> here;
    double most = 0.0;
    const auto leaves = [&](const Asked& a) {
      const double below =
          std::max(kBesideTheMost * most_of_all, here.empty() ? from : matters_from(floor));
      // Over the limit a demand may be less than in proportion: its limit says more than it does.
      const double surely_below = std::max(std::min(below, 1.0), below / kWithStops);
      const auto is_less = [&](const LookedAt& other) {
        return at_most_beside(criterion, a, other, kLikeDesign) <= surely_below;
      };
      if (below > 0.0 && std::any_of(in_other.begin(), in_other.end(), is_less)) return true;
      if (here.empty()) {
        return below > 0.0 &&
               (bounds_of(criterion, a).high <= below || at_most_from_below(criterion, a) <= below);
      }
      if (!a.is_solved() && levels_off(all[n_before])) return false;
      return std::any_of(here.begin(), here.end(), [&](const LookedAt& known) {
        const double at_most = std::min(at_most_beside(criterion, a, known, kAlike),
                                        at_most_between(a, known, in_other));
        return at_most <= std::max((1.0 + told_apart(most, at_most)) * most, below);
      });
    };
    // One that turns out to be left once it is solved is looked at all the same where the others
    // can be left by it.
    const auto tells_others = [&](std::size_t solved) {
      return here.empty() && criterion.kind != Criterion::Kind::joint &&
             std::any_of(sets.asked.begin() + static_cast<std::ptrdiff_t>(solved) + 1,
                         sets.asked.end(),
                         [&](const Asked& other) { return !other.is_solved() && !leaves(other); });
    };
    for (std::size_t i = 0; i < sets.asked.size(); ++i) {
      Asked& a = sets.asked[i];
      bool counts = !leaves(a);
      const bool is_new = counts && !a.is_solved();
      while (counts && !a.is_solved()) {
        const std::optional<Asked> now = solve(a);
        counts = now && !leaves(*now);
        if (now) a = *now;
      }
      if (!counts && !(is_new && a.is_solved() && tells_others(i))) continue;
      all.push_back(ranked(criterion, a));
      here.push_back(as_looked_at(criterion, all.back()));
      // Where the frame gives way before, nothing is known that another could be compared with.
      if (std::isfinite(all.back().at_looked)) most = std::fmax(most, all.back().at_required());
      most_of_all = std::fmax(most_of_all, most);
    }
  }
  return all;
}

/// Where the frame gives way, or is about to beyond a check's limit: the last multiple it carries,
/// to 0.1 %. Nothing where the check reaches its limit without the frame having to do with it.
std::optional<double> edge_at(const Criterion& criterion, const Ranked& r,
                              const LimitFound& found) {
  if (found.gives_way) return found.multiple;
  // A demand that has not soared is the same a little under the edge, wherever that is.
  const bool soars = !std::isfinite(r.at_one) || r.at_one * found.multiple <= kFarWithin;
  const double beyond = found.multiple / kShortOfEdge;
  const auto carries = [&](double multiple) {
    return std::isfinite(r.asked.cell->ratio_at(criterion, multiple));
  };
  if (!soars || beyond >= kHighestMultiple || carries(beyond)) return std::nullopt;
  return closed_in({found.multiple, beyond}, kEdgeApart, carries).carried;
}

/// How much of a demand is that of a part that goes with the frame as it gives way, 0 to 1: nothing
/// is added then to what was reached, else it goes on in proportion. A stress over half of the
/// capacity that has grown to twice as much as the load may be one that soars; from a quarter on,
/// and a quarter more than the load, ever less, so that a little more load never seems to ask less
/// (proposal). What presses a column goes on with the load.
double soaring(const Criterion& criterion, const Ranked& r, double reached, double there) {
  if (criterion.kind == Criterion::Kind::column) return 0.0;
  const double grown = there / (reached * r.at_one);
  const double by_growth =
      std::isfinite(grown) ? std::clamp((grown - kGrows) / (kSoared - kGrows), 0.0, 1.0) : 1.0;
  return by_growth * std::clamp((there - kSoarsFrom) / (kFarWithin - kSoarsFrom), 0.0, 1.0);
}

LoadLimit limit_of(const Criterion& criterion, const Ranked& r) {
  if (!(r.at_one > 0.0) && !(r.at_looked > 0.0)) return {Ends::far_within};
  const auto ratio = [&](double multiple) { return r.asked.cell->ratio_at(criterion, multiple); };
  const LimitFound found =
      load_limit(ratio, r.at_one, kHighestMultiple, r.asked.cell->known_ratios(criterion));
  if (found.multiple >= kHighestMultiple) return {Ends::far_within};
  const std::optional<double> edge = edge_at(criterion, r, found);
  if (!edge) return {Ends::at_limit, found.multiple, found.multiple};
  const double reached = kShortOfEdge * *edge;
  const double there = ratio(reached);
  if (!(there < 1.0)) return {Ends::at_limit, found.multiple, found.multiple};
  // Losing stability is a check of its own, with its own factor.
  const double soars = soaring(criterion, r, reached, there);
  const double factor = in_proportion(reached, there + soars * (1.0 - there));
  return {Ends::gives_way, factor, reached, *edge};
}

/// Whether a check holds at a multiple, by what is known of two around it: between them its demand
/// over the multiple is taken to be no more than at the larger end.
bool holds_between(const Criterion& criterion, const Cell& cell, double multiple) {
  const auto around = cell.kept_around(multiple);
  if (!around || cell.beyond_followed(criterion, around->second)) return false;
  const auto holds = [&](double known) {
    return cell.ratio_kept(criterion, known) * multiple / known <= 1.0;
  };
  return holds(around->first) && holds(around->second);
}

/// Of cells far within their limit, the one with the largest demand at its required multiple.
std::optional<WorstCase> most_demanding(const std::vector<Ranked>& far) {
  const auto most = std::max_element(far.begin(), far.end(), [](const Ranked& a, const Ranked& b) {
    return a.at_required() < b.at_required();
  });
  if (most == far.end()) return std::nullopt;
  const double looked_at = most->asked.factor.looked_at();
  return WorstCase{most->asked,
                   {Ends::far_within, in_proportion(looked_at, most->at_looked), looked_at}};
}

}  // namespace

bool holds_by_far(const Criterion& criterion, const Asked& asked, double most) {
  return bounds_of(criterion, asked).high < most;
}

std::optional<WorstCase> worst_case(const Criterion& criterion, const std::vector<Asked>& asked,
                                    double floor, const SolveAsked& solve,
                                    const std::vector<LookedAt>& like, const Keep& keep) {
  if (asked.empty()) return std::nullopt;
  double from = matters_from(floor);
  if (keep.in != nullptr) from = std::min(from, keep.from);
  std::vector<Ranked> all =
      ranked_ones(criterion, foremost(criterion, asked, from), floor, from, solve, like);
  if (keep.in != nullptr) {
    for (const Ranked& r : all) {
      const bool says = std::isfinite(r.at_looked) && !levels_off(r);
      if (says) keep.in->push_back(as_looked_at(criterion, r));
    }
  }
  const auto first_far = std::stable_partition(
      all.begin(), all.end(), [](const Ranked& r) { return !(r.at_required() < kFarWithin); });
  const std::vector<Ranked> far(first_far, all.end());
  all.erase(first_far, all.end());
  std::stable_sort(all.begin(), all.end(),
                   [](const Ranked& a, const Ranked& b) { return a.estimate() > b.estimate(); });
  std::optional<WorstCase> worst;
  double utilization = floor;
  // One that is not far within can still end with less: where the frame gives way early, all that
  // is known of it is that.
  if (const std::optional<WorstCase> mild = most_demanding(far)) {
    const double of_mild = mild->asked.factor.value / mild->limit.factor;
    if (all.empty() ? !(floor > kFarWithin) : of_mild > floor) {
      worst = mild;
      utilization = std::max(floor, of_mild);
    }
  }
  const Ranked* last = nullptr;
  for (const Ranked& r : all) {
    // Where the frame gives way before the multiple that was looked at, the estimate is none.
    const bool is_estimate = std::isfinite(r.at_looked);
    if (utilization > 0.0 && is_estimate && r.estimate() < kNearWorst * utilization) continue;
    const bool same_again =
        last != nullptr && is_estimate && std::isfinite(last->at_looked) &&
        &last->asked.cell->load_case() == &r.asked.cell->load_case() &&
        std::abs(last->estimate() - r.estimate()) < kSameEstimate * r.estimate();
    if (same_again) continue;
    last = &r;
    if (utilization > 0.0) {
      const double multiple = r.asked.factor.value / utilization;
      if (holds_between(criterion, *r.asked.cell, multiple) ||
          r.asked.cell->ratio_at(criterion, multiple) <= 1.0) {
        continue;
      }
    }
    const LoadLimit limit = limit_of(criterion, r);
    if (utilization > 0.0 && !(r.asked.factor.value / limit.factor > utilization)) continue;
    worst = WorstCase{r.asked, limit};
    utilization = r.asked.factor.value / limit.factor;
  }
  return worst;
}

}  // namespace studies
