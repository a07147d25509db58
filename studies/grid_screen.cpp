#include "studies/grid_screen.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "parts/piece_forces.hpp"
#include "parts/put_loads.hpp"
#include "studies/cell.hpp"
#include "studies/combined_criterion.hpp"

namespace studies {
namespace {

using Blocks = std::vector<std::size_t>;

// What second order may take off a demand of first order, of which it is as a rule more: where a
// bar is pressed, and where it is pulled straight; and what stops may that are open as drawn.
constexpr double kPressed = 1.15;
constexpr double kPulled = 2.0;
constexpr double kStopsMay = 1.5;

/// By forces at the ends and along the beams of the part alone.
bool rests_on_piece(const Criterion& criterion, const parts::Assembly& assembly) {
  using Kind = Criterion::Kind;
  if (criterion.kind != Kind::yield && criterion.kind != Kind::column &&
      criterion.kind != Kind::combined) {
    return false;
  }
  const parts::Piece& piece = assembly.pieces[criterion.index];
  return !piece.side_force && !piece.warping && !piece.beams.front().axial;
}

/// The blocks in which two systems differ; nothing when they are not of one build.
std::optional<Blocks> differing(const fea::System& a, const fea::System& b) {
  if (a.n_unknowns() != b.n_unknowns() || a.stiffness().size() != b.stiffness().size() ||
      a.places() != b.places()) {
    return std::nullopt;
  }
  Blocks out;
  for (std::size_t i = 0; i < a.stiffness().size(); ++i) {
    if (a.block_unknowns()[i].size() != b.block_unknowns()[i].size() ||
        a.block_unknowns()[i] != b.block_unknowns()[i]) {
      return std::nullopt;
    }
    if (a.stiffness()[i] != b.stiffness()[i]) out.push_back(i);
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
  std::vector<fea::LoadCase> loads;
};

GridScreen::GridScreen(const parts::Design& design, const std::vector<std::string>& parts,
                       const std::vector<std::vector<SizeChoice>>& sizes, const Counted& counted,
                       const Spread& spread)
    : design_(design), parts_(parts) {
  // What is welded to a part's side weakens it there by its own size.
  if (!design.side_welds.empty()) return;
  for (Look& look : places(counted)) {
    prepare(look, sizes, spread);
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

/// Those that are solved in second order at ride height, with no stop closed.
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
    const CaseSolution& solved = cell.kept(1.0);
    if (cell.in_proportion() || !carried(solved) || solved.closed_stops != 0 ||
        solved.method != fea::Method::second_order) {
      continue;
    }
    const auto same = std::find_if(out.begin(), out.end(),
                                   [&](const Look& look) { return look.set.name == name.set; });
    if (same == out.end()) {
      out.push_back({.set = *set, .cases = {*load_case}});
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
    out.assembly = parts::assemble(design, look.set);
    out.system = std::make_shared<const fea::System>(out.assembly.model);
    const std::vector<parts::DesignCase> cases = parts::design_cases(design);
    for (const parts::DesignCase& wanted : look.cases) {
      const parts::DesignCase* load_case = case_named(cases, wanted.name);
      if (load_case == nullptr) return std::nullopt;
      out.loads.push_back(fea::prepare(*out.system, parts::put(out.assembly, design, *load_case)));
    }
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
  out.loads.resize(one->loads.size());
  for (const std::size_t block : changing) {
    if (block >= look.drawn->beams().size()) continue;
    const fea::BeamPart& beam = one->system->beams()[block];
    const fea::BeamPart& drawn = look.drawn->beams()[block];
    if (beam.length != drawn.length || beam.axes_lg != drawn.axes_lg) return {};
    out.beams.push_back({block, beam});
    for (std::size_t c = 0; c < one->loads.size(); ++c) {
      out.loads[c].push_back(one->loads[c].members[block]);
    }
  }
  for (const Criterion& criterion : criteria(one->assembly)) {
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
    if (known) out.criteria.push_back(criterion);
  }
  out.assembly.pieces = one->assembly.pieces;
  out.assembly.stops = one->assembly.stops;
  out.condensed = std::move(condensed);
  return out;
}

void GridScreen::prepare(Look& look, const Sizes& sizes, const Spread& spread) const {
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
  std::set<int> ends;
  std::set<std::size_t> taken;
  for (const Blocks& blocks : look.changing) {
    const std::vector<int> own = fea::shared_unknowns(*look.drawn, blocks);
    ends.insert(own.begin(), own.end());
    taken.insert(blocks.begin(), blocks.end());
  }
  Blocks rest;
  for (std::size_t block = 0; block < look.drawn->stiffness().size(); ++block) {
    if (taken.count(block) == 0) rest.push_back(block);
  }
  look.rest = fea::condense(*look.drawn, rest, {ends.begin(), ends.end()}, force);
}

/// Whether the frame with another size of every part is made of what each of them brings by itself:
/// looked at with the first and with the last of their sizes.
bool GridScreen::adds_up(const Look& look, const Sizes& sizes) const {
  for (const bool last : {false, true}) {
    parts::Design together = design_;
    std::vector<std::shared_ptr<const fea::System>> from(look.drawn->stiffness().size(),
                                                         look.drawn);
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
      if (all->system->stiffness()[block] != from[block]->stiffness()[block]) return false;
    }
  }
  return true;
}

bool GridScreen::is_over(const Size& size, const Criterion& criterion,
                         const parts::DesignCase& load_case, const fea::Solution& solution,
                         double most) const {
  const parts::Piece& piece = size.assembly.pieces[criterion.index];
  if (criterion.kind == Criterion::Kind::combined && !combined_counts(piece, solution)) {
    return false;
  }
  const AskedFactor asked =
      asked_factor(criterion, size.assembly, design_.factors, load_case.abuse, &solution);
  const double demand = std::min(asked.value, asked.looked_at()) *
                        demand_over_capacity(criterion, size.assembly, solution);
  const bool pulled = parts::forces_at(piece.beams.front(), solution, 0.0).n > 0.0;
  const double stops = size.assembly.stops.empty() ? 1.0 : kStopsMay;
  return demand > stops * (pulled ? kPulled : kPressed) * most;
}

bool GridScreen::surely_over(const std::vector<std::size_t>& choice, double most) const {
  for (const Look& look : looks_) {
    std::vector<const fea::Condensed*> chosen;
    for (std::size_t p = 0; p < choice.size(); ++p) {
      chosen.push_back(&look.sizes[p][choice[p]].condensed);
      if (!chosen.back()->held) return false;
    }
    const Eigen::MatrixXd moved = fea::motion_of(look.rest, chosen);
    if (moved.size() == 0) return false;
    for (std::size_t c = 0; c < look.cases.size(); ++c) {
      const auto column = static_cast<Eigen::Index>(c);
      for (std::size_t p = 0; p < choice.size(); ++p) {
        const Size& size = look.sizes[p][choice[p]];
        Eigen::VectorXd motion = Eigen::VectorXd::Zero(look.drawn->n_unknowns());
        fea::spread_motion(look.rest, size.condensed, moved.col(column), column, motion);
        look.drawn->carry(motion);
        const fea::Solution solution =
            fea::make_partial(look.drawn, size.beams, size.loads[c], motion);
        const auto over = [&](const Criterion& criterion) {
          return is_over(size, criterion, look.cases[c], solution, most);
        };
        if (std::any_of(size.criteria.begin(), size.criteria.end(), over)) return true;
      }
    }
  }
  return false;
}

}  // namespace studies
