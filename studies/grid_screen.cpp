#include "studies/grid_screen.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>
#include <utility>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "parts/piece_forces.hpp"
#include "parts/put_loads.hpp"
#include "studies/cell.hpp"
#include "studies/combined_criterion.hpp"
#include "studies/known_design.hpp"
#include "studies/unsolved_cell.hpp"

namespace studies {
namespace {

using Blocks = std::vector<std::size_t>;

// What second order may take off a demand of first order, of which it is as a rule more: where a
// bar is pressed, and where it is pulled straight; and what stops and large displacements may.
constexpr double kPressed = 1.15;
constexpr double kPulled = 2.0;
constexpr double kStopsMay = 1.5;

// Of what is told by the design as drawn: what it may be off by, and of what second order made of
// it there.
constexpr double kToldOff = 1.05;
constexpr double kOfGrowth = 0.5;
// Of what was seen beside other sizes of the other parts: what it may be off by at the least, and
// the change of first order up to which it says anything.
constexpr double kSeenLeast = 2.0e-3;
constexpr double kSeenApart = 0.05;
// Where it made so much more or less of it, nothing is told.
constexpr double kGrownFar = 2.0;

/// The blocks in which two systems differ; nothing when they are not of one build.
std::optional<Blocks> differing(const fea::System& a, const fea::System& b) {
  if (a.n_unknowns() != b.n_unknowns() || a.n_blocks() != b.n_blocks() ||
      a.places() != b.places()) {
    return std::nullopt;
  }
  Blocks out;
  for (std::size_t i = 0; i < a.n_blocks(); ++i) {
    if (a.unknowns(i).size() != b.unknowns(i).size() || a.unknowns(i) != b.unknowns(i)) {
      return std::nullopt;
    }
    if (a.stiffness(i) != b.stiffness(i)) out.push_back(i);
  }
  return out;
}

bool is_among(const Blocks& some, const Blocks& all) {
  return std::includes(all.begin(), all.end(), some.begin(), some.end());
}

Eigen::MatrixXd columns_of(const std::vector<fea::LoadCase>& loads) {
  Eigen::MatrixXd out(loads.front().vector.size(), static_cast<Eigen::Index>(loads.size()));
  for (std::size_t i = 0; i < loads.size(); ++i) {
    out.col(static_cast<Eigen::Index>(i)) = loads[i].vector;
  }
  return out;
}

bool any_moved(const std::vector<fea::LoadCase>& loads) {
  return std::any_of(loads.begin(), loads.end(),
                     [](const fea::LoadCase& one) { return !one.imposed.isZero(0.0); });
}

/// Whether two load cases differ on unknowns that a part does not have.
bool differ_elsewhere(const Eigen::MatrixXd& a, const Eigen::MatrixXd& b,
                      const fea::Condensed& part) {
  Eigen::MatrixXd apart = a - b;
  apart(part.kept, Eigen::all).setZero();
  apart(part.inside, Eigen::all).setZero();
  return !apart.isZero(0.0);
}

/// Adds stops and straps to the model as springs.
/// @return what takes back the part of their force that they have before they are met
fea::Loads close_stops(parts::Assembly& assembly, Contacts closed) {
  fea::Loads loads;
  for (std::size_t i = 0; i < assembly.stops.size(); ++i) {
    if ((closed >> i & 1U) == 0) continue;
    assembly.model.add(spring_of(assembly.stops[i]));
    loads.nodes.push_back(gap_load_of(assembly.stops[i]));
  }
  return loads;
}

/// The free unknowns that say where stops and straps have gone to.
std::set<int> unknowns_at_stops(const parts::Assembly& assembly, const fea::System& system) {
  std::set<int> out;
  for (const parts::TravelStop& stop : assembly.stops) {
    if (!stop.known()) continue;
    const int first = static_cast<int>(fea::first_unknown(system.roots().root(stop.node)));
    for (int unknown = first; unknown < first + 6; ++unknown) {
      if (!system.held(unknown)) out.insert(unknown);
    }
  }
  return out;
}

const parts::DesignCase* case_named(const std::vector<parts::DesignCase>& cases,
                                    const std::string& name) {
  const auto found = std::find_if(cases.begin(), cases.end(),
                                  [&](const parts::DesignCase& c) { return c.name == name; });
  return found == cases.end() ? nullptr : &*found;
}

}  // namespace

/// A design's frame in a look.
struct GridScreen::Built {
  parts::Assembly assembly;
  std::shared_ptr<const fea::System> system;
  std::vector<fea::LoadCase> loads;  ///< of each load case; where stops are closed, last of these
};

/// A size of a part in one load case, in a design.
struct GridScreen::Moved {
  const Look& look;
  const Size& size;
  std::size_t load_case;
  Eigen::VectorXd by_load;   ///< full motion by the load itself
  Eigen::VectorXd by_stops;  ///< by closed stops, which begin at their gap; empty = none is

