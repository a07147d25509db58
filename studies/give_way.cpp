#include "studies/give_way.hpp"

#include <algorithm>
#include <cmath>

namespace studies {
namespace {

constexpr double kApart = 1.005;
constexpr double kFirstStep = 1.05;

}  // namespace

bool carries(const Cell& cell, double multiple) {
  return carried(cell.at(multiple));
}

GivesWay closed_in(GivesWay between, double apart, const std::function<bool(double)>& carries) {
  while (between.lost > apart * between.carried) {
    const double middle = std::sqrt(between.carried * between.lost);
    (carries(middle) ? between.carried : between.lost) = middle;
  }
  return between;
}

std::optional<GivesWay> gives_way(const Cell& cell, double upto) {
  if (!(upto > 1.0) || !carries(cell, 1.0) || carries(cell, upto)) return std::nullopt;
  GivesWay out{upto, upto};
  double down = kFirstStep;
  while (out.carried == out.lost) {
    out.carried = std::max(1.0, out.lost / down);
    if (out.carried > 1.0 && !carries(cell, out.carried)) out.lost = out.carried;
    down *= down;
  }
  return closed_in(out, kApart, [&](double multiple) { return carries(cell, multiple); });
}

}  // namespace studies
