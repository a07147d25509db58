#include "studies/load_limit.hpp"

#include <algorithm>
#include <cmath>

namespace studies {
namespace {

struct Point {
  double multiple;
  double excess;  ///< ratio - 1
};

}  // namespace

double load_limit(const std::function<double(double)>& ratio, double at_one, double highest) {
  constexpr double kAccuracy = 1.0e-7;
  constexpr int kMostSteps = 100;
  const auto at = [&](double multiple) -> Point { return {multiple, ratio(multiple) - 1.0}; };
  Point low{0.0, -1.0};
  Point high{highest, 0.0};
  bool bracketed = false;
  if (at_one > 1.0) {
    high = {1.0, at_one - 1.0};
    bracketed = true;
  } else {
    low = {1.0, at_one - 1.0};
  }
  // A first guess from the straight line, then a bracket around the root.
  double guess = std::min(1.0 / at_one, highest);
  for (int step = 0; !bracketed && step < kMostSteps; ++step) {
    const Point point = at(guess);
    if (point.excess > 0.0) {
      high = point;
      bracketed = true;
    } else {
      low = point;
      if (guess >= highest) return highest;
      if (point.excess > -kAccuracy) guess *= 1.0 + 4.0 * kAccuracy;
      guess = std::min(std::max(guess * (1.0 + 4.0 * kAccuracy), guess / (1.0 + point.excess)),
                       highest);
    }
  }
  int same_side = 0;
  for (int step = 0; step < kMostSteps && high.multiple - low.multiple > kAccuracy * low.multiple;
       ++step) {
    const bool straight = std::isfinite(high.excess);
    const double trial =
        straight ? (low.multiple * high.excess - high.multiple * low.excess) /
                       (high.excess - low.excess)
                 : 0.5 * (low.multiple + high.multiple);
    const Point point = at(trial);
    if (std::abs(point.excess) < kAccuracy) return trial;
    if (point.excess > 0.0) {
      high = point;
      if (same_side == 1) low.excess *= 0.5;
      same_side = 1;
    } else {
      low = point;
      if (same_side == -1) high.excess *= 0.5;
      same_side = -1;
    }
  }
  return low.multiple;
}

}  // namespace studies