  /// @param kept  motion of what the rest keeps, a column a load case
  static Moved of(const Look& look, const Size& size, std::size_t load_case,
                  const Eigen::MatrixXd& kept) {
    const auto full = [&](std::size_t load) {
      const auto column = static_cast<Eigen::Index>(load);
      Eigen::VectorXd motion = Eigen::VectorXd::Zero(look.drawn->n_unknowns());
      motion(look.rest.kept) = kept.col(column);
      fea::spread_motion(look.rest, size.condensed, kept.col(column), column, motion);
      look.drawn->carry(motion);
      return motion;
    };
    return {look, size, load_case, full(load_case),
            look.closed == 0 ? Eigen::VectorXd() : full(look.cases.size())};
  }
  /// What comes of a multiple of the load, over that multiple.
  [[nodiscard]] fea::Solution over(double multiple) const {
    const std::vector<fea::MemberLoads>& loads = size.loads[load_case];
    if (by_stops.size() == 0) return fea::make_partial(*look.drawn, size.beams, loads, by_load);
    return fea::make_partial(*look.drawn, size.beams, loads, by_load + by_stops / multiple);
  }
  /// Demand over capacity at a multiple; unset where the stops are not as they are taken to be.
  [[nodiscard]] double demand(const fea::Solution& at_load, std::size_t criterion,
                              double multiple) const {
    const fea::Solution there = by_stops.size() == 0 ? at_load : over(multiple);
    if (!touches_as_drawn(there, multiple)) return base::kUnset;
    return multiple * demand_over_capacity(size.criteria[criterion], size.assembly, there);
  }
  /// Whether stops and straps are closed at a multiple of the load as they are taken to be.
  [[nodiscard]] bool touches_as_drawn(const fea::Solution& over, double multiple) const {
    for (std::size_t i = 0; i < size.assembly.stops.size(); ++i) {
      const parts::TravelStop& stop = size.assembly.stops[i];
      if (!stop.known()) continue;
      const double rise = stop.sense() * multiple * rise_of(stop.node, stop.offset_g, over);
      if ((rise > stop.travel) != ((look.closed >> i & 1U) != 0)) return false;
    }
    return true;
  }
};

GridScreen::GridScreen(const parts::Design& design, const std::vector<std::string>& parts,
                       const std::vector<std::vector<SizeChoice>>& sizes, const Counted& counted,
                       const Spread& spread)
    : design_(design), parts_(parts) {
  // What is welded to a part's side weakens it there by its own size.
  if (!design.side_welds.empty()) return;
  if (counted.known != nullptr) {
    of_bolts_ = counted.known->most_of_bolts(
        [&](const std::string& part) { return counted.is_asked(part); });
  }
  for (Look& look : places(counted)) {
    prepare(look, sizes, counted.known.get(), spread);
    if (look.rest.held) looks_.push_back(std::move(look));
  }
}

std::size_t GridScreen::n_looks() const {
  std::size_t n = 0;
  for (const Look& look : looks_) n += look.cases.size();
  return n;
}

std::size_t GridScreen::n_equations() const {
  std::size_t n = 0;
  for (const Look& look : looks_) n = std::max(n, look.rest.kept.size());
  return n;
}

/// Those that are solved in second order at ride height. Of a load case with large displacements
/// its second order, which asks no more of a check than is asked of it in the end
/// (Cell::asking_most).
std::vector<GridScreen::Look> GridScreen::places(const Counted& counted) const {
  std::vector<Look> out;
  const std::vector<parts::StiffnessSet> sets = parts::stiffness_sets(design_);
  const std::vector<parts::DesignCase> cases = parts::design_cases(design_);
  for (const CellName& name : counted.look_first) {
    const auto set = std::find_if(sets.begin(), sets.end(),
                                  [&](const parts::StiffnessSet& s) { return s.name == name.set; });
    const parts::DesignCase* load_case = case_named(cases, name.load_case);
    if (set == sets.end() || load_case == nullptr) continue;
    const SetModel model(design_, *set);
    const Cell cell(model, *load_case);
    const CaseSolution& reached = cell.kept(1.0);
    const CaseSolution& solved = cell.second_order() == nullptr ? reached : *cell.second_order();
    const Contacts closed = solved.closed_stops;
    if (cell.in_proportion() || !carried(solved) || (closed & (kHeaveHeld | kRollHeld)) != 0) {
      continue;
    }
    const auto same = std::find_if(out.begin(), out.end(), [&](const Look& look) {
      return look.set.name == name.set && look.closed == closed;
    });
    if (same == out.end()) {
      out.push_back({.set = *set, .closed = closed, .cases = {*load_case}});
    } else {
      same->cases.push_back(*load_case);
    }
  }
  return out;
}

/// Nothing when it makes no sense, or a load case does not run.
std::optional<GridScreen::Built> GridScreen::built(const parts::Design& design,
                                                   const Look& look) const {
  if (!cases::broken_rules(design).empty()) return std::nullopt;
  Built out;
  try {
    out.assembly = parts::assemble(design, look.set, parts::Straights::in_four);
    const fea::Loads at_stops = close_stops(out.assembly, look.closed);
    out.system = std::make_shared<const fea::System>(out.assembly.model);
    const std::vector<parts::DesignCase> cases = parts::design_cases(design);
    for (const parts::DesignCase& wanted : look.cases) {
      const parts::DesignCase* load_case = case_named(cases, wanted.name);
      if (load_case == nullptr) return std::nullopt;
      out.loads.push_back(fea::prepare(*out.system, parts::put(out.assembly, design, *load_case)));
    }
    if (look.closed != 0) out.loads.push_back(fea::prepare(*out.system, at_stops));
  } catch (const base::InputError&) {
    return std::nullopt;
  }
  if (any_moved(out.loads)) return std::nullopt;
  return out;
}

/// What changes with each part, by some of its sizes.
/// @return whether no two parts change the same
bool GridScreen::find_changing(Look& look, const Sizes& sizes) const {
  std::set<std::size_t> taken;
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    std::set<std::size_t> own;
    for (const std::size_t i : {std::size_t{0}, sizes[p].size() / 2, sizes[p].size() - 1}) {
      const std::optional<Built> one = built(with_size(design_, parts_[p], sizes[p][i]), look);
      if (!one) continue;
      const std::optional<Blocks> apart = differing(*look.drawn, *one->system);
      if (apart) own.insert(apart->begin(), apart->end());
    }
    for (const std::size_t block : own) {
      if (!taken.insert(block).second) return false;
    }
    look.changing.emplace_back(own.begin(), own.end());
  }
  return true;
}

