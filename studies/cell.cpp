#include "studies/cell.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "studies/trouble.hpp"

namespace studies {

bool carried(const CaseSolution& solved) {
  return solved.solution.status() == fea::SolveStatus::converged && solved.contact_settled;
}

namespace {

/// Whether a stop carries that the axle was going away from under less load.
bool crosses_over(const parts::Assembly& assembly, const fea::Solution& under_less,
                  Contacts closed) {
  for (std::size_t i = 0; i < assembly.stops.size(); ++i) {
    const parts::TravelStop& stop = assembly.stops[i];
    if (!stop.known() || (closed & (1U << i)) == 0) continue;
    if (stop.sense() * rise_of(stop.node, stop.offset_g, under_less) < 0.0) return true;
  }
  return false;
}

/// Whether a stop carries, and one of its kind does not that the axle was nearer to under less
/// load.
bool leaves_out_the_nearest(const parts::Assembly& assembly, const fea::Solution& under_less,
                            Contacts closed) {
  const std::vector<parts::TravelStop>& stops = assembly.stops;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    if (!stops[i].known() || (closed & (1U << i)) == 0) continue;
    const double overlap = overlap_of(stops[i], under_less);
    for (std::size_t other = 0; other < stops.size(); ++other) {
      const bool open_one = stops[other].known() && stops[other].kind == stops[i].kind &&
                            (closed & (1U << other)) == 0;
      if (open_one && overlap_of(stops[other], under_less) > overlap) return true;
    }
  }
  return false;
}

}  // namespace

CaseSolution Cell::solve(double multiple) const {
  // Large displacements find a place sooner by one halfway than from afar.
  constexpr double kAfar = 1.6;
  if (*method_ == fea::Method::large_displacement) {
    const double less = carried_below(multiple).first;
    if (less >= 1.0 && multiple > kAfar * less) {
      CaseSolution halfway = at(std::sqrt(less * multiple));
      if (!carried(halfway)) return halfway;
    }
  }
  NearSolution near;
  double least = std::numeric_limits<double>::infinity();
  const auto consider = [&](const auto& known) {
    const double apart = std::abs(std::log(known.first / multiple));
    if (known.second.solution.status() != fea::SolveStatus::converged || !(apart < least)) return;
    least = apart;
    near = {&known.second, known.first};
  };
  for (const auto& known : kept_) consider(known);
  for (const auto& known : recent_) consider(known);
  if (kept_.empty() && beside_ != nullptr) {
    // Of other joints, as where a brace's end is rigid there, it is no place to start from.
    for (const auto& known : beside_->kept_) {
      if (*method_ == fea::Method::second_order || model_->can_start_from(known.second)) {
        consider(known);
      }
    }
  }
  if (near.solved == nullptr && second_order_ && carried(*second_order_)) {
    near = {&*second_order_, 1.0};
  }
  const bool moves = *method_ == fea::Method::large_displacement || multiple >= turns_far_from_;
  CaseSolution solved = moves ? model_->solve_moved(*load_case_, multiple, near)
                              : model_->solve(*load_case_, multiple, near);
  // Second order that leaves small rotations says nothing of the frame: where it went is looked
  // for.
  const bool says_nothing = !moves && solved.solution.status() == fea::SolveStatus::not_converged;
  if (says_nothing && model_->can_move(*load_case_)) {
    if (near.solved == nullptr) near = {&solved, multiple};
    CaseSolution moved = model_->solve_moved(*load_case_, multiple, near);
    if (carried(moved)) {
      solved = std::move(moved);
      turns_far_from_ = std::min(turns_far_from_, multiple);
    }
  }
  if (multiple > 1.0 && carried(solved) && !comes_to(solved, multiple)) {
    solved.contact_settled = false;
  }
  if (!carried(solved)) lost_from_ = std::min(lost_from_, multiple);
  return solved;
}

