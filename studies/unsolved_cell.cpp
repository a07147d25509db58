#include "studies/unsolved_cell.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "studies/trouble.hpp"

namespace studies {
namespace {

// Of the load. Nearer to it first order says little of what second order makes of it.
constexpr double kFarFromCritical = 1.5;
// Of the change that first order tells, what may be missing of a fall and come to a rise.
constexpr double kUnseen = 0.5;
// Of a demand, at the least.
constexpr double kOfDemand = 0.02;
// Of what the solution asks more or less than first order, where both are known.
constexpr double kOfOrder = 0.25;

bool far_from_critical(const Cell& cell) {
  return cell.lowest_critical_factor > kFarFromCritical;
}

/// How much more second order asks at the load itself, as of a beam-column.
double growth(const Cell& cell) {
  return 1.0 / (1.0 - 1.0 / cell.lowest_critical_factor);
}

}  // namespace

bool goes_on_as(const Cell& solved, const Cell& cell) {
  const CaseSolution& known = solved.kept(1.0);
  if (!carried(known) || !solved.trouble.empty()) return false;
  if (!far_from_critical(solved) || !far_from_critical(cell)) return false;
  const CaseSolution& here = cell.first_order();
  const CaseSolution& there = solved.first_order();
  if (!carried(here) || !carried(there) || here.closed_stops != there.closed_stops) return false;
  const bool is_moved = known.method == fea::Method::large_displacement;
  if (is_moved != (cell.in_proportion() || moves_far(cell.model(), here))) return false;
  // What turns far is in no trouble where it is solved with large displacements.
  return is_moved || trouble_by_part(cell.model(), here).empty();
}

double at_most_unsolved(const Criterion& criterion, const Cell& cell, const Cell& solved) {
  const double there = solved.ratio_kept(criterion, 1.0);
  const double first_there = solved.ratio_by_first_order(criterion);
  const double first_here = cell.ratio_by_first_order(criterion);
  const double change = first_here - first_there;
  double most = there + (change > 0.0 ? 1.0 + kUnseen : 1.0 - kUnseen) * change;
  if (first_there > 0.0) {
    const double grown = std::max(1.0, growth(cell) / growth(solved));
    const double by = first_here / first_there * grown;
    most = std::max(most, there * by * (1.0 + std::max(kOfDemand, kUnseen * std::abs(by - 1.0))));
  }
  most += kOfOrder * std::abs(there - first_there);
  return std::isfinite(most) ? most : std::numeric_limits<double>::infinity();
}

}  // namespace studies