GridScreen::Size GridScreen::condensed(const Look& look, std::size_t part, const SizeChoice& size,
                                       const Eigen::MatrixXd& force) const {
  const std::optional<Built> one = built(with_size(design_, parts_[part], size), look);
  if (!one) return {};
  const Blocks& changing = look.changing[part];
  const std::optional<Blocks> apart = differing(*look.drawn, *one->system);
  if (!apart || !is_among(*apart, changing)) return {};
  const std::vector<int> ends = fea::shared_unknowns(*look.drawn, changing);
  const Eigen::MatrixXd there = columns_of(one->loads);
  // Of its ends only what is new there: the rest has what they carry as drawn.
  Eigen::MatrixXd own = there;
  own(ends, Eigen::all) -= force(ends, Eigen::all);
  fea::Condensed condensed = fea::condense(*one->system, changing, ends, own);
  if (!condensed.held || differ_elsewhere(there, force, condensed)) return {};

  Size out;
  out.loads.resize(look.cases.size());
  for (const std::size_t block : changing) {
    if (block >= look.drawn->beams().size()) continue;
    const fea::BeamPart& beam = one->system->beams()[block];
    const fea::BeamPart& drawn = look.drawn->beams()[block];
    if (beam.length != drawn.length || beam.axes_lg != drawn.axes_lg) return {};
    out.beams.push_back({block, beam});
    for (std::size_t c = 0; c < out.loads.size(); ++c) {
      out.loads[c].push_back(one->loads[c].members[block]);
    }
  }
  const std::vector<Criterion> all = criteria(one->assembly);
  const auto told_as = [&](const Criterion& criterion) {
    return std::pair(check_name(criterion.kind), part_judged(criterion, one->assembly));
  };
  for (const Criterion& criterion : all) {
    if (!rests_on_piece(criterion, one->assembly) ||
        !belongs(part_judged(criterion, one->assembly), parts_[part])) {
      continue;
    }
    const parts::Piece& piece = one->assembly.pieces[criterion.index];
    const bool known =
        std::all_of(piece.beams.begin(), piece.beams.end(), [&](const parts::PieceBeam& beam) {
          return std::binary_search(changing.begin(), changing.end(),
                                    static_cast<std::size_t>(beam.beam.index));
        });
    if (!known) continue;
    out.criteria.push_back(criterion);
    out.is_only.push_back(std::count_if(all.begin(), all.end(), [&](const Criterion& other) {
                            return told_as(other) == told_as(criterion);
                          }) == 1);
  }
  out.assembly.pieces = one->assembly.pieces;
  out.assembly.stops = one->assembly.stops;
  out.condensed = std::move(condensed);
  return out;
}

