#include "studies/first_look.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "studies/combined_criterion.hpp"
#include "studies/criterion.hpp"
#include "studies/seen_buckling.hpp"
#include "studies/trouble.hpp"
#include "studies/unsolved_cell.hpp"
#include "studies/worst_case.hpp"

namespace studies {
namespace {

// What is over by less is left to the search for the limit.
constexpr double kClearly = 1.02;

// What is over by so much as a design that differs in little tells is not solved. Of the change
// from there, what first order may not see.
constexpr double kSurely = 1.3;

// The critical factor is that of the whole check, to so much.
constexpr double kSameFactor = 1.0 + 1.0e-6;

// Where the frame gives way below the multiple asked for, the demand there is at least that much of
// what it is in proportion to the load itself: without stops, with them, and by first order alone
// where the load itself is not carried.
constexpr double kSurelyLeft = 1.0 / 1.15;
constexpr double kSurelyLeftWithStops = 1.0 / 1.5;
constexpr double kSurelyLeftOfFirstOrder = 1.0 / 3.0;

double demand_in_proportion(const Criterion& criterion, const Cell& cell, double multiple) {
  const CaseSolution& at_load = cell.kept(1.0);
  if (!carried(at_load)) {
    return kSurelyLeftOfFirstOrder * multiple *
           demand_over_capacity(criterion, cell.assembly(), at_load.linear());
  }
  const double left = cell.assembly().stops.empty() ? kSurelyLeft : kSurelyLeftWithStops;
  return left * multiple * cell.ratio_kept(criterion, 1.0);
}

/// Demand over capacity at the multiple asked for, the lower one where it is asked for at two; 0
/// where that is not known or the check does not apply.
double demand_asked(const Criterion& criterion, const Cell& solved, double most) {
  const Cell& cell = solved.asking_most(criterion);
  const CaseSolution& at_load = cell.kept(1.0);
  const fea::Solution& solution = carried(at_load) ? at_load.solution : at_load.linear();
  if (criterion.kind == Criterion::Kind::combined &&
      !combined_counts(cell.assembly().pieces[criterion.index], solution)) {
    return 0.0;
  }
  const AskedFactor asked = asked_in(criterion, cell);
  const auto demand = [&](double multiple) {
    const double there = carried(at_load) ? cell.ratio_kept(criterion, multiple)
                                          : std::numeric_limits<double>::infinity();
    return std::isinf(there) ? demand_in_proportion(criterion, cell, multiple) : there;
  };
  double least = demand(asked.looked_at() / most);
  if (least > 1.0 && asked.value < asked.looked_at()) {
    least = std::min(least, demand(asked.value / most));
  }
  return std::isnan(least) ? 0.0 : least;
}

std::optional<SeenOver> most_over(const Cell& cell, const Counted& counted, double most) {
  std::optional<SeenOver> worst;
  double demand = kClearly;
  for (const Criterion& criterion : criteria(cell.assembly())) {
    const std::string& part = part_judged(criterion, cell.assembly());
    // How far its load is followed is not known before the frame was buckled: Cell::followed_to.
    if (criterion.kind == Criterion::Kind::joint) continue;
    if (!counted.is_asked(part) || cell.trouble_for(part) != nullptr) continue;
    const double there = demand_asked(criterion, cell, most);
    if (!(there > demand)) continue;
    demand = there;
    worst =
        SeenOver{part, check_name(criterion.kind), cell.load_case().name, cell.model().set().name};
  }
  return worst;
}

/// What is over by so much, as the design that is known tells, that it need not be solved: what its
/// forces would ask of the size, changed as first order changes from there to here.
std::optional<SeenOver> surely_over(const Cell& cell, const Counted& counted, double most) {
  if (counted.known == nullptr) return std::nullopt;
  const KnownDesign& known = *counted.known;
  const std::optional<parts::Assembly> sized = known.resized(cell.assembly());
  const CellName name = name_of(cell);
  const KnownDesign::Known* there = known.find(name);
  if (!sized || there == nullptr || !carried(cell.first_order()) ||
      cell.first_order().closed_stops != there->cell.closed_by_first_order) {
    return std::nullopt;
  }
  std::optional<SeenOver> worst;
  double demand = kSurely * most;
  for (const Criterion& criterion : criteria(cell.assembly())) {
    const std::string& part = part_judged(criterion, cell.assembly());
    if (!counted.is_asked(part) || !rests_on_piece(criterion, cell.assembly())) continue;
    const double here = cell.ratio_by_first_order(criterion);
    const double before = demand_over_capacity(criterion, *sized, there->first_order);
    const double least = at_least_by(here / before);
    const AskedFactor asked = asked_by_first_order(criterion, cell);
    for (const LookedAt& looked : known.looked_at(criterion, &*sized, &name)) {
      if (looked.at_ride) continue;
      const double required = std::min(asked.value, looked.multiple);
      const double by_known = least * looked.there * required / looked.multiple;
      const double now = std::min(by_known, required * here);
      if (!(now > demand)) continue;
      demand = now;
      worst = SeenOver{part, check_name(criterion.kind), name.load_case, name.set};
    }
  }
  return worst;
}

/// The frame's stability, by its lowest critical factors: of tipping and of all else, as a run
/// judges it.
std::optional<SeenOver> stability_over(const Cell& cell, const Counted& counted, double most) {
  constexpr int kLowest = 0;
  const parts::Assembly& assembly = cell.assembly();
  const SeenBuckling buckling = seen_buckling(cell, kLowest);
  for (const ModeOf* mode : first_of_each_way(buckling.modes)) {
    if (!counted.is_asked(mode->part)) continue;
    const double required =
        asked_of(*mode, assembly, cell.model().design().factors, cell.load_case().abuse);
    if (!(required > kSameFactor * most * mode->critical.factor)) continue;
    return SeenOver{mode->part, kFrameStability, cell.load_case().name, cell.model().set().name};
  }
  return std::nullopt;
}

}  // namespace

std::optional<SeenOver> first_look(const parts::Design& design, const Counted& counted,
                                   double most) {
  const std::vector<parts::StiffnessSet> sets = parts::stiffness_sets(design);
  const std::vector<parts::DesignCase> cases = parts::design_cases(design);
  BuiltFrames built = counted.known != nullptr ? counted.known->built() : BuiltFrames();
  std::map<std::string, SetModel> models;
  for (const CellName& name : counted.look_first) {
    const auto set = std::find_if(sets.begin(), sets.end(),
                                  [&](const parts::StiffnessSet& s) { return s.name == name.set; });
    const auto load_case =
        std::find_if(cases.begin(), cases.end(),
                     [&](const parts::DesignCase& c) { return c.name == name.load_case; });
    if (set == sets.end() || load_case == cases.end()) continue;
    const SetModel& model = models.try_emplace(name.set, design, *set, &built).first->second;
    Cell cell(model, *load_case);
    if (std::optional<SeenOver> over = surely_over(cell, counted, most)) return over;
    cell.trouble = trouble_by_part(model, cell.kept(1.0));
    if (std::optional<SeenOver> over = most_over(cell, counted, most)) return over;
    if (std::optional<SeenOver> over = stability_over(cell, counted, most)) return over;
  }
  return std::nullopt;
}

}  // namespace studies
