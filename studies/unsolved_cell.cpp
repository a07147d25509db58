#include "studies/unsolved_cell.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "studies/trouble.hpp"

namespace studies {
namespace {

// Of the change that first order tells, what may be missing of a fall and come to a rise.
constexpr double kUnseen = 0.5;
// Of a demand, at the least.
constexpr double kOfDemand = 0.02;
// Of a demand, where cells on all sides are solved.
constexpr double kOnAllSides = 3.0e-3;
// Of what the solution asks more or less than first order, where both are known.
constexpr double kOfOrder = 0.25;

/// How much more second order asks at the load itself, as of a beam-column.
double growth(double lowest_critical_factor) {
  return 1.0 / (1.0 - 1.0 / lowest_critical_factor);
}

}  // namespace

bool goes_on_as(const KnownCell& known, const Cell& cell) {
  if (!(cell.lowest_critical_factor > kFarFromCritical)) return false;
  const CaseSolution& here = cell.first_order();
  if (!carried(here) || here.closed_stops != known.closed_by_first_order) return false;
  if (known.is_moved != cell.is_moved_by_first_order()) return false;
  if (cell.is_near_trouble_by_first_order()) return false;
  // What turns far is in no trouble where it is solved with large displacements.
  return known.is_moved || !cell.is_in_trouble_by_first_order();
}

double at_most_unsolved(double first_order, double critical, const KnownDemand& known) {
  const double there = known.at_load;
  const double first_there = known.by_first_order;
  const double change = first_order - first_there;
  double most = there + (change > 0.0 ? 1.0 + kUnseen : 1.0 - kUnseen) * change;
  if (first_there > 0.0) {
    const double grown = std::max(1.0, growth(critical) / growth(known.lowest_critical_factor));
    const double by = first_order / first_there * grown;
    most = std::max(most, there * by * (1.0 + std::max(kOfDemand, kUnseen * std::abs(by - 1.0))));
  }
  most += kOfOrder * std::abs(there - first_there);
  return std::isfinite(most) ? most : std::numeric_limits<double>::infinity();
}

double at_least_by(double first_order) {
  return first_order - kUnseen * std::abs(first_order - 1.0);
}

double at_most_as_there(double beside, double there, double beside_there) {
  const double by_set = there / beside_there;
  const double by_design = beside / beside_there;
  const double off = kOnAllSides + kUnseen * std::abs(by_set - 1.0) * std::abs(by_design - 1.0);
  const double most = beside * by_set * (1.0 + off);
  return std::isfinite(most) ? most : std::numeric_limits<double>::infinity();
}

}  // namespace studies
