// Stress that grows faster than its load, at 0.98 and 1.02 of the limit. Required: 1.5.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace second_order_verdict_test {
using verdict_tests::check_flips;
using verdict_tests::finding;
using verdict_tests::judged;
using verdict_tests::where_it_reaches;

namespace {

constexpr double kRequired = 1.5;
constexpr double kLength = 0.900;  // of the link, bolt to bolt  [m]

/// A level link of 900 mm, bent off straight.
std::string bent_link(const std::string& ends, double off_straight, double push) {
  return fmt::format(
      "title: bent link\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 900 mm\n"
      "  rise: 0 mm\n"
      "  tube: 40 x 5 mm S355H\n"
      "  ends: {}\n"
      "  bend: {} mm off straight, up\n"
      "  static_rating: 2000 kN\n"
      "forces:\n"
      "  push:\n"
      "    at: axle bolt\n"
      "    force_y: {} N\n",
      ends, 1000.0 * off_straight, push);
}

/// Two level struts that meet a little higher than they stand, pressed down there.
std::string shallow_pair(double rise, double press) {
  const auto strut = [](const std::string& name, const std::string& from) {
    return fmt::format(
        "  {}:\n"
        "    from: {}\n"
        "    to: top\n"
        "    section: 80 x 8 mm S355H\n"
        "    from_joint: ball joint\n"
        "    to_joint: ball joint\n",
        name, from);
  };
  return fmt::format(
             "title: shallow pair\n"
             "points:\n"
             "  left: [0, -1, 0 m]\n"
             "  right: [0, 1, 0 m]\n"
             "  top: [0, 0, {} m]\n"
             "members:\n",
             rise) +
         strut("first", "left") + strut("second", "right") +
         fmt::format(
             "supports:\n"
             "  left:\n"
             "    at: left\n"
             "  right:\n"
             "    at: right\n"
             "  top:\n"
             "    at: top\n"
             "    held: x rx ry rz\n"
             "forces:\n"
             "  press:\n"
             "    at: top\n"
             "    force_z: {} N\n",
             -press);
}

/// A mast with a weight and a side pull at its top.
std::string pulled_mast(double height, double weight, double pull) {
  return fmt::format(
      "title: mast with a side pull\n"
      "points:\n"
      "  foot: [0, 0, 0 m]\n"
      "  top: [0, 0, {} m]\n"
      "members:\n"
      "  mast:\n"
      "    from: foot\n"
      "    to: top\n"
      "    section: 60 x 5 mm S355H\n"
      "supports:\n"
      "  foot:\n"
      "    at: foot\n"
      "forces:\n"
      "  weight:\n"
      "    at: top\n"
      "    force_z: {} N\n"
      "    force_x: {} N\n"
      "factors:\n"
      "  buckling_routine: 1.5\n",
      height, -weight, pull);
}

/// Push at which the bend of a pinned V yields, over the factor required: M = P e tan(u) / u at the
/// apex, u = L/2 sqrt(P / E I); two cantilevers back to back, Timoshenko and Gere, Theory of
/// Elastic Stability, sec. 1.2, from memory. A bow of L/1000 adds to e (straightness on which AISC
/// 360-22 E3 rests, from memory).
double bent_link_limit(double off_straight) {
  const hand::Section s = hand::tube(0.040, 0.005);
  const double e = off_straight + kLength / 1000.0;
  const auto stress = [&](double p) {
    const double u = 0.5 * kLength * std::sqrt(p / (hand::kYoungEn * s.inertia));
    return p / s.area + p * e * std::tan(u) / u / s.modulus;
  };
  return where_it_reaches(stress, hand::kS355H, 1.0e3, 200.0e3) / kRequired;
}

/// Combined forces, asked more than yield is, are over before it.
void yield_flips(const std::string& ends, double off) {
  for (const double u : {0.98, 1.02}) {
    const studies::Answer answer = judged(bent_link(ends, off, u * bent_link_limit(off)));
    const checks::Finding yield = finding(answer, "lateral_link", "yield");
    CHECK(yield.utilization() == Approx(u).epsilon(4e-3));
    CHECK(yield.state == (u < 1.0 ? checks::State::within : checks::State::over));
    CHECK(finding(answer, "lateral_link", "combined forces").utilization() > u);
  }
}

}  // namespace

