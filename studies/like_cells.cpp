#include "studies/like_cells.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "studies/combined_criterion.hpp"
#include "studies/unsolved_cell.hpp"

namespace studies {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

// Of the change from another design in the first set, what it may be off by in another; of what
// changes, at the least; and of a critical factor (proposals, as those of unsolved_cell.cpp).
constexpr double kOfDesign = 0.5;
constexpr double kOfSets = 0.01;
constexpr double kOfCritical = 0.9;

}  // namespace

void LikeCells::begin_set(const SetModel& model) {
  if (counted_->known == nullptr) return;
  if (!resized_) resized_ = counted_->known->resized(model.assembly());
  apart_ = counted_->known->apart(model.set());
}

void LikeCells::add(const Cell& cell) {
  told_.push_back(false);
  known_.emplace_back();
  known_in_its_set_.push_back(nullptr);
  if (counted_->known == nullptr) return;
  Known& all = known_.back();
  all = counted_->known->nearest(cell.load_case().name, apart_);
  const bool in_its_set = !all.empty() && all.front()->name.set == cell.model().set().name;
  if (in_its_set) known_in_its_set_.back() = all.front();
}

/// The same load case in the first set; null where it is not solved, or is this one.
const Cell* LikeCells::solved_in_first_set(const Cell& cell) const {
  const Cell& first = same_in_first_set(cell);
  return &first != &cell && first.is_solved() ? &first : nullptr;
}

/// The same load case in the other sets that are solved and that it goes on as.
std::vector<const Cell*> LikeCells::solved_alike(const Cell& cell) const {
  std::vector<const Cell*> out;
  for (std::size_t i = number_of(cell) % cases_->size(); i < cells_->size(); i += cases_->size()) {
    const Cell& other = (*cells_)[i];
    if (!other.is_solved()) continue;
    const std::optional<KnownCell> known = KnownCell::of(other);
    if (known && goes_on_as(*known, cell)) out.push_back(&other);
  }
  return out;
}

std::optional<KnownCell> LikeCells::known_beside(const Cell& cell) const {
  if (const Cell* first = solved_in_first_set(cell)) return KnownCell::of(*first);
  if (!known(cell).empty()) return known(cell).front()->cell;
  return std::nullopt;
}

std::optional<double> LikeCells::tell(const Cell& cell) {
  const Cell& first = same_in_first_set(cell);
  const KnownDesign::Known* here = known_in_its_set(cell);
  const KnownDesign::Known* there = known_in_its_set(first);
  if (&first == &cell || first.is_solved() || here == nullptr || there == nullptr) {
    return std::nullopt;
  }
  const double change = first.lowest_critical_factor / there->cell.lowest_critical_factor;
  told_[number_of(cell)] = true;
  return kOfCritical * std::min(1.0, change) * here->cell.lowest_critical_factor;
}

/// The parts asked for are of another size than in the design that is known: what they would be
/// asked there is told by their own. Null for the others, and where that cannot be told.
const parts::Assembly* LikeCells::sized(const Criterion& criterion) const {
  const parts::Assembly& assembly = cells_->front().assembly();
  const std::string& part = part_judged(criterion, assembly);
  const bool of_root = assembly.root && assembly.root->part == part;
  const bool can = resized_ && !of_root && rests_on_piece(criterion, assembly);
  return can && counted_->is_asked(part) ? &*resized_ : nullptr;
}

/// What a check asks where it is known, beside a cell that is not solved.
std::vector<KnownDemand> LikeCells::demands(const Criterion& criterion, const Cell& cell,
                                            bool at_ride) const {
  std::vector<KnownDemand> out;
  if (const Cell* first = solved_in_first_set(cell)) {
    if (const Cell* there = first->in_place(at_ride)) {
      out.push_back(KnownDemand::of(criterion, *there));
    }
  }
  for (const KnownDesign::Known* other : known(cell)) {
    const auto there = counted_->known->demand(*other, criterion, at_ride, sized(criterion));
    if (there) out.push_back(*there);
  }
  return out;
}

/// Where the other design is solved in the same set and in one that is solved here. Infinite where
/// that cannot be told.
double LikeCells::at_most_between(const Criterion& criterion, const Cell& cell,
                                  bool at_ride) const {
  const auto solved_there = [&](const Cell& one) -> std::optional<double> {
    const KnownDesign::Known* other = known_in_its_set(one);
    if (other == nullptr || !other->reached) return std::nullopt;
    const auto demand = counted_->known->demand(*other, criterion, at_ride, nullptr);
    return demand && demand->at_load > 0.0 ? std::optional(demand->at_load) : std::nullopt;
  };
  // What second order makes of another size differs from set to set.
  if (sized(criterion) != nullptr) return kInfinite;
  const std::optional<double> there = solved_there(cell);
  if (!there) return kInfinite;
  for (std::size_t i = number_of(cell) % cases_->size(); i < cells_->size(); i += cases_->size()) {
    const Cell& beside = (*cells_)[i];
    if (!beside.is_solved() || !beside.trouble.empty() || !carried(beside.kept(1.0))) continue;
    const Cell* place = beside.in_place(at_ride);
    const std::optional<double> beside_there = solved_there(beside);
    if (place == nullptr || !beside_there) continue;
    return at_most_as_there(place->ratio_kept(criterion, 1.0), *there, *beside_there);
  }
  return kInfinite;
}