void GridScreen::prepare(Look& look, const Sizes& sizes, const KnownDesign* known,
                         const Spread& spread) const {
  const std::optional<Built> as_drawn = built(design_, look);
  if (!as_drawn) return;
  look.drawn = as_drawn->system;
  if (!find_changing(look, sizes)) return;
  const Eigen::MatrixXd force = columns_of(as_drawn->loads);
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    std::vector<Size>& all = look.sizes.emplace_back(sizes[p].size());
    spread_out(spread, sizes[p].size(),
               [&](std::size_t i) { all[i] = condensed(look, p, sizes[p][i], force); });
  }
  if (!adds_up(look, sizes)) return;
  std::set<int> ends = unknowns_at_stops(as_drawn->assembly, *look.drawn);
  std::set<std::size_t> taken;
  for (const Blocks& blocks : look.changing) {
    const std::vector<int> own = fea::shared_unknowns(*look.drawn, blocks);
    ends.insert(own.begin(), own.end());
    taken.insert(blocks.begin(), blocks.end());
  }
  Blocks rest;
  for (std::size_t block = 0; block < look.drawn->n_blocks(); ++block) {
    if (taken.count(block) == 0) rest.push_back(block);
  }
  look.rest = fea::condense(*look.drawn, rest, {ends.begin(), ends.end()}, force);
  if (look.rest.held && known != nullptr) tell(look, force, *known, spread);
}

/// What is known of each size by the forces of the design as drawn.
void GridScreen::tell(Look& look, const Eigen::MatrixXd& force, const KnownDesign& known,
                      const Spread& spread) const {
  std::vector<Size> drawn;
  std::vector<const fea::Condensed*> chosen;
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    parts::Design base = design_;
    const parts::Stick& now = *stick_of(base, parts_[p]);
    drawn.push_back(condensed(look, p, {{.label = "", .shape = now.shape}, now.material}, force));
    if (!drawn.back().condensed.held) return;
  }
  for (const Size& size : drawn) chosen.push_back(&size.condensed);
  const Eigen::MatrixXd kept = fea::motion_of(look.rest, chosen);
  if (kept.size() == 0) return;
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    std::vector<Moved> moved;
    for (std::size_t c = 0; c < look.cases.size(); ++c) {
      moved.push_back(Moved::of(look, drawn[p], c, kept));
    }
    std::vector<Size>& sizes = look.sizes[p];
    spread_out(spread, sizes.size(), [&](std::size_t i) {
      Size& size = sizes[i];
      if (!size.condensed.held) return;
      const std::optional<parts::Assembly> sized = known.resized(size.assembly);
      if (!sized) return;
      size.told.resize(look.cases.size());
      for (std::size_t c = 0; c < look.cases.size(); ++c) {
        const CellName name{look.set.name, look.cases[c].name};
        for (const Criterion& criterion : size.criteria) {
          std::vector<Told>& all = size.told[c].emplace_back();
          for (const LookedAt& looked : known.looked_at(criterion, &*sized, &name)) {
            if (looked.closed != look.closed) continue;
            const fea::Solution over = moved[c].over(looked.multiple);
            if (!moved[c].touches_as_drawn(over, looked.multiple)) continue;
            const double first_order =
                looked.multiple * demand_over_capacity(criterion, size.assembly, over);
            const double grown = looked.there / first_order;
            if (!(grown > 1.0 / kGrownFar && grown < kGrownFar)) continue;
            all.push_back({looked.multiple, looked.there, first_order});
          }
        }
      }
    });
  }
}

