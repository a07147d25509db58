#include "studies/load_limit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

namespace studies {
namespace {

constexpr double kAccuracy = 1.0e-6;
// The edge beyond which the frame cannot carry is not searched for more closely than this.
constexpr double kEdgeAccuracy = 1.0e-3;
constexpr int kMostSteps = 100;
// Points that a trial is interpolated from: the nearest ones.
constexpr std::size_t kMostPoints = 4;
// Steps in which the limit is not closed in to half of what it was, and it is halved.
constexpr int kPatience = 2;

/// `spare` > 0 where the check holds. It is multiple / ratio - multiple, which is a straight line
/// for a beam-column (ratio = a m / (1 - m / critical)).
struct Point {
  double multiple;
  double spare;
};

/// Where spare is zero on the polynomial multiple(spare) through the points; not finite where there
/// is none.
double zero_through(std::array<Point, kMostPoints> points, std::size_t count) {
  for (std::size_t order = 1; order < count; ++order) {
    for (std::size_t i = 0; i + order < count; ++i) {
      const double from = points[i].spare;
      const double to = points[i + order].spare;
      points[i].multiple = (points[i + 1].multiple * from - points[i].multiple * to) / (from - to);
    }
  }
  return points[0].multiple;
}

/// What is known, and where the limit lies by it.
class Known {
 public:
  void take(double multiple, double ratio) {
    if (!std::isfinite(ratio)) {
      lost_ = std::min(lost_, multiple);
      return;
    }
    const Point point{multiple, multiple / ratio - multiple};
    points_.insert(
        std::lower_bound(points_.begin(), points_.end(), point,
                         [](const Point& a, const Point& b) { return a.multiple < b.multiple; }),
        point);
  }

  /// The lowest multiple at which it does not hold; infinite = none.
  [[nodiscard]] double fails() const {
    const auto first = first_failing();
    return first == points_.end() ? lost_ : std::min(first->multiple, lost_);
  }
  [[nodiscard]] bool carries_at_failure() const { return fails() < lost_; }
  /// The highest multiple below that at which it holds; 0 = none.
  [[nodiscard]] double holds() const {
    const auto first = first_failing();
    return first == points_.begin() ? 0.0 : (first - 1)->multiple;
  }

  /// Where the limit seems to be, between the two; nothing when it cannot be told.
  [[nodiscard]] std::optional<double> seems() const {
    std::array<Point, kMostPoints> near = {};
    std::size_t count = take_nearest(near);
    if (count == 0) return std::nullopt;
    const auto inside = [this](double multiple) {
      return std::isfinite(multiple) && multiple > holds() && multiple < fails();
    };
    for (; count > 1; --count) {
      const double zero = zero_through(near, count);
      if (inside(zero)) return zero;
    }
    const double in_proportion = near[0].multiple + near[0].spare;
    return inside(in_proportion) ? std::optional(in_proportion) : std::nullopt;
  }

 private:
  [[nodiscard]] std::vector<Point>::const_iterator first_failing() const {
    return std::find_if(points_.begin(), points_.end(),
                        [&](const Point& p) { return p.spare < 0.0 || p.multiple >= lost_; });
  }
  /// Those nearest to the limit, the nearest first. @return how many
  std::size_t take_nearest(std::array<Point, kMostPoints>& out) const {
    std::vector<Point> all = points_;
    std::sort(all.begin(), all.end(),
              [](const Point& a, const Point& b) { return std::abs(a.spare) < std::abs(b.spare); });
    const std::size_t count = std::min(kMostPoints, all.size());
    std::copy_n(all.begin(), count, out.begin());
    return count;
  }

  std::vector<Point> points_;  // where the frame carries, by multiple
  double lost_ = std::numeric_limits<double>::infinity();
};

/// Where to look next.
double trial(const Known& known, double highest, bool halve) {
  const double fails = known.fails();
  const double holds = known.holds();
  const std::optional<double> seems = halve ? std::nullopt : known.seems();
  if (seems) return std::min(*seems, highest);
  return std::isfinite(fails) ? 0.5 * (holds + fails) : std::min(2.0 * holds, highest);
}

}  // namespace

LimitFound load_limit(const std::function<double(double)>& ratio, double at_one, double highest,
                      const std::map<double, double>& known) {
  Known all;
  all.take(1.0, at_one);
  for (const auto& [multiple, there] : known) {
    if (multiple != 1.0 && multiple < highest) all.take(multiple, there);
  }
  double width = std::numeric_limits<double>::infinity();
  int waited = 0;
  for (int step = 0; step < kMostSteps; ++step) {
    const double next = trial(all, highest, waited > kPatience);
    const double there = ratio(next);
    if (std::abs(next / there - next) < kAccuracy * next) return {next};
    all.take(next, there);
    const double holds = all.holds();
    const double fails = all.fails();
    if (holds >= highest) return {highest};
    const double enough = all.carries_at_failure() ? kAccuracy : kEdgeAccuracy;
    if (fails - holds < enough * holds) return {holds, !all.carries_at_failure()};
    const bool closer = fails - holds < 0.5 * width;
    waited = closer ? 0 : waited + 1;
    if (closer) width = fails - holds;
  }
  return {all.holds(), !all.carries_at_failure()};
}

}  // namespace studies