TEST_CASE("a bent link's yield is over once the second-order stress at its bend passes Fy",
          "[verdict]") {
  for (const double off : {0.010, 0.020}) yield_flips("weld-on pin", off);
}

TEST_CASE("a bent link on ball joints is judged as one on pins, its joints far within",
          "[verdict]") {
  // Five times the load is 0.7 of Euler's load of the straight link, and a twelfth of the rating.
  const double limit = bent_link_limit(0.020);
  REQUIRE(5.0 * 1.02 * limit <
          0.75 * hand::euler_load(hand::kYoungEn, hand::tube(0.040, 0.005).inertia, kLength));
  yield_flips("weld-on ball joint", 0.020);
  const checks::Finding joint = finding(judged(bent_link("weld-on ball joint", 0.020, limit)),
                                        "lateral_link", "joint rating");
  CHECK(joint.utilization() == Approx(5.0 * limit / 2.0e6).epsilon(1e-3));
}

TEST_CASE("a beam-column is judged at the load times the factor, not at the stress times it",
          "[verdict]") {
  // Mast with weight P and pull H: M = H tan(k L) / k at the foot, k = sqrt(P / E I); Timoshenko
  // and Gere, Theory of Elastic Stability, sec. 1.2, from memory.
  const hand::Section s = hand::tube(0.060, 0.005);
  const double height = 2.0;
  const double weight = hand::euler_load(hand::kYoungEn, s.inertia, 2.0 * height) / 2.5;
  const auto stress = [&](double multiple, double pull) {
    const double p = multiple * weight;
    const double k = std::sqrt(p / (hand::kYoungEn * s.inertia));
    return p / s.area + multiple * pull * std::tan(k * height) / k / s.modulus;
  };
  // The pull whose stress reaches Fy at required / utilization times the load.
  const auto pull_for = [&](double utilization) {
    const double multiple = kRequired / utilization;
    const double per_pull = stress(multiple, 1.0) - stress(multiple, 0.0);
    return (hand::kS355H - stress(multiple, 0.0)) / per_pull;
  };
  REQUIRE(kRequired * stress(1.0, pull_for(1.02)) < 0.9 * hand::kS355H);
  // Yield alone: as a column of twice its height, combined forces leave it open (below).
  for (const double u : {0.98, 1.02}) {
    const checks::Finding yields =
        finding(judged(pulled_mast(height, weight, pull_for(u))), "mast", "yield");
    CHECK(yields.state == (u < 1.0 ? checks::State::within : checks::State::over));
    CHECK(yields.utilization() == Approx(u).epsilon(4e-3));
  }
}

TEST_CASE("a frame that gives way before its critical factor is judged by where it does",
          "[verdict]") {
  // Forces in proportion to the load: top and struts lose their stiffness at P = 2 E A s^3, s the
  // sine of the rise. But the struts flatten: with the top down by x of the rise, forces in second
  // order are N = E A s^2 x, P = 2 E A s^3 (x - x^2), and what is left there to hold the top,
  // 2 E A s^2 ((1 - x)^2 - x), is gone at x = (3 - sqrt 5) / 2 (derived).
  const double rise = 0.05;
  const double sine = rise / std::hypot(1.0, rise);
  const double stiff = hand::kYoungEn * hand::tube(0.080, 0.008).area;
  const double linear = 2.0 * stiff * std::pow(sine, 3.0);
  const double x = 0.5 * (3.0 - std::sqrt(5.0));
  const double expected = linear * (x - x * x);
  const double press = expected / 4.0;
  const auto stability = [&](double pressing) {
    const studies::Answer answer = judged(shallow_pair(rise, pressing));
    const auto found =
        std::find_if(answer.findings.begin(), answer.findings.end(),
                     [](const checks::Finding& f) { return f.check == "frame stability"; });
    REQUIRE(found != answer.findings.end());
    return *found;
  };
  const checks::Finding found = stability(press);
  CHECK(found.lines.at(0).values.at(0).si == Approx(linear / press).epsilon(0.01));
  CHECK(found.safety_factor == Approx(4.0).epsilon(0.02));
  CHECK(stability(press * 4.0 / 3.3).state == checks::State::within);
  CHECK(stability(press * 4.0 / 2.7).state == checks::State::over);
}

}  // namespace second_order_verdict_test
