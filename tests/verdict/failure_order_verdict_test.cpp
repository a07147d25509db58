// What gives first in a link that is pulled, its bolt or its tube, and the forces that a finding
// starts from. Own check, no source: a bar in tension and a bolt in double shear by hand.
#include <algorithm>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace failure_order_verdict_test {
using verdict_tests::judged;

namespace {

constexpr double kPull = 10.0e3;  // [N]
constexpr double kInch = 0.0254;

studies::Answer answer_with(const std::string& bolt) {
  return judged(
      fmt::format("title: pulled link\n"
                  "lateral_link:\n"
                  "  bolt_to_bolt: 900 mm\n"
                  "  rise: 0 mm\n"
                  "  tube: 50 x 2 mm S355H\n"
                  "  ends: weld-on pin\n"
                  "  bolt: {}\n"
                  "bracket:\n"
                  "  drop: 100 mm\n"
                  "  plates: 2 of 12 mm S355\n"
                  "  depth_at_rail: 150 mm\n"
                  "  depth_at_bolt: 100 mm\n"
                  "  edge_distance: 50 mm\n"
                  "  weld: 20 mm fillet, both sides of each plate\n"
                  "  rail: boxed, 150 x 150 x 8 mm\n"
                  "  welded_to: bottom\n"
                  "  rail_stiffness: 2000 kN m/rad\n"
                  "forces:\n"
                  "  pull:\n"
                  "    at: axle bolt\n"
                  "    force_y: {} N\n",
                  bolt, -kPull));
}

studies::FailureOrder order_of(const std::string& bolt) {
  const studies::Answer answer = answer_with(bolt);
  REQUIRE(answer.failure_orders.size() == 1);
  return answer.failure_orders.front();
}

/// Multiple of the pull at which one part gives; the test fails when it does not.
double gives_at(const studies::FailureOrder& order, const std::string& part,
                studies::GivesAt::How how) {
  const auto found = std::find_if(
      order.order.begin(), order.order.end(),
      [&](const studies::GivesAt& gives) { return gives.part == part && gives.how == how; });
  REQUIRE(found != order.order.end());
  return found->multiple;
}

/// Two planes of 0.450 Fu A: AISC 360-22 J3.7, from memory; grade 8: 150 ksi, SAE J429 (read).
double double_shear(double diameter) {
  return 2.0 * 0.450 * 150.0 * hand::kKsi * hand::kPi / 4.0 * diameter * diameter;
}

}  // namespace

TEST_CASE("a bolt between the tube's least strength and 1.25 times it breaks first", "[verdict]") {
  // 107 kN of least yield, 134 kN with 1.25; the bolt holds 118 kN.
  const double tube = hand::kS355H * hand::tube(0.050, 0.002).area;
  const double bolt = double_shear(0.5 * kInch);
  REQUIRE(bolt > 1.05 * tube);
  REQUIRE(bolt < 1.20 * tube);
  const studies::FailureOrder order = order_of("1/2-20 grade 8, double shear");
  CHECK(order.breaks_first);
  CHECK(order.order.front().part == "lateral_link");
  CHECK(order.order.front().check == "bolt");
  CHECK(gives_at(order, "lateral_link", studies::GivesAt::How::breaks) ==
        Approx(bolt / kPull).epsilon(0.01));
  CHECK(gives_at(order, "lateral_link", studies::GivesAt::How::bends) ==
        Approx(1.25 * tube / kPull).epsilon(0.01));
}

TEST_CASE("a bolt over 1.25 times the tube's least strength lets the tube give first",
          "[verdict]") {
  REQUIRE(double_shear(0.625 * kInch) > 1.3 * hand::kS355H * hand::tube(0.050, 0.002).area);
  const studies::FailureOrder order = order_of("5/8-18 grade 8, double shear");
  CHECK_FALSE(order.breaks_first);
  CHECK(order.order.front().part == "lateral_link");
  CHECK(order.order.front().how == studies::GivesAt::How::bends);
  CHECK(std::is_sorted(order.order.begin(), order.order.end(),
                       [](const studies::GivesAt& a, const studies::GivesAt& b) {
                         return a.multiple < b.multiple;
                       }));
}

TEST_CASE("a finding tells the forces that it starts from, and how they were solved", "[verdict]") {
  const checks::Finding yield =
      verdict_tests::finding(answer_with("5/8-18 grade 8, double shear"), "lateral_link", "yield");
  CHECK(yield.origin.method.find("second order") == 0);
  CHECK(yield.origin.multiple == 1.0);
  REQUIRE(yield.origin.forces.size() == 2);
  // Pulled: the first end backward, the far end forward along its own axis.
  CHECK(yield.origin.forces[0].values[0].si == Approx(-kPull).epsilon(1e-3));
  CHECK(yield.origin.forces[1].values[0].si == Approx(kPull).epsilon(1e-3));
  CHECK_FALSE(yield.range.empty());
}

}  // namespace failure_order_verdict_test
