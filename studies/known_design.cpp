#include "studies/known_design.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "sections/area_props.hpp"
#include "studies/trouble.hpp"

namespace studies {
namespace {

bool are_same(const Criterion& a, const Criterion& b) {
  return a.kind == b.kind && a.index == b.index;
}

/// Whether another section changes most of it, and not the force alone.
bool is_of_section(const Criterion& criterion) {
  using Kind = Criterion::Kind;
  return criterion.kind == Kind::yield || criterion.kind == Kind::column ||
         criterion.kind == Kind::combined || criterion.kind == Kind::thin_wall;
}

/// A demand whose part beyond first order grows by so much, and a half.
double with_softer(double demand, double by_first_order, double softer) {
  constexpr double kHalf = 0.5;
  const double beyond = std::max(0.0, demand - by_first_order);
  return demand + beyond * (softer - 1.0 + kHalf);
}

/// A piece in the beams of another one along the same line. Nothing where its section changes along
/// it: by its beams it is not told then what is where.
std::optional<parts::Piece> in_beams_of(const parts::Piece& other, const parts::Piece& piece) {
  parts::Piece out = piece;
  out.beams = other.beams;
  for (std::size_t i = 0; i < out.beams.size(); ++i) {
    parts::PieceBeam& beam = out.beams[i];
    const double ends = i + 1 < out.beams.size() ? out.beams[i + 1].starts_at : other.center_line;
    const double middle = 0.5 * (beam.starts_at + ends);
    const auto after =
        std::find_if(piece.beams.begin(), piece.beams.end(),
                     [&](const parts::PieceBeam& one) { return one.starts_at > middle; });
    const parts::PieceBeam& there = *std::prev(after);
    if (there.at_a != there.at_b || there.axial || beam.axial) return std::nullopt;
    beam.at_a = there.at_a;
    beam.at_b = there.at_b;
    beam.curved = there.curved;
    beam.parts = there.parts;
  }
  return out;
}

}  // namespace

CellName name_of(const Cell& cell) {
  return {cell.model().set().name, cell.load_case().name};
}

std::optional<KnownCell> KnownCell::of(const Cell& cell) {
  const bool far = cell.lowest_critical_factor > kFarFromCritical;
  const CaseSolution& first_order = cell.first_order();
  if (!far || !carried(first_order) || cell.is_near_trouble_by_first_order()) return std::nullopt;
  KnownCell out{.lowest_critical_factor = cell.lowest_critical_factor,
                .closed_by_first_order = first_order.closed_stops};
  if (!cell.is_solved()) {
    out.is_moved = cell.is_moved_by_first_order();
    return out;
  }
  const CaseSolution& known = cell.kept(1.0);
  if (!carried(known) || !cell.trouble.empty()) return std::nullopt;
  if (is_near_trouble(cell.model(), known)) return std::nullopt;
  out.is_moved = known.method == fea::Method::large_displacement;
  return out;
}

KnownDemand KnownDemand::of(const Criterion& criterion, const Cell& solved) {
  return {.at_load = solved.ratio_kept(criterion, 1.0),
          .by_first_order = solved.ratio_by_first_order(criterion),
          .lowest_critical_factor = solved.lowest_critical_factor,
          .is_silent = says_nothing(criterion, solved)};
}

void KnownDesign::add(const Cell& cell, const std::vector<Criterion>& criteria,
                      const AtMost& at_most, bool has_ride) {
  const std::optional<KnownCell> known = KnownCell::of(cell);
  if (!known) return;
  if (pieces_.empty()) pieces_ = cell.assembly().pieces;
  built_.add(cell.model().factored());
  Known out{.name = name_of(cell),
            .set = number_of(cell.model().set()),
            .number = n_cells_++,
            .cell = *known,
            .first_order = cell.first_order().solution};
  out.has_ride = cell.is_solved() ? cell.at_ride() != nullptr : has_ride;
  if (cell.is_solved()) {
    out.reached = cell.kept(1.0).solution;
    if (out.has_ride) out.ride = cell.at_ride()->kept(1.0).solution;
  }
  const auto demand_in = [&](const Criterion& criterion, bool ride) -> Demand {
    if (!cell.is_solved()) {
      const std::optional<double> most = at_most(criterion, cell, ride);
      return {most.value_or(base::kUnset), !most};
    }
    const Cell& there = *cell.in_place(ride);
    return {there.ratio_kept(criterion, 1.0), says_nothing(criterion, there)};
  };
  for (const Criterion& criterion : criteria) {
    std::vector<Demands>& of_check = demands_of(criterion);
    of_check.resize(n_cells_);
    Demands& here = of_check.back();
    here.is_known = true;
    here.by_first_order = cell.ratio_by_first_order(criterion);
    here.at_place[0] = demand_in(criterion, false);
    if (out.has_ride) here.at_place[1] = demand_in(criterion, true);
  }
  cells_[out.name.load_case].push_back(std::move(out));
}

std::vector<KnownDesign::Demands>& KnownDesign::demands_of(const Criterion& criterion) {
  const auto kind = static_cast<std::size_t>(criterion.kind);
  if (kind >= demands_.size()) demands_.resize(kind + 1);
  std::vector<std::vector<Demands>>& of_kind = demands_[kind];
  if (criterion.index >= of_kind.size()) of_kind.resize(criterion.index + 1);
  return of_kind[criterion.index];
}

const KnownDesign::Demands* KnownDesign::demands(const Known& known,
                                                 const Criterion& criterion) const {
  const auto kind = static_cast<std::size_t>(criterion.kind);
  if (kind >= demands_.size() || criterion.index >= demands_[kind].size()) return nullptr;
  const std::vector<Demands>& all = demands_[kind][criterion.index];
  const bool is_there = known.number < all.size() && all[known.number].is_known;
  return is_there ? &all[known.number] : nullptr;
}

void KnownDesign::add(const Criterion& criterion, const std::string& part,
                      const std::vector<LookedAt>& all) {
  for (const LookedAt& one : all) {
    const Cell& cell = *one.cell;
    const double solved_at = cell.in_proportion()                            ? 1.0
                             : cell.beyond_followed(criterion, one.multiple) ? cell.followed_to
                                                                             : one.multiple;
    looked_.push_back({criterion, part, one, cell.kept(1.0).solution, cell.kept(solved_at).solution,
                       solved_at, cell.first_order().solution});
    looked_.back().at.cell = nullptr;
  }
}

void KnownDesign::take(KnownDesign other) {
  std::vector<std::size_t> numbers;
  for (parts::StiffnessSet& set : other.sets_) numbers.push_back(number_of(set));
  for (auto& [load_case, all] : other.cells_) {
    for (Known& one : all) {
      one.set = numbers[one.set];
      one.number += n_cells_;
    }
    cells_[load_case] = std::move(all);
  }
  for (std::size_t kind = 0; kind < other.demands_.size(); ++kind) {
    for (std::size_t i = 0; i < other.demands_[kind].size(); ++i) {
      const std::vector<Demands>& there = other.demands_[kind][i];
      std::vector<Demands>& all = demands_of({static_cast<Criterion::Kind>(kind), i});
      all.resize(n_cells_);
      all.insert(all.end(), there.begin(), there.end());
    }
  }
  n_cells_ += other.n_cells_;
  std::move(other.looked_.begin(), other.looked_.end(), std::back_inserter(looked_));
  if (pieces_.empty()) pieces_ = std::move(other.pieces_);
  built_.add(other.built_);
}

/// Among the sets that are known; it is one of them after that.
std::size_t KnownDesign::number_of(const parts::StiffnessSet& set) {
  const auto same = std::find_if(sets_.begin(), sets_.end(), [&](const parts::StiffnessSet& one) {
    return one.name == set.name;
  });
  const auto number = static_cast<std::size_t>(same - sets_.begin());
  if (same == sets_.end()) sets_.push_back(set);
  return number;
}

const KnownDesign::Known* KnownDesign::find(const CellName& name) const {
  const auto all = cells_.find(name.load_case);
  if (all == cells_.end()) return nullptr;
  const auto found = std::find_if(all->second.begin(), all->second.end(),
                                  [&](const Known& one) { return one.name.set == name.set; });
  return found == all->second.end() ? nullptr : &*found;
}

std::vector<int> KnownDesign::apart(const parts::StiffnessSet& set) const {
  std::vector<int> out;
  for (const parts::StiffnessSet& one : sets_) out.push_back(parts::n_different(one, set));
  return out;
}

std::vector<const KnownDesign::Known*> KnownDesign::nearest(const std::string& load_case,
                                                            const std::vector<int>& apart) const {
  std::vector<const Known*> out;
  const auto found = cells_.find(load_case);
  if (found == cells_.end()) return out;
  for (const Known& one : found->second) {
    const int least = out.empty() ? apart[one.set] : apart[out.front()->set];
    if (apart[one.set] > least) continue;
    if (apart[one.set] < least) out.clear();
    out.push_back(&one);
  }
  return out;
}

/// How much softer in bending a piece of another size is than as it was solved, at the least 1.
double KnownDesign::softer(const Criterion& criterion, const parts::Assembly& sized) const {
  const auto bending = [](const parts::Piece& piece) {
    const sections::AreaProps props = sections::area_props(piece.beams.front().at_a);
    return piece.material.elastic * std::min(props.iyy, props.izz);
  };
  const parts::Piece& now = sized.pieces[criterion.index];
  return std::max(1.0, bending(pieces_[criterion.index]) / bending(now));
}

std::optional<KnownDemand> KnownDesign::demand(const Known& known, const Criterion& criterion,
                                               bool at_ride, const parts::Assembly* sized) const {
  const Demands* demands = this->demands(known, criterion);
  if ((at_ride && !known.has_ride) || demands == nullptr) return std::nullopt;
  const Demand& there = demands->at_place[at_ride ? 1 : 0];
  const double linear = demands->by_first_order;
  KnownDemand out{.at_load = there.at_load,
                  .by_first_order = linear,
                  .lowest_critical_factor = known.cell.lowest_critical_factor,
                  .is_silent = there.is_silent};
  if (sized == nullptr) return out;
  const std::optional<fea::Solution>& solved = at_ride ? known.ride : known.reached;
  const fea::Solution& solution = solved ? *solved : known.first_order;
  out.by_first_order = demand_over_capacity(criterion, *sized, known.first_order);
  // Where it was not solved, as much more than first order as before.
  const double now = solved         ? demand_over_capacity(criterion, *sized, solution)
                     : linear > 0.0 ? out.by_first_order * (there.at_load / linear)
                                    : there.at_load;
  out.at_load = with_softer(now, out.by_first_order, softer(criterion, *sized));
  out.is_silent = criterion.kind == Criterion::Kind::combined &&
                  !combined_counts(sized->pieces[criterion.index], solution);
  return out;
}

std::vector<LookedAt> KnownDesign::looked_at(const Criterion& criterion,
                                             const parts::Assembly* sized,
                                             const CellName* only) const {
  std::vector<LookedAt> out;
  for (const Looked& looked : looked_) {
    if (!are_same(looked.criterion, criterion)) continue;
    if (only != nullptr && !(looked.at.name == *only)) continue;
    out.push_back(looked.at);
    if (sized == nullptr) continue;
    LookedAt& now = out.back();
    now.is_sized = true;
    now.at_load = demand_over_capacity(criterion, *sized, looked.at_load);
    now.there = looked.at.multiple / looked.solved_at *
                demand_over_capacity(criterion, *sized, looked.there, looked.solved_at);
    const double first_order = demand_over_capacity(criterion, *sized, looked.first_order);
    const double by = softer(criterion, *sized);
    now.at_load = with_softer(now.at_load, first_order, by);
    now.there = with_softer(now.there, looked.at.multiple * first_order, by);
  }
  return out;
}

std::vector<CellName> KnownDesign::worst_cells(
    const std::function<bool(const std::string& part)>& is_asked) const {
  std::vector<const Looked*> worst;  // of each check
  for (const Looked& looked : looked_) {
    if (!is_asked(looked.part)) continue;
    const auto same = std::find_if(worst.begin(), worst.end(), [&](const Looked* one) {
      return are_same(one->criterion, looked.criterion);
    });
    if (same == worst.end()) {
      worst.push_back(&looked);
    } else if (looked.at.there > (*same)->at.there) {
      *same = &looked;
    }
  }
  std::stable_sort(worst.begin(), worst.end(), [](const Looked* a, const Looked* b) {
    const bool a_of_size = is_of_section(a->criterion);
    return a_of_size == is_of_section(b->criterion) ? a->at.there > b->at.there : a_of_size;
  });
  std::vector<CellName> out;
  for (const Looked* one : worst) out.push_back(one->at.name);
  return out;
}

double KnownDesign::most_of_bolts(
    const std::function<bool(const std::string& part)>& is_asked) const {
  using Kind = Criterion::Kind;
  double most = 0.0;
  for (const Looked& looked : looked_) {
    const Kind kind = looked.criterion.kind;
    if ((kind != Kind::bolt && kind != Kind::joint) || !is_asked(looked.part)) continue;
    most = std::max(most, looked.at.there);
  }
  return most;
}

std::optional<parts::Assembly> KnownDesign::resized(const parts::Assembly& other) const {
  if (other.pieces.size() != pieces_.size()) return std::nullopt;
  parts::Assembly out;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    // One whose section changes along it stays as it was: first order then tells all of the change.
    const std::optional<parts::Piece> piece = in_beams_of(pieces_[i], other.pieces[i]);
    out.pieces.push_back(piece ? *piece : pieces_[i]);
  }
  return out;
}

}  // namespace studies
