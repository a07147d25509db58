#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "studies/cell.hpp"
#include "studies/known_design.hpp"

namespace studies {

// Multiples of the load are not searched farther than this.
inline constexpr double kHighestMultiple = 100.0;

/// How far a check was followed in one cell, and the safety factor that gives.
struct LoadLimit {
  enum class Ends {
    at_limit,    ///< the check just holds at `reached`
    far_within,  ///< it holds at the required multiple with half of its capacity to spare
    gives_way,   ///< the frame gives way at `edge`, before this check reaches its limit
  };
  Ends ends = Ends::at_limit;
  double factor = kHighestMultiple;   ///< beyond `reached` the demand is taken in proportion
  double reached = kHighestMultiple;  ///< multiple of the load
  double edge = base::kUnset;         ///< where the frame gives way: a little more than `reached`
};

/// A cell that a check can be decided in, and the factor asked for there.
struct Asked {
  const Cell* cell = nullptr;
  AskedFactor factor;
  bool at_ride = false;  ///< by second order at ride height, beside the place reached
  /// Where the cell is not solved: the most that demand over capacity may be at the load itself.
  std::optional<double> at_most = {};
  std::optional<Contacts> closed = {};  ///< stops and straps that carry there by first order

  [[nodiscard]] bool is_solved() const { return !at_most; }
};

/// Looks closer at a cell that is not solved, or solves it, and says what the check asks there;
/// nothing where it asks nothing, or cannot be decided.
using SolveAsked = std::function<std::optional<Asked>(const Asked&)>;

/// The cell in which a check comes nearest to its limit.
struct WorstCase {
  Asked asked;
  LoadLimit limit;
};

/// Where a check was looked at, kept for designs that differ in little.
struct Keep {
  std::vector<LookedAt>* in = nullptr;  ///< null = nothing is kept
  double from = 0.0;                    ///< demand over capacity from which on a cell is looked at
};

/// Whether the demand at the load itself, let grow as far as the critical factor allows, stays
/// under this utilization: no other multiple of the load need be solved to know that.
[[nodiscard]] bool holds_by_far(const Criterion& criterion, const Asked& asked, double most);

/// Whether the check holds is decided at its required multiple, loads multiplied before the solve,
/// in every cell that can be the worst: not in those whose demand at the load itself, let grow as
/// far as their critical factor allows, stays under that of another. Stiffness sets of one load
/// case are told apart by what they come to at the load itself, those that then come to 0.5 % more
/// at most on the same side of the limit, or to 5 % where it is far, not at all. The safety factor
/// of the worst one is then searched for.
/// @param asked  cells in which the check gives a number at the load itself, or the frame gives way
/// @param floor  utilization from which on it matters
/// @param solve  for cells that are not solved and may come to more than those that are
/// @param like   where the check was looked at in a design that differs in little
/// @param keep   gets where it was looked at here
/// @return nothing when there are no cells, or none comes over the floor
[[nodiscard]] std::optional<WorstCase> worst_case(const Criterion& criterion,
                                                  const std::vector<Asked>& asked,
                                                  double floor = 0.0, const SolveAsked& solve = {},
                                                  const std::vector<LookedAt>& like = {},
                                                  const Keep& keep = {});

}  // namespace studies