/// Whether the load comes to an equilibrium as it grows. A frame that it tips may stand under more
/// of it on a stop of the other side, where nothing brings it: looked at halfway, and again.
bool Cell::comes_to(const CaseSolution& solved, double multiple) const {
  constexpr double kNextTo = 1.05;
  while (true) {
    const auto [less, before] = carried_below(multiple);
    if (before == nullptr) return true;
    const bool crosses = crosses_over(assembly(), before->solution, solved.closed_stops);
    if (!crosses && !leaves_out_the_nearest(assembly(), before->solution, solved.closed_stops)) {
      return true;
    }
    if (multiple <= kNextTo * less) return !crosses;
    if (!carried(at(std::sqrt(less * multiple)))) return false;
  }
}

/// The largest multiple below one at which the frame is known to stand; null where none is.
std::pair<double, const CaseSolution*> Cell::carried_below(double multiple) const {
  std::pair<double, const CaseSolution*> out(0.0, nullptr);
  const auto consider = [&](const auto& known) {
    if (known.first >= multiple || known.first <= out.first || !carried(known.second)) return;
    out = {known.first, &known.second};
  };
  for (const auto& known : kept_) consider(known);
  for (const auto& known : recent_) consider(known);
  return out;
}

/// The stops and straps that carry in the set beside, by second order at the load itself.
Contacts Cell::beside_touching() const {
  if (beside_ == nullptr) return 0;
  if (!beside_->is_solved()) return beside_->first_order().closed_stops;
  beside_->choose_method();
  const CaseSolution& there =
      beside_->second_order_ ? *beside_->second_order_ : beside_->kept_.at(1.0);
  return there.closed_stops;
}

/// Decided by second order at the load itself.
void Cell::choose_method() const {
  if (method_) return;
  CaseSolution solved = model_->solve(*load_case_, 1.0, {}, beside_touching());
  const bool same_contacts = first_order_ && first_order_->closed_stops == solved.closed_stops;
  if (same_contacts) solved.linear = first_order_->linear;
  const bool far = in_proportion() || moves_far(*model_, solved);
  if (far && model_->can_move(*load_case_)) {
    method_ = fea::Method::large_displacement;
    second_order_ = std::move(solved);
  } else {
    method_ = fea::Method::second_order;
    if (!carried(solved)) lost_from_ = 1.0;
    kept_.emplace(1.0, std::move(solved));
  }
}

bool Cell::in_proportion() const {
  return load_case_->place.given() || load_case_->posture == loads::Posture::droop;
}

std::optional<double> Cell::kept_below(double multiple) const {
  const auto above = kept_.lower_bound(multiple);
  if (in_proportion() || above == kept_.begin()) return std::nullopt;
  const auto below = std::prev(above);
  const bool alike =
      below->first > 1.0 && carried(below->second) && below->second.closed_stops == closed_at(1.0);
  return alike ? std::optional(below->first) : std::nullopt;
}

std::optional<std::pair<double, double>> Cell::kept_around(double multiple) const {
  const auto above = kept_.lower_bound(multiple);
  if (in_proportion() || above == kept_.begin() || above == kept_.end()) return std::nullopt;
  const auto below = std::prev(above);
  const bool alike = carried(below->second) && carried(above->second) &&
                     below->second.closed_stops == above->second.closed_stops;
  if (!alike || above->first >= lost_from_) return std::nullopt;
  return std::pair(below->first, above->first);
}

const Cell* Cell::at_ride() const {
  choose_method();
  if (!second_order_ || in_proportion() || !carried(*second_order_)) return nullptr;
  if (!carried(kept(1.0))) return nullptr;
  if (!at_ride_) {
    at_ride_ = std::make_unique<Cell>(*model_, *load_case_);
    at_ride_->reached_ = kept(1.0);
    at_ride_->method_ = fea::Method::second_order;
    at_ride_->kept_.emplace(1.0, *second_order_);
  }
  at_ride_->lowest_critical_factor = lowest_critical_factor;
  at_ride_->followed_to = followed_to;
  return at_ride_.get();
}

const Cell& Cell::asking_most(const Criterion& criterion) const {
  const Cell* other = at_ride();
  if (other == nullptr) return *this;
  return other->ratio_kept(criterion, 1.0) > ratio_kept(criterion, 1.0) ? *other : *this;
}

const CaseSolution& Cell::first_order() const {
  if (!first_order_) {
    const Contacts touching = beside_ != nullptr ? beside_->first_order().closed_stops : 0;
    first_order_ = model_->first_order(*load_case_, touching);
  }
  return *first_order_;
}

