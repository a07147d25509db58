#include "checks/combined_forces.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace combined_forces_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

constexpr double kOmega = 1.67;

/// A tube of 50 x 5 mm, 900 mm long, E 200 GPa, Fy 350 MPa: Pn 195.7 kN by E3, Mn 3.558 kN m by F8.
checks::CombinedInput tube(double press, const sections::Resultants& at) {
  return {.member = {sections::RoundTube{.outside = 0.050, .wall = 0.005}, 200e9, 350e6, 0.9},
          .strength_basis = "specified minimum",
          .demand = {.axial = press, .axial_capacity = 195.7e3, .compressed = true, .at = at},
          .buckling_factor = 3.0,
          .yield_factor = 1.5,
          .required = 2.0};
}

}  // namespace

// AISC 360-22 H1.1, from memory; worked by hand with allowable strengths, 4 figures: 60 kN and
// 1.2 kN m use 0.5121 and 0.5632 of them, 1.013 together.
TEST_CASE("compression and bending of a tube add up by H1", "[checks][combined]") {
  const checks::Finding f =
      checks::combined_forces(tube(kOmega * 60e3, {.my = kOmega * 0.72e3, .mz = kOmega * 0.96e3}));
  CHECK_THAT(f.demand, WithinRel(1.013, 5e-4));
  CHECK(f.lines.at(0).values.back().si == Approx(0.5121).epsilon(2e-4));
  CHECK(worked::equations_that_hold(f) >= 4);
  CHECK_THAT(f.source, Catch::Contains("from memory"));
}

TEST_CASE("little compression counts by half, and both equations meet at a fifth",
          "[checks][combined]") {
  const auto sum = [](double part) {
    return checks::combined_forces(tube(part * 195.7e3, {.my = 1e3})).demand;
  };
  CHECK_THAT(sum(0.1), WithinRel(0.05 + 1e3 / 3.558e3, 3e-4));
  const double moment = 0.9 * 3.558e3;
  const auto at_limit = [&](double part) {
    return checks::combined_forces(tube(part * 195.7e3, {.my = moment})).demand;
  };
  CHECK_THAT(at_limit(0.2 - 1e-9), WithinRel(at_limit(0.2 + 1e-9), 1e-3));
}

// AISC 360-22 H3.2 (H3-6), read in a handbook on the 2005 edition; by hand: Tn = 0.6 Fy J / ro
// = 3.043 kN m, Vn = 0.6 Fy A / 2 = 74.22 kN.
TEST_CASE("a torque over a fifth of Tn counts with the shear", "[checks][combined]") {
  const auto twisted = [](double torque) {
    return checks::combined_forces(
        tube(kOmega * 60e3, {.vy = 3e3, .vz = 4e3, .t = torque, .my = kOmega * 1.2e3}));
  };
  const checks::Finding f = twisted(1.67e3);
  const double twisting = 5e3 / 74.22e3 + 1.67e3 / 3.043e3;
  CHECK_THAT(f.demand, WithinRel(0.5121 + 0.5632 + twisting * twisting, 5e-4));
  CHECK(worked::equations_that_hold(f) >= 6);
  CHECK_THAT(twisted(0.19 * 3.043e3).demand, WithinRel(1.013, 5e-4));
}

TEST_CASE("tension and bending add up by H1.2", "[checks][combined]") {
  checks::CombinedInput in = tube(100e3, {.my = 1.5e3});
  in.demand.compressed = false;
  in.demand.axial_capacity = 350e6 * 706.9e-6;
  const checks::Finding f = checks::combined_forces(in);
  CHECK_THAT(f.demand, WithinRel(100e3 / 247.4e3 + 8.0 / 9.0 * 1.5e3 / 3.558e3, 5e-4));
}

TEST_CASE("the factor asked lies between those of its parts", "[checks][combined]") {
  const checks::Interaction pressed = {0.5, 0.0, 0.0, true};
  CHECK(checks::combined_required(pressed, 3.0, 1.5) == 3.0);
  CHECK_FALSE(pressed.counts());
  CHECK(checks::Interaction{0.5, base::kUnset, 0.0, true}.counts());
  const checks::Interaction bent = {0.0, 0.5, 0.0, true};
  CHECK(checks::combined_required(bent, 3.0, 1.5) == 1.5);
  CHECK_FALSE(bent.counts());
  const checks::Interaction both = {0.3, 0.1, 0.05, true};
  CHECK_THAT(checks::combined_required(both, 3.0, 1.5),
             WithinRel((3.0 * 0.3 + 1.5 * 0.15) / 0.45, 1e-12));
  CHECK(both.counts());
  const checks::Interaction pulled = {0.3, 0.1, 0.0, false};
  CHECK(checks::combined_required(pulled, 3.0, 1.5) == 1.5);
  CHECK_FALSE(checks::Interaction{}.counts());
}

TEST_CASE("the combined verdict turns at its limit", "[checks][combined]") {
  const auto state = [](double multiple) {
    checks::CombinedInput in = tube(multiple * 40e3, {.my = multiple * 0.8e3});
    in.required = checks::combined_required(
        checks::interaction(checks::section_strength(in.member), in.demand), in.buckling_factor,
        in.yield_factor);
    return checks::combined_forces(in);
  };
  const double limit = 1.0 / state(1.0).utilization();
  CHECK(state(0.98 * limit).state == State::within);
  CHECK(state(1.02 * limit).state == State::over);
  CHECK_THAT(state(1.02 * limit).lines.back().symbols, Catch::Contains("asked"));
}

TEST_CASE("more of any force never helps", "[checks][combined]") {
  const sections::Resultants at = {.vy = 2e3, .vz = 1e3, .t = 1.2e3, .my = 0.9e3, .mz = 0.4e3};
  const checks::SectionStrength box = checks::section_strength(
      {sections::RectangularTube{.depth = 0.060, .width = 0.040, .wall = 0.003, .corner = 0.006},
       200e9, 350e6, 0.9});
  const auto sum = [&](const sections::Resultants& r, double press) {
    return checks::interaction(
               box, {.axial = press, .axial_capacity = 120e3, .compressed = true, .at = r})
        .sum();
  };
  const double before = sum(at, 40e3);
  CHECK(sum(at, 44e3) > before);
  for (double sections::Resultants::*force :
       {&sections::Resultants::vy, &sections::Resultants::vz, &sections::Resultants::t,
        &sections::Resultants::my, &sections::Resultants::mz}) {
    sections::Resultants more = at;
    more.*force *= 1.1;
    CHECK(sum(more, 40e3) >= before);
  }
}

TEST_CASE("a moment that no method covers leaves the interaction undecided", "[checks][combined]") {
  checks::CombinedInput in = tube(10e3, {.my = 5e3});
  in.member.shape = sections::RoundTube{.outside = 0.520, .wall = 0.002};
  CHECK(checks::combined_forces(in).state == State::undecided);
  CHECK_THAT(checks::combined_forces(in).reason, Catch::Contains("outside the method"));
  in.demand.at = {};
  CHECK(checks::combined_forces(in).state == State::within);
}

}  // namespace combined_forces_test
