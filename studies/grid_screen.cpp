#include "studies/grid_screen.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "fea/solution.hpp"
#include "parts/piece_forces.hpp"
#include "parts/put_loads.hpp"
#include "studies/cell.hpp"
#include "studies/combined_criterion.hpp"

namespace studies {
namespace {

using Blocks = std::vector<std::size_t>;

// What second order may take off a demand of first order, of which it is as a rule more: where a
// bar is pressed, and where it is pulled straight; and what stops may that are open as drawn.
constexpr double kPressed = 1.3;
constexpr double kPulled = 2.0;
constexpr double kWithStops = 1.5;

/// By forces at the ends and along the beams of the part alone.
bool is_of_piece(const Criterion& criterion, const parts::Assembly& assembly) {
  using Kind = Criterion::Kind;
  if (criterion.kind != Kind::yield && criterion.kind != Kind::column &&
      criterion.kind != Kind::combined) {
    return false;
  }
  const parts::Piece& piece = assembly.pieces[criterion.index];
  return !piece.side_force && !piece.warping && !piece.beams.front().axial;
}

/// The blocks in which two systems differ; nothing when they are not of one build.
std::optional<std::set<std::size_t>> differing(const fea::System& a, const fea::System& b) {
  if (a.n_unknowns() != b.n_unknowns() || a.stiffness().size() != b.stiffness().size() ||
      a.places() != b.places()) {
    return std::nullopt;
  }
  std::set<std::size_t> out;
  for (std::size_t i = 0; i < a.stiffness().size(); ++i) {
    if (a.block_unknowns()[i].size() != b.block_unknowns()[i].size() ||
        a.block_unknowns()[i] != b.block_unknowns()[i]) {
      return std::nullopt;
    }
    if (a.stiffness()[i] != b.stiffness()[i]) out.insert(i);
  }
  return out;
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
                      const std::vector<int>& own) {
  Eigen::MatrixXd apart = a - b;
  apart(own, Eigen::all).setZero();
  return !apart.isZero(0.0);
}

const parts::DesignCase* named(const std::vector<parts::DesignCase>& cases,
                               const std::string& name) {
  const auto found = std::find_if(cases.begin(), cases.end(),
                                  [&](const parts::DesignCase& c) { return c.name == name; });
  return found == cases.end() ? nullptr : &*found;
}

}  // namespace

GridScreen::GridScreen(const parts::Design& design, const std::vector<std::string>& parts,
                       const std::vector<std::vector<SizeChoice>>& sizes, const Counted& counted,
                       const Spread& spread)
    : design_(design), parts_(parts) {
  // What is welded to a part's side weakens it there by its own size.
  if (!design.side_welds.empty()) return;
  for (Look& look : places(counted)) {
    build(look, sizes, spread);
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
    const parts::DesignCase* load_case = named(cases, name.load_case);
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

GridScreen::Size GridScreen::built(const Look& look, std::size_t part,
                                   const SizeChoice& size) const {
  Size out;
  const parts::Design changed = with_size(design_, parts_[part], size);
  // What makes no sense is counted as such.
  if (!cases::broken_rules(changed).empty()) return out;
  try {
    out.assembly = parts::assemble(changed, look.set);
    auto system = std::make_shared<const fea::System>(out.assembly.model);
    const std::vector<parts::DesignCase> cases = parts::design_cases(changed);
    for (const parts::DesignCase& wanted : look.cases) {
      const parts::DesignCase* load_case = named(cases, wanted.name);
      if (load_case == nullptr) return out;
      out.loads.push_back(fea::prepare(*system, parts::put(out.assembly, changed, *load_case)));
    }
    out.system = std::move(system);
  } catch (const base::InputError&) {
    return out;
  }
  for (const Criterion& criterion : criteria(out.assembly)) {
    if (is_of_piece(criterion, out.assembly) &&
        belongs(part_judged(criterion, out.assembly), parts_[part])) {
      out.criteria.push_back(criterion);
    }
  }
  return out;
}

void GridScreen::build(Look& look, const std::vector<std::vector<SizeChoice>>& sizes,
                       const Spread& spread) {
  const parts::Assembly assembly = parts::assemble(design_, look.set);
  const fea::System drawn(assembly.model);
  std::vector<fea::LoadCase> loads;
  for (const parts::DesignCase& load_case : look.cases) {
    loads.push_back(fea::prepare(drawn, parts::put(assembly, design_, load_case)));
  }
  if (any_moved(loads)) return;
  const Eigen::MatrixXd force = columns_of(loads);

  // What changes with each part, over all of its sizes.
  std::vector<Blocks> changing(parts_.size());
  std::set<std::size_t> taken;
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    look.sizes.emplace_back(sizes[p].size());
    spread_out(spread, sizes[p].size(),
               [&](std::size_t i) { look.sizes[p][i] = built(look, p, sizes[p][i]); });
    std::set<std::size_t> own;
    for (Size& size : look.sizes[p]) {
      if (!size.system) continue;
      const auto apart = differing(drawn, *size.system);
      if (apart) {
        own.insert(apart->begin(), apart->end());
      } else {
        size.system.reset();
      }
    }
    for (const std::size_t block : own) {
      if (!taken.insert(block).second) return;
    }
    changing[p].assign(own.begin(), own.end());
  }

  std::set<int> ends;
  std::vector<std::vector<int>> ends_of;
  for (const Blocks& blocks : changing) {
    ends_of.push_back(fea::shared_unknowns(drawn, blocks));
    ends.insert(ends_of.back().begin(), ends_of.back().end());
  }
  Blocks rest;
  for (std::size_t block = 0; block < drawn.stiffness().size(); ++block) {
    if (taken.count(block) == 0) rest.push_back(block);
  }
  for (std::size_t p = 0; p < parts_.size(); ++p) {
    spread_out(spread, look.sizes[p].size(), [&](std::size_t i) {
      Size& size = look.sizes[p][i];
      if (!size.system || any_moved(size.loads)) return;
      Eigen::MatrixXd own = columns_of(size.loads);
      const Eigen::MatrixXd there = own;
      // Of its ends only what is new there: the rest has what they carry as drawn.
      own(ends_of[p], Eigen::all) -= force(ends_of[p], Eigen::all);
      fea::Condensed condensed = fea::condense(*size.system, changing[p], ends_of[p], own);
      std::vector<int> unknowns = condensed.inside;
      unknowns.insert(unknowns.end(), ends_of[p].begin(), ends_of[p].end());
      if (!differ_elsewhere(there, force, unknowns)) size.condensed = std::move(condensed);
    });
  }
  look.rest = fea::condense(drawn, rest, {ends.begin(), ends.end()}, force);
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
  const double stops = size.assembly.stops.empty() ? 1.0 : kWithStops;
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
        Eigen::VectorXd motion = Eigen::VectorXd::Zero(size.system->n_unknowns());
        fea::spread_motion(look.rest, size.condensed, moved.col(column), column, motion);
        size.system->carry(motion);
        const fea::Solution solution =
            fea::make_solution(size.system, size.loads[c], motion, nullptr);
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
