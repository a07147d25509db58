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
          .asked = {.value = 2.0, .shares = {}}};
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
  const auto asked = [](const checks::Interaction& shares) {
    return checks::combined_asked({shares}, 3.0, 1.5).value;
  };
  const checks::Interaction pressed = {.axial = 0.5, .compressed = true};
  CHECK(asked(pressed) == Approx(3.0));
  CHECK_FALSE(pressed.counts());
  CHECK(checks::Interaction{.axial = 0.5, .bending = base::kUnset}.counts());
  const checks::Interaction bent = {.bending = 0.5, .compressed = true};
  CHECK(asked(bent) == Approx(1.5));
  CHECK_FALSE(bent.counts());
  const checks::Interaction both = {.axial = 0.3, .bending = 0.18, .compressed = true};
  CHECK(asked(both) == Approx((3.0 * 0.3 + 8.0 / 9.0 * 1.5 * 0.18) / (0.3 + 8.0 / 9.0 * 0.18)));
  CHECK(both.counts());
  CHECK(asked({.axial = 0.3, .bending = 0.1}) == Approx(1.5));
  CHECK_FALSE(checks::Interaction{}.counts());
}

TEST_CASE("a small axial share at the load itself counts in full once it is multiplied",
          "[checks][combined]") {
  // By hand, by H1-1a: 3 x 0.15 + 8/9 x 1.5 x 0.435 = 1.03, though Pr/Pc is under 0.2.
  const checks::Interaction shares = {.axial = 0.15, .bending = 0.435, .compressed = true};
  const checks::CombinedAsked asked = checks::combined_asked({shares}, 3.0, 1.5);
  CHECK(asked.with_factors == Approx(1.03));
  CHECK(asked.value * shares.used() == Approx(1.03));
}

// The rule as a reviewer would check it: H1 to H3 under compression times the one factor and all
// else times the other. The utilization must come to 1 just where that does.
TEST_CASE("the factor asked agrees with H1 to H3 under forces times their factors",
          "[checks][combined]") {
  constexpr double kBuckling = 3.0;
  constexpr double kYield = 1.5;
  int small_axial = 0;
  for (const double axial : {0.0, 0.01, 0.05, 0.1, 0.3, 1.0}) {
    for (const double bending : {0.02, 0.3, 1.0}) {
      for (const double torque : {0.0, 0.1, 0.25, 0.9}) {
        for (const bool compressed : {true, false}) {
          const auto shares = [&](double m) {
            return checks::Interaction{.axial = m * axial,
                                       .bending = m * bending,
                                       .shear = 0.2 * m * torque,
                                       .torque = m * torque,
                                       .compressed = compressed};
          };
          const checks::CombinedAsked one =
              checks::combined_asked({shares(1.0)}, kBuckling, kYield);
          CHECK(one.value >= kYield * (1.0 - 1e-12));
          CHECK(one.value <= kBuckling * (1.0 + 1e-12));
          const double at_limit = 1.0 / (one.value * shares(1.0).used());
          for (const double m : {0.98 * at_limit, 1.02 * at_limit}) {
            checks::Interaction multiplied = shares(m);
            multiplied.axial *= compressed ? kBuckling : kYield;
            for (double checks::Interaction::*rest :
                 {&checks::Interaction::bending, &checks::Interaction::shear,
                  &checks::Interaction::torque}) {
              multiplied.*rest *= kYield;
            }
            CAPTURE(axial, bending, torque, compressed, m);
            CHECK((multiplied.sum() <= 1.0) == (m < at_limit));
          }
          if (compressed && shares(at_limit).axial < 0.2 && axial > 0.0) ++small_axial;
        }
      }
    }
  }
  CHECK(small_axial > 10);
}

TEST_CASE("of several places the one that asks most decides", "[checks][combined]") {
  const checks::Interaction pulled = {.axial = 0.4, .bending = 0.2};
  const checks::Interaction pressed = {.axial = 0.3, .bending = 0.2, .compressed = true};
  const checks::CombinedAsked asked = checks::combined_asked({pulled, pressed}, 3.0, 1.5);
  CHECK(asked.shares.compressed);
  CHECK(asked.value * pulled.used() == Approx(3.0 * 0.3 + 8.0 / 9.0 * 1.5 * 0.2));
}

TEST_CASE("the combined verdict turns at its limit", "[checks][combined]") {
  const auto finding = [](double multiple) {
    checks::CombinedInput in = tube(multiple * 40e3, {.my = multiple * 0.8e3});
    in.asked = checks::combined_asked(
        {checks::interaction(checks::section_strength(in.member), in.demand)}, 3.0, 1.5);
    return checks::combined_forces(in);
  };
  const double limit = 1.0 / finding(1.0).utilization();
  CHECK(finding(0.98 * limit).state == State::within);
  CHECK(finding(1.02 * limit).state == State::over);
  const checks::Finding over = finding(1.02 * limit);
  CHECK_THAT(over.lines.back().symbols, Catch::Contains("asked"));
  CHECK(over.lines.back().values.back().si == over.required);
  CHECK(worked::equations_that_hold(over) >= 6);
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