/// Whether the frame with another size of every part is made of what each of them brings by itself:
/// looked at with the first and with the last of their sizes.
bool GridScreen::adds_up(const Look& look, const Sizes& sizes) const {
  for (const bool last : {false, true}) {
    parts::Design together = design_;
    std::vector<std::shared_ptr<const fea::System>> from(look.drawn->n_blocks(), look.drawn);
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      std::vector<std::size_t> usable;
      for (std::size_t i = 0; i < sizes[p].size(); ++i) {
        if (look.sizes[p][i].condensed.held) usable.push_back(i);
      }
      if (usable.empty()) return false;
      const SizeChoice& size = sizes[p][last ? usable.back() : usable.front()];
      together = with_size(together, parts_[p], size);
      const std::optional<Built> alone = built(with_size(design_, parts_[p], size), look);
      for (const std::size_t block : look.changing[p]) from[block] = alone->system;
    }
    const std::optional<Built> all = built(together, look);
    if (!all || !differing(*all->system, *look.drawn)) return false;
    for (std::size_t block = 0; block < from.size(); ++block) {
      if (all->system->stiffness(block) != from[block]->stiffness(block)) return false;
    }
  }
  return true;
}

/// What a check comes to where the design as drawn was looked at, changed as first order changes.
/// With all margins at least that. Unset where that is not known.
double GridScreen::told(const Moved& moved, const fea::Solution& at_load, std::size_t at,
                        const AskedFactor& asked, Margins margins) const {
  double most = base::kUnset;
  if (moved.size.told.empty()) return most;
  for (const Told& one : moved.size.told[moved.load_case][at]) {
    const double first_order = moved.demand(at_load, at, one.multiple);
    if (std::isnan(first_order)) continue;
    const double by = first_order / one.first_order;
    const double required = std::min(asked.value, one.multiple) / one.multiple;
    double demand = one.there * by;
    if (margins == Margins::all) {
      const double grown = std::abs(one.there / one.first_order - 1.0);
      demand = std::min(one.there * at_least_by(by), first_order) / (kToldOff + kOfGrowth * grown);
    }
    most = std::fmax(most, required * demand);
  }
  return most;
}

/// With all margins at least that, whatever second order makes of it.
/// @param most  what it may be: where stops carry, the demand is no straight line over the load
double GridScreen::utilization(const Moved& moved, const fea::Solution& at_load, std::size_t at,
                               Margins margins, double most) const {
  const Criterion& criterion = moved.size.criteria[at];
  const parts::Assembly& assembly = moved.size.assembly;
  const parts::Piece& piece = assembly.pieces[criterion.index];
  if (criterion.kind == Criterion::Kind::combined && !combined_counts(piece, at_load)) return 0.0;
  const AskedFactor asked = this->asked(moved, at_load, at);
  const double least = std::min(asked.value, asked.looked_at());
  const double multiple = assembly.stops.empty() ? 1.0 : least / most;
  const bool line = moved.by_stops.size() == 0;
  const fea::Solution there = line ? at_load : moved.over(multiple);
  const double demand = least * demand_over_capacity(criterion, assembly, there);
  const double as_told = told(moved, at_load, at, asked, margins);
  if (margins == Margins::none) return std::isnan(as_told) ? demand : as_told;
  if (as_told > most) return as_told;
  if (!moved.touches_as_drawn(there, multiple)) return 0.0;
  const bool pulled = parts::forces_at(piece.beams.front(), there, 0.0).n > 0.0;
  const double stops = assembly.stops.empty() ? 1.0 : kStopsMay;
  return demand / (stops * (pulled ? kPulled : kPressed));
}

AskedFactor GridScreen::asked(const Moved& moved, const fea::Solution& at_load,
                              std::size_t at) const {
  return asked_factor(moved.size.criteria[at], moved.size.assembly, design_.factors,
                      moved.look.cases[moved.load_case].abuse, &at_load);
}

/// Of what the rest keeps; empty where a size is not looked at, or the frame does not hold.
Eigen::MatrixXd GridScreen::motion(const Look& look, const std::vector<std::size_t>& choice) const {
  std::vector<const fea::Condensed*> chosen(choice.size());
  for (std::size_t p = 0; p < choice.size(); ++p) {
    chosen[p] = &look.sizes[p][choice[p]].condensed;
    if (!chosen[p]->held) return {};
  }
  return fea::motion_of(look.rest, chosen);
}

