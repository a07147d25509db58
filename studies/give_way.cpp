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

std::optional<GivesWay> gives_way(const Cell& cell, double upto) {
  if (!(upto > 1.0) || !carries(cell, 1.0) || carries(cell, upto)) return std::nullopt;
  GivesWay out{upto, upto};
  double down = kFirstStep;
  while (out.carried == out.lost) {
    out.carried = std::max(1.0, out.lost / down);
    if (out.carried > 1.0 && !carries(cell, out.carried)) out.lost = out.carried;
    down *= down;
  }
  while (out.lost > kApart * out.carried) {
    const double middle = std::sqrt(out.carried * out.lost);
    (carries(cell, middle) ? out.carried : out.lost) = middle;
  }
  return out;
}

}  // namespace studies
