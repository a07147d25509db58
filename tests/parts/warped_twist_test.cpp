// How a torque divides in a channel that warps between places that hold its twist. Expected: the
// closed forms of u - w^2 u'' = T (Vlasov's bar; Timoshenko and Gere, ch. 5, from memory), derived
// here for a torque of one at a from one end and b from the other.
#include "parts/warped_twist.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace warped_twist_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using parts::warped_torques;
using parts::WarpedEnds;

namespace {

constexpr double kLength = 0.65;  // w
constexpr double kAhead = 0.4;
constexpr double kBehind = 0.9;

}  // namespace

// B = w sinh(a/w) sinh(b/w) / sinh((a + b)/w) under the torque, none at the ends.
TEST_CASE("free to warp at its ends, a twisted channel has its bimoment under the torque",
          "[parts][warping]") {
  const double whole = kAhead + kBehind;
  const std::vector<WarpedEnds> ends =
      warped_torques({{kAhead, kBehind / whole}, {kBehind, -kAhead / whole}}, kLength, {});
  const double bimoment = kLength * std::sinh(kAhead / kLength) * std::sinh(kBehind / kLength) /
                          std::sinh(whole / kLength);
  CHECK_THAT(std::abs(ends[0].b.bimoment), WithinRel(bimoment, 1e-12));
  CHECK_THAT(ends[1].a.bimoment, WithinRel(ends[0].b.bimoment, 1e-12));
  CHECK_THAT(ends[0].a.bimoment, WithinAbs(0.0, 1e-15));
  CHECK_THAT(ends[1].b.bimoment, WithinAbs(0.0, 1e-15));
  // Twist rate, in torque: b/L - sinh(b/w) / sinh(L/w) at the first end.
  CHECK_THAT(ends[0].a.st_venant,
             WithinRel(kBehind / whole - std::sinh(kBehind / kLength) / std::sinh(whole / kLength),
                       1e-12));
}

// By symmetry the twist has no slope in the middle: w/2 tanh(a / (2 w)) there and at the ends.
TEST_CASE("held from warping, a twisted channel has one bimoment at ends and middle",
          "[parts][warping]") {
  const std::vector<WarpedEnds> ends =
      warped_torques({{kAhead, 0.5}, {kAhead, -0.5}}, kLength, {true, true});
  const double bimoment = 0.5 * kLength * std::tanh(0.5 * kAhead / kLength);
  CHECK_THAT(std::abs(ends[0].a.bimoment), WithinRel(bimoment, 1e-12));
  CHECK_THAT(ends[0].b.bimoment, WithinRel(-ends[0].a.bimoment, 1e-12));
  CHECK_THAT(ends[0].b.st_venant, WithinAbs(0.0, 1e-15));
}

// A cantilever under a torque at its free end: T w tanh(L/w) where it is clamped, which is more
// than with both ends held.
TEST_CASE("held at one end alone, a channel has its largest bimoment there", "[parts][warping]") {
  const std::vector<WarpedEnds> ends =
      warped_torques({{kAhead, 1.0}}, kLength, parts::HeldEnds{.a = true, .b = false});
  CHECK_THAT(std::abs(ends[0].a.bimoment), WithinRel(kLength * std::tanh(kAhead / kLength), 1e-12));
  CHECK_THAT(ends[0].b.bimoment, WithinAbs(0.0, 1e-15));
}

TEST_CASE("more beams on the way change nothing", "[parts][warping]") {
  for (const bool held : {false, true}) {
    const std::vector<WarpedEnds> few =
        warped_torques({{kAhead, 0.7}, {kBehind, -0.3}}, kLength, {held, held});
    const std::vector<WarpedEnds> many = warped_torques(
        {{0.1, 0.7}, {0.3, 0.7}, {0.2, -0.3}, {0.3, -0.3}, {0.4, -0.3}}, kLength, {held, held});
    CHECK_THAT(many[1].b.bimoment, WithinRel(few[0].b.bimoment, 1e-12));
    CHECK_THAT(many[4].b.st_venant, WithinAbs(few[1].b.st_venant, 1e-14));
  }
}

}  // namespace warped_twist_test