std::optional<Asked> LikeCells::asked(const Criterion& criterion, const Cell& cell,
                                      bool at_ride) const {
  if (is_told(cell)) return asked_as_told(criterion, cell, at_ride);
  return asked_beside(criterion, cell, at_ride, demands(criterion, cell, at_ride));
}

/// What second order makes of a demand differs more from set to set than first order does: as much
/// is taken as in the one where it makes most.
std::optional<Asked> LikeCells::asked_beside_all(const Criterion& criterion, const Cell& cell,
                                                 bool at_ride) const {
  std::vector<KnownDemand> all = demands(criterion, cell, at_ride);
  const bool is_known = !all.empty();
  for (const Cell* solved : is_known ? solved_alike(cell) : std::vector<const Cell*>()) {
    const Cell* there = solved->in_place(at_ride);
    if (there != nullptr) all.push_back(KnownDemand::of(criterion, *there));
  }
  double most_grown = 0.0;
  for (const KnownDemand& one : all) {
    if (one.by_first_order > 0.0) {
      most_grown = std::max(most_grown, one.at_load / one.by_first_order);
    }
  }
  for (KnownDemand& one : all) {
    one.at_load = std::max(one.at_load, most_grown * one.by_first_order);
  }
  return asked_beside(criterion, cell, at_ride, all);
}

/// @param beside  what the check asks where it is known
std::optional<Asked> LikeCells::asked_beside(const Criterion& criterion, const Cell& cell,
                                             bool at_ride,
                                             const std::vector<KnownDemand>& beside) const {
  if (beside.empty() && at_ride) return std::nullopt;
  double most = at_most_between(criterion, cell, at_ride);
  bool any_says = beside.empty() || criterion.kind != Criterion::Kind::combined;
  for (const KnownDemand& there : beside) {
    any_says = any_says || !there.is_silent;
    most = std::min(most, at_most_unsolved(cell.ratio_by_first_order(criterion),
                                           cell.lowest_critical_factor, there));
  }
  if (!any_says && !cell.combined_by_first_order(criterion).counts) {
    return std::nullopt;
  }
  return Asked{.cell = &cell,
               .factor = asked_by_first_order(criterion, cell),
               .at_ride = at_ride,
               .at_most = most,
               .closed = cell.first_order().closed_stops};
}

/// Worked out once for all sets of a check and load case.
const LikeCells::InFirst& LikeCells::in_first_set(const Criterion& criterion, const Cell& first,
                                                  bool at_ride) const {
  if (!of_ || of_->kind != criterion.kind || of_->index != criterion.index) {
    of_ = criterion;
    in_first_.assign(2 * cases_->size(), std::nullopt);
  }
  std::optional<InFirst>& out = in_first_[2 * number_of(first) + (at_ride ? 1 : 0)];
  if (out) return *out;
  out.emplace();
  const KnownDesign::Known& other = *known(first).front();
  const bool there = at_ride && other.has_ride;
  const auto as_solved = counted_->known->demand(other, criterion, there, nullptr);
  const auto now = counted_->known->demand(other, criterion, there, sized(criterion));
  out->factor = asked_by_first_order(criterion, first);
  out->factor.value = std::max(out->factor.value, out->factor.looked_at());
  if (!as_solved || !now) return *out;
  const auto ratio = [](double a, double b) { return b > 0.0 ? a / b : a > 0.0 ? kInfinite : 1.0; };
  out->is_known = true;
  out->at_load = ratio(now->at_load, as_solved->at_load);
  out->by_first_order = ratio(now->by_first_order, as_solved->by_first_order);
  const double first_order = first.ratio_by_first_order(criterion);
  out->change = ratio(first_order, now->by_first_order);
  out->changed_by = first_order - now->by_first_order;
  out->is_silent = now->is_silent && !asked(criterion, first, at_ride);
  return *out;
}

/// A demand by first order, changed as in the first set: in proportion, or, where there was none
/// there, by as much.
double LikeCells::changed(double demand, const InFirst& first) {
  if (!std::isfinite(first.change)) return demand + (1.0 + kOfDesign) * std::abs(first.changed_by);
  return demand * first.change * (1.0 + kOfSets + kOfDesign * std::abs(first.change - 1.0));
}

std::optional<Asked> LikeCells::asked_as_told(const Criterion& criterion, const Cell& cell,
                                              bool at_ride) const {
  const KnownDesign::Known& other = *known(cell).front();
  const auto as_solved = counted_->known->demand(other, criterion, at_ride, nullptr);
  if (!as_solved && at_ride) return std::nullopt;
  const InFirst& first = in_first_set(criterion, same_in_first_set(cell), at_ride);
  double most = kInfinite;
  if (as_solved && first.is_known) {
    if (as_solved->is_silent && first.is_silent) return std::nullopt;
    KnownDemand here = *as_solved;
    here.at_load *= first.at_load;
    here.by_first_order *= first.by_first_order;
    most = std::min(
        at_most_between(criterion, cell, at_ride),
        at_most_unsolved(changed(here.by_first_order, first), cell.lowest_critical_factor, here));
  }
  return Asked{.cell = &cell,
               .factor = first.factor,
               .at_ride = at_ride,
               .at_most = most,
               .closed = other.cell.closed_by_first_order};
}

std::vector<LookedAt> LikeCells::looked_at(const Criterion& criterion) const {
  if (counted_->known == nullptr) return {};
  return counted_->known->looked_at(criterion, sized(criterion));
}

}  // namespace studies
