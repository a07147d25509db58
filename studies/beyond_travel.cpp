#include "studies/beyond_travel.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "parts/design.hpp"
#include "studies/answer.hpp"

namespace studies {
namespace {

using Kind = BeyondTravel::Kind;

/// Nothing stops there, or what stops is made for it.
bool is_passed_by_right(const std::string& what) {
  return what == kCoilCarriesNothing || what == kCoilLeavesSeat || what == kStrapTight ||
         what == kBumpStopMet;
}

struct Farthest {
  double reached = 0.0;
  std::string load_case;

  void take(double here, const std::string& in) {
    if (here > reached) *this = {here, in};
  }
};

std::optional<BeyondTravel> first_passed(Kind kind, const std::vector<DroopEnd>& ends,
                                         const Farthest& farthest) {
  const auto passed = std::find_if(ends.begin(), ends.end(), [&](const DroopEnd& end) {
    return !is_passed_by_right(end.what) && end.drop < farthest.reached;
  });
  if (passed == ends.end()) return std::nullopt;
  return BeyondTravel{kind, passed->what, passed->drop, farthest.reached, farthest.load_case};
}

}  // namespace

std::vector<BeyondTravel> beyond_travel(const parts::Design& design, const Answer& answer) {
  Farthest down{.load_case = {}};
  Farthest up{.load_case = {}};
  Farthest rolled{.load_case = {}};
  for (const SolvedCase& solved : answer.solved) {
    if (!solved.place) continue;
    down.take(-solved.place->lowest_corner, solved.load_case);
    up.take(solved.place->highest_corner, solved.load_case);
    rolled.take(std::abs(solved.place->ground_moment), solved.load_case);
  }
  std::vector<BeyondTravel> out;
  const auto add = [&](std::optional<BeyondTravel> one) {
    if (one) out.push_back(*std::move(one));
  };
  if (answer.droop) add(first_passed(Kind::drop, answer.droop->ends, down));
  if (answer.bump) add(first_passed(Kind::rise, answer.bump->ends, up));
  if (design.vehicle) {
    const double most = 0.5 * design.vehicle->axle_weight * design.vehicle->track;
    if (rolled.reached > most) {
      out.push_back(
          {Kind::wheel_lifts, "a wheel leaves the ground", most, rolled.reached, rolled.load_case});
    }
  }
  return out;
}

}  // namespace studies
