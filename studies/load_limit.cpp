#include "studies/load_limit.hpp"

#include <algorithm>
#include <cmath>

namespace studies {
namespace {

constexpr double kAccuracy = 1.0e-6;
// The edge beyond which the frame cannot carry is not searched for more closely than this.
constexpr double kEdgeAccuracy = 0.01;
constexpr int kMostSteps = 100;

/// `spare` > 0 where the check holds. It is multiple / ratio - multiple, which is a straight line
/// for a beam-column (ratio = a m / (1 - m / critical)), and finite where the ratio is infinite.
struct Point {
  double multiple;
  double spare;
  bool carries = true;  ///< the ratio is finite there
};

Point at(const std::function<double(double)>& ratio, double multiple) {
  const double there = ratio(multiple);
  return {multiple, multiple / there - multiple, std::isfinite(there)};
}

double crossing(const Point& a, const Point& b) {
  return (a.multiple * b.spare - b.multiple * a.spare) / (b.spare - a.spare);
}

/// Between a point that holds and one that does not.
double between(const std::function<double(double)>& ratio, Point holds, Point fails) {
  int same_side = 0;
  for (int step = 0;
       step < kMostSteps && fails.multiple - holds.multiple > kAccuracy * holds.multiple; ++step) {
    const double gap = fails.multiple - holds.multiple;
    if (!fails.carries && gap < kEdgeAccuracy * holds.multiple) break;
    const double straight = crossing(holds, fails);
    const bool inside = straight > holds.multiple && straight < fails.multiple;
    const Point point = at(ratio, inside ? straight : 0.5 * (holds.multiple + fails.multiple));
    if (std::abs(point.spare) < kAccuracy * point.multiple) return point.multiple;
    if (point.spare < 0.0) {
      fails = point;
      if (same_side == 1) holds.spare *= 0.5;
      same_side = 1;
    } else {
      holds = point;
      if (same_side == -1) fails.spare *= 0.5;
      same_side = -1;
    }
  }
  return holds.multiple;
}

}  // namespace

double load_limit(const std::function<double(double)>& ratio, double at_one, double highest,
                  double guess) {
  Point last{1.0, 1.0 / at_one - 1.0};
  Point next = at(ratio, std::min(guess > 0.0 ? guess : 1.0 / at_one, highest));
  // Secant steps until the root is met or lies between two points.
  for (int step = 0; step < kMostSteps; ++step) {
    if (std::abs(next.spare) < kAccuracy * next.multiple) return next.multiple;
    if ((next.spare < 0.0) != (last.spare < 0.0)) {
      return next.spare < 0.0 ? between(ratio, last, next) : between(ratio, next, last);
    }
    if (next.spare > 0.0 && next.multiple >= highest) return highest;
    const double trial = crossing(last, next);
    const bool outward = next.spare > 0.0 ? trial > next.multiple : trial < next.multiple;
    const double fallback = next.multiple * (next.spare > 0.0 ? 2.0 : 0.5);
    last = next;
    next = at(ratio,
              std::min(std::isfinite(trial) && trial > 0.0 && outward ? trial : fallback, highest));
  }
  return last.multiple;
}

}  // namespace studies
