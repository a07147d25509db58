#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "studies/pick.hpp"

namespace studies {

/// The design with one size for each of several parts.
struct PickedDesign {
  std::vector<std::string> sizes;  ///< in the order of the parts
  std::vector<std::string> steels;
  double mass = base::kUnset;  ///< of these parts  [kg]
  double cost = base::kUnset;  ///< of these parts; unset where one has no price
  Judged judged;
  /// With all bars and tubes as thin as the mill may deliver them, by the checks of these parts
  /// alone; none where the case counts that anyhow, or a steel's standard is not known.
  std::optional<Judged> at_minimum = {};
};

/// What one part of a grid came to.
struct GridLane {
  struct Kept {
    std::size_t design = 0;  ///< its number: which size of each part
    Judged judged;
    bool operator==(const Kept&) const = default;
  };
  std::vector<Kept> kept;    ///< better than what was known when they were solved
  std::size_t in_full = 0;   ///< designs solved in every load case and stiffness set
  std::size_t in_part = 0;   ///< left at the first in which they were no better or did not hold
  std::size_t no_sense = 0;  ///< sizes that do not go together
  bool complete = true;      ///< else it was stopped
  bool operator==(const GridLane&) const = default;
};

/// Several parts picked together.
struct PickedGrid {
  std::string title;
  bool inches = true;
  Scope scope = {};
  PickBy by = PickBy::mass;
  std::vector<std::string> parts;
  std::vector<std::string> now;
  std::vector<std::size_t> n_sizes;  ///< of each part
  std::size_t n_designs = 0;
  std::size_t in_full = 0;
  std::size_t in_part = 0;
  std::size_t no_sense = 0;
  std::size_t n_unpriced = 0;  ///< sizes left out of a pick by cost
  /// Those that pass and that no other design betters in mass (or cost) without being worse in its
  /// utilization: lightest first.
  std::vector<PickedDesign> best;
  std::vector<std::string> others_over;  ///< other parts, over or not decided as drawn
  std::vector<parts::Assumption> assumed;

  /// Designs looked at; fewer than n_designs when it was stopped.
  [[nodiscard]] std::size_t n_done() const { return in_full + in_part + no_sense; }
};

/// The grid is dealt out to this many lanes, whatever the number of threads or shares. The first
/// one solves what seems to be the front beforehand; the others leave those out.
inline constexpr std::size_t kGridLanes = 32;

/// Every combination of sizes of two or three parts, as a Pareto set: mass (or cost) against the
/// worst utilization of these parts. A design passes as in `pick`.
///
/// Utilizations are compared in steps of half a percent of the limit: of a step the lightest is
/// named.
///
/// What a condensed solve (studies/grid_screen.hpp) has over a limit, or no better than a lighter
/// one, by its margins is not built: by first order alone, beside the design as drawn, or beside
/// designs of the lane or the first lane that were solved and have one of the sizes. The same solve
/// says which designs seem to be the front: they are solved first. No list of designs is kept, so
/// that memory does not grow with their number. What else is spared is exact: a utilization is the
/// largest over load cases, stiffness sets and checks, so that a design is done with as soon as one
/// of them is over the limit, or not under that of a design of its lane, or of the first lane, that
/// is no heavier. What is named was solved in full.
/// @throws base::InputError: a part that is not there or named twice, sizes as in `pick`, `by` an
///         outside diameter
[[nodiscard]] PickedGrid pick_grid(const parts::Design& design,
                                   const std::vector<std::string>& parts,
                                   const std::vector<SizeLimits>& limits, PickBy by,
                                   const std::vector<sections::StockItem>& more,
                                   const Watch& watch = {}, const Spread& spread = {},
                                   Share<GridLane>* share = nullptr);

}  // namespace studies