void GridScreen::see(const std::vector<std::size_t>& choice, const SeenCheck& check,
                     Seen& seen) const {
  for (std::size_t l = 0; l < looks_.size(); ++l) {
    const Look& look = looks_[l];
    for (std::size_t c = 0; c < look.cases.size(); ++c) {
      if (look.cases[c].name != check.load_case) continue;
      const Eigen::MatrixXd kept = motion(look, choice);
      if (kept.size() == 0) continue;
      for (std::size_t p = 0; p < choice.size(); ++p) {
        const Size& size = look.sizes[p][choice[p]];
        const auto same =
            std::find_if(size.criteria.begin(), size.criteria.end(), [&](const Criterion& one) {
              return check_name(one.kind) == check.check &&
                     part_judged(one, size.assembly) == check.part;
            });
        if (same == size.criteria.end()) continue;
        const auto which = static_cast<std::size_t>(same - size.criteria.begin());
        // Of two bars of one part it is not known which of them it was.
        if (!size.is_only[which]) continue;
        const Moved moved = Moved::of(look, size, c, kept);
        const fea::Solution at_load = moved.over(1.0);
        const double first_order =
            moved.demand(at_load, which, asked(moved, at_load, which).looked_at());
        if (!(first_order > 0.0)) continue;
        seen.all_.push_back({l, c, p, choice[p], which, first_order, check.utilization});
      }
    }
  }
}

/// What a check comes to at least, by what it came to beside other sizes of the other parts; 0
/// where that is not known.
double GridScreen::as_seen(const Moved& moved, const fea::Solution& at_load, const Hint& at,
                           std::size_t size, const Seen& seen) const {
  double most = 0.0;
  double first_order = base::kUnset;
  for (const Seen::One& one : seen.all_) {
    if (one.look != at.look || one.load_case != at.load_case || one.part != at.part ||
        one.size != size || one.criterion != at.criterion) {
      continue;
    }
    if (std::isnan(first_order)) {
      first_order =
          moved.demand(at_load, at.criterion, asked(moved, at_load, at.criterion).looked_at());
      if (std::isnan(first_order)) return 0.0;
    }
    const double by = first_order / one.first_order;
    if (std::abs(by - 1.0) > kSeenApart) continue;
    most = std::max(most, one.utilization * (at_least_by(by) - kSeenLeast));
  }
  return most;
}

/// Of the checks that are looked at, as far as the first that is over `enough`; nothing where a
/// size is not looked at in any place.
double GridScreen::largest(const std::vector<std::size_t>& choice, Margins margins, double enough,
                           Hint& hint, const Seen& seen) const {
  const Hint from = hint;
  double most = base::kUnset;
  for (std::size_t l = 0; l < looks_.size(); ++l) {
    const std::size_t at_look = (from.look + l) % looks_.size();
    const Look& look = looks_[at_look];
    const Eigen::MatrixXd kept = motion(look, choice);
    if (kept.size() == 0) return base::kUnset;
    for (std::size_t c = 0; c < look.cases.size(); ++c) {
      const std::size_t at_case = (from.load_case + c) % look.cases.size();
      for (std::size_t k = 0; k < choice.size(); ++k) {
        const std::size_t p = (from.part + k) % choice.size();
        const Size& size = look.sizes[p][choice[p]];
        const Moved there = Moved::of(look, size, at_case, kept);
        const fea::Solution at_load = there.over(1.0);
        for (std::size_t i = 0; i < size.criteria.size(); ++i) {
          const Hint at{at_look, at_case, p, (from.criterion + i) % size.criteria.size()};
          const double used = utilization(there, at_load, at.criterion, margins, enough);
          most = std::fmax(most, used);  // of a check that gives a number
          if (!(most > enough) && margins == Margins::all) {
            most = std::fmax(most, as_seen(there, at_load, at, choice[p], seen));
          }
          if (!(most > enough)) continue;
          hint = at;
          return most;
        }
      }
    }
  }
  return most;
}

bool GridScreen::surely_over(const std::vector<std::size_t>& choice, double most, Hint& hint,
                             const Seen& seen) const {
  return largest(choice, Margins::all, most, hint, seen) > most;
}

bool GridScreen::surely_over(const std::vector<std::size_t>& choice, double most) const {
  Hint hint;
  return surely_over(choice, most, hint, {});
}

double GridScreen::likely(const std::vector<std::size_t>& choice, double enough, Hint& hint) const {
  const double found = largest(choice, Margins::none, enough, hint, {});
  return std::isnan(found) ? std::numeric_limits<double>::infinity() : std::max(found, of_bolts_);
}

}  // namespace studies