double Cell::ratio_by_first_order(const Criterion& criterion) const {
  if (const double* known = first_order_ratios_.find(criterion)) return *known;
  if (criterion.kind == Criterion::Kind::combined && carried(first_order())) {
    return first_order_ratios_.put(criterion, combined_by_first_order(criterion).used);
  }
  return first_order_ratios_.put(
      criterion, demand_over_capacity(criterion, assembly(), first_order().solution));
}

bool Cell::is_moved_by_first_order() const {
  if (!first_order_moves_) {
    first_order_moves_ = in_proportion() || moves_far(*model_, first_order());
  }
  return *first_order_moves_;
}

bool Cell::is_in_trouble_by_first_order() const {
  if (!first_order_in_trouble_) {
    first_order_in_trouble_ = !trouble_by_part(*model_, first_order()).empty();
  }
  return *first_order_in_trouble_;
}

bool Cell::is_near_trouble_by_first_order() const {
  // What moves far may go twice as far as first order says (proposal).
  constexpr double kHalf = 0.5;
  if (!first_order_near_trouble_) {
    first_order_near_trouble_ = is_near_trouble(*model_, first_order(), kHalf);
  }
  return *first_order_near_trouble_;
}

double Cell::ratio_reached(const Criterion& criterion) const {
  return reached_ ? ratio_of(criterion, *reached_, 1.0) : base::kUnset;
}

const CaseSolution& Cell::kept(double multiple) const {
  choose_method();
  if (in_proportion()) multiple = 1.0;
  const auto found = kept_.find(multiple);
  if (found != kept_.end()) return found->second;
  return kept_.emplace(multiple, solve(multiple)).first->second;
}

CaseSolution Cell::at(double multiple) const {
  choose_method();
  if (in_proportion()) return kept(1.0);
  constexpr std::size_t kMostRecent = 12;
  const auto kept = kept_.find(multiple);
  if (kept != kept_.end()) return kept->second;
  for (const auto& [known, solved] : recent_) {
    if (known == multiple) return solved;
  }
  CaseSolution solved = solve(multiple);
  // What was lost is neither asked for again nor a place to start from.
  if (!carried(solved)) return solved;
  recent_.emplace_front(multiple, std::move(solved));
  if (recent_.size() > kMostRecent) recent_.pop_back();
  return recent_.front().second;
}

const std::string* Cell::trouble_for(const std::string& part) const {
  for (const std::string& key : {std::string(), part}) {
    const auto found = trouble.find(key);
    if (found != trouble.end()) return &found->second;
  }
  return nullptr;
}

namespace {

AskedFactor asked_by(const Criterion& criterion, const Cell& cell, const fea::Solution& solution,
                     double multiple) {
  const bool carries = solution.status() == fea::SolveStatus::converged;
  AskedFactor asked = asked_factor(criterion, cell.assembly(), cell.model().design().factors,
                                   cell.load_case().abuse, carries ? &solution : nullptr);
  asked.combined.multiple = cell.in_proportion() ? 1.0 : multiple;
  return asked;
}

}  // namespace

AskedFactor asked_in(const Criterion& criterion, const Cell& cell, double multiple) {
  if (criterion.kind == Criterion::Kind::combined && multiple == 1.0) {
    return cell.combined(criterion).asked;
  }
  return asked_by(criterion, cell, cell.kept(multiple).solution, multiple);
}

AskedFactor asked_by_first_order(const Criterion& criterion, const Cell& cell) {
  if (criterion.kind == Criterion::Kind::combined) {
    return cell.combined_by_first_order(criterion).asked;
  }
  return asked_by(criterion, cell, cell.first_order().solution, 1.0);
}

bool says_nothing(const Criterion& criterion, const Cell& cell) {
  return criterion.kind == Criterion::Kind::combined && carried(cell.kept(1.0)) &&
         !cell.combined(criterion).counts;
}

const CombinedUse& Cell::combined(const Criterion& criterion) const {
  return combined_in(kept(1.0), criterion, combined_);
}

const CombinedUse& Cell::combined_by_first_order(const Criterion& criterion) const {
  return combined_in(first_order(), criterion, first_order_combined_);
}

/// @param known  by piece
const CombinedUse& Cell::combined_in(const CaseSolution& solved, const Criterion& criterion,
                                     std::vector<std::optional<CombinedUse>>& known) const {
  if (known.empty()) known.resize(assembly().pieces.size());
  std::optional<CombinedUse>& here = known[criterion.index];
  if (!here) {
    const bool carries = solved.solution.status() == fea::SolveStatus::converged;
    here = combined_use(assembly().pieces[criterion.index], carries ? &solved.solution : nullptr,
                        model_->design().factors, load_case_->abuse);
  }
  return *here;
}

bool Cell::beyond_followed(const Criterion& criterion, double multiple) const {
  return criterion.kind == Criterion::Kind::joint && multiple > followed_to && followed_to >= 1.0;
}

double Cell::ratio_kept(const Criterion& criterion, double multiple) const {
  if (beyond_followed(criterion, multiple)) {
    return multiple / followed_to * ratio_kept(criterion, followed_to);
  }
  if (multiple >= lost_from_) return std::numeric_limits<double>::infinity();
  if (in_proportion()) return multiple * ratio_once(criterion, 1.0);
  return ratio_once(criterion, multiple);
}

double Cell::ratio_at(const Criterion& criterion, double multiple) const {
  if (beyond_followed(criterion, multiple)) {
    return multiple / followed_to * ratio_at(criterion, followed_to);
  }
  if (multiple >= lost_from_) return std::numeric_limits<double>::infinity();
  if (in_proportion()) return multiple * ratio_once(criterion, 1.0);
  if (kept_.find(multiple) != kept_.end()) return ratio_once(criterion, multiple);
  return ratio_of(criterion, at(multiple), multiple);
}

std::map<double, double> Cell::known_ratios(const Criterion& criterion) const {
  std::map<double, double> out;
  if (in_proportion()) return out;
  for (const auto& [multiple, solved] : kept_) {
    if (carried(solved) && multiple < lost_from_) {
      out.emplace(multiple, ratio_once(criterion, multiple));
    }
  }
  for (const auto& [multiple, solved] : recent_) {
    if (carried(solved) && multiple < lost_from_) {
      out.emplace(multiple, ratio_of(criterion, solved, multiple));
    }
  }
  if (std::isfinite(lost_from_)) out.emplace(lost_from_, std::numeric_limits<double>::infinity());
  return out;
}

/// Worked out at first use, then remembered.
double Cell::ratio_once(const Criterion& criterion, double multiple) const {
  KnownRatios& known = ratios_[multiple];
  if (const double* ratio = known.find(criterion)) return *ratio;
  const bool at_load = multiple == 1.0 && carried(kept(1.0));
  if (criterion.kind == Criterion::Kind::combined && at_load) {
    return known.put(criterion, combined(criterion).used);
  }
  return known.put(criterion, ratio_of(criterion, kept(multiple), multiple));
}

double Cell::ratio_of(const Criterion& criterion, const CaseSolution& solved,
                      double multiple) const {
  if (!carried(solved)) return std::numeric_limits<double>::infinity();
  const double second = demand_over_capacity(criterion, assembly(), solved.solution, multiple);
  if (!is_of_bracket(criterion)) return second;
  const double linear = demand_over_capacity(criterion, assembly(), solved.linear(), multiple);
  return linear > second ? linear : second;
}

bool Cell::is_of_bracket(const Criterion& criterion) const {
  return criterion.kind == Criterion::Kind::weld || criterion.kind == Criterion::Kind::rail_wall ||
         (criterion.kind == Criterion::Kind::yield && assembly().root &&
          assembly().pieces[criterion.index].part == assembly().root->part);
}

const fea::Solution& Cell::judged_by(const Criterion& criterion, const CaseSolution& solved) const {
  if (!is_of_bracket(criterion) || solved.solution.status() != fea::SolveStatus::converged)
    return solved.solution;
  const double second = demand_over_capacity(criterion, assembly(), solved.solution);
  const double linear = demand_over_capacity(criterion, assembly(), solved.linear());
  return linear > second ? solved.linear() : solved.solution;
}

}  // namespace studies
