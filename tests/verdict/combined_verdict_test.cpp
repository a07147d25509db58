// Compression with bending, and with torque, at 0.98 and 1.02 of the limit. Asked of compression is
// 3.0, of all else 1.5.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace combined_verdict_test {
using verdict_tests::check_flips;
using verdict_tests::finding;
using verdict_tests::judged;
using verdict_tests::where_it_reaches;

namespace {

constexpr double kLength = 1.0;
constexpr double kOutside = 0.040;
constexpr double kWall = 0.004;

/// A strut whose ends turn freely, pressed and bent alike at both ends, and twisted.
std::string pressed_and_bent(double press, double bend, double twist) {
  std::string text = fmt::format(
      "title: strut with end moments\n"
      "points:\n"
      "  foot: [0, 0, 0 m]\n"
      "  head: [0, {}, 0 m]\n"
      "members:\n"
      "  strut:\n"
      "    from: foot\n"
      "    to: head\n"
      "    section: 40 x 4 mm S355H\n"
      "supports:\n"
      "  foot:\n"
      "    at: foot\n"
      "    held: x y z ry\n"
      "  head:\n"
      "    at: head\n"
      "    held: x z\n"
      "forces:\n"
      "  press:\n"
      "    at: head\n"
      "    force_y: {} N\n"
      "    moment_x: {} N m\n"
      "    moment_y: {} N m\n",
      kLength, -press, bend, twist);
  if (bend > 0.0) {
    text += fmt::format(
        "  other end:\n"
        "    at: foot\n"
        "    moment_x: {} N m\n",
        -bend);
  }
  return text;
}

/// The strut by hand, under a multiple of its load.
struct Strut {
  double press;
  double bend;
  double twist;

  [[nodiscard]] double axial(double multiple) const {
    const hand::Section s = hand::tube(kOutside, kWall);
    const double fn =
        hand::column_stress(hand::kYoungEn, hand::kS355H, kLength / std::sqrt(s.inertia / s.area));
    return multiple * press / (fn * s.area);
  }
  /// Even moment, amplified at midspan to M / cos(u), u = L/2 sqrt(P / E I): Timoshenko and Gere,
  /// Theory of Elastic Stability, sec. 1.11, from memory; over Fy Z (AISC 360-22 F8, from memory).
  [[nodiscard]] double moment(double multiple) const {
    const hand::Section s = hand::tube(kOutside, kWall);
    const double u = 0.5 * kLength * std::sqrt(multiple * press / (hand::kYoungEn * s.inertia));
    const double inside = kOutside - 2.0 * kWall;
    const double plastic = (std::pow(kOutside, 3) - std::pow(inside, 3)) / 6.0;
    return multiple * bend / std::cos(u) / (hand::kS355H * plastic);
  }
  /// T / Tn, Tn = 0.6 Fy J / ro: AISC 360-22 H3.1, from memory.
  [[nodiscard]] double torque(double multiple) const {
    return multiple * twist / (0.6 * hand::kS355H * 2.0 * hand::tube(kOutside, kWall).modulus);
  }
  /// H1-1 or H3-6 under shares of axial force, moment and torque.
  static double sum(double p, double m, double t) {
    if (t > 0.2) return p + m + t * t;
    return p < 0.2 ? 0.5 * p + m : p + 8.0 / 9.0 * m;
  }
  /// By how much all three may grow, the first times `on_p` and the others times `on_rest`.
  [[nodiscard]] double room(double on_p, double on_rest) const {
    const double p = on_p * axial(1.0);
    const double m = on_rest * moment(1.0);
    const double t = on_rest * torque(1.0);
    return where_it_reaches([&](double times) { return sum(times * p, times * m, times * t); }, 1.0,
                            1e-3, 1e3);
  }
  [[nodiscard]] double utilization() const {
    const double buckles =
        hand::euler_load(hand::kYoungEn, hand::tube(kOutside, kWall).inertia, kLength) / press;
    const double limit = where_it_reaches(
        [&](double times) { return sum(axial(times), moment(times), torque(times)); }, 1.0, 0.1,
        0.99 * buckles);
    return room(1.0, 1.0) / room(3.0, 1.5) / limit;
  }
};

/// The load, in proportion to 1 kN of push, at which the strut by hand is used so far.
Strut used(double utilization, double arm, double twist_arm) {
  const auto strut = [&](double push) { return Strut{push, push * arm, push * twist_arm}; };
  const double push = where_it_reaches([&](double p) { return strut(p).utilization(); },
                                       utilization, 3.0e3, 40.0e3);
  return strut(push);
}

bool has_finding(const studies::Answer& answer, const std::string& check) {
  return std::any_of(answer.findings.begin(), answer.findings.end(),
                     [&](const checks::Finding& f) { return f.check == check; });
}

}  // namespace

TEST_CASE("a pressed and bent strut is over once H1 is, with its second-order moment",
          "[verdict]") {
  // With the last the axial share is under 0.2 at the load itself, not at the limit.
  for (const double arm : {0.003, 0.008, 0.03}) {
    CHECK((used(1.0, arm, 0.0).axial(1.0) < 0.2) == (arm > 0.02));
    check_flips({.case_text =
                     [&](double u) {
                       const Strut s = used(u, arm, 0.0);
                       return pressed_and_bent(s.press, s.bend, 0.0);
                     },
                 .part = "strut",
                 .check = "combined forces",
                 .tolerance = 4e-3});
  }
}

TEST_CASE("a pressed, bent and twisted strut is over once H3 is", "[verdict]") {
  check_flips({.case_text =
                   [&](double u) {
                     const Strut s = used(u, 0.003, 0.016);
                     REQUIRE(s.torque(1.0) > 0.2);
                     return pressed_and_bent(s.press, s.bend, s.twist);
                   },
               .part = "strut",
               .check = "combined forces",
               .tolerance = 6e-3});
}

// AISC 360-22 H1-1a and F2, from memory: the channel is short enough to be plastic, and pulled.
TEST_CASE("a pulled and bent channel is over once H1 is", "[verdict]") {
  const double area = 0.100 * 0.006 + 2.0 * 0.044 * 0.008;
  const double plastic = 2.0 * 0.050 * 0.008 * 0.046 + 0.006 * 0.084 * 0.084 / 4.0;
  const double pull = 0.5 * 355.0e6 * area / 1.5;
  const double bend = 0.5 * 9.0 / 8.0 * 355.0e6 * plastic / 1.5;
  for (const double u : {0.98, 1.02}) {
    const std::string text = fmt::format(
        "title: channel\n"
        "sections:\n"
        "  c: {{shape: channel, depth: 100 mm, width: 50 mm, web: 6 mm, flange: 8 mm}}\n"
        "points: {{foot: [0, 0, 0 m], head: [0, 0.5, 0 m]}}\n"
        "members: {{tie: {{from: foot, to: head, section: c S355}}}}\n"
        "supports:\n"
        "  foot: {{at: foot, held: x y z ry}}\n"
        "  head: {{at: head, held: x z}}\n"
        "forces:\n"
        "  pull: {{at: head, force_y: {0} N, moment_x: {1} N m}}\n"
        "  other end: {{at: foot, moment_x: {2} N m}}\n",
        u * pull, u * bend, -u * bend);
    const checks::Finding found = finding(judged(text), "tie", "combined forces");
    CHECK(found.utilization() == Approx(u).epsilon(3e-3));
    CHECK(found.required == Approx(1.5));
    CHECK(found.state == (u < 1.0 ? checks::State::within : checks::State::over));
  }
}

TEST_CASE("one kind of force alone is left to the column or to the yield", "[verdict]") {
  const studies::Answer pressed = judged(pressed_and_bent(20.0e3, 0.0, 0.0));
  CHECK(has_finding(pressed, "column"));
  CHECK_FALSE(has_finding(pressed, "combined forces"));
  CHECK_FALSE(has_finding(judged(pressed_and_bent(0.0, 500.0, 0.0)), "combined forces"));
  CHECK(has_finding(judged(pressed_and_bent(20.0e3, 100.0, 0.0)), "combined forces"));
}

// A bend of a hundredth of a millimeter is none: what is asked of the tube must not fall by it.
TEST_CASE("a strut that is hardly bent is judged as a straight one", "[verdict]") {
  const auto strut = [](const std::string& rise, const std::string& through) {
    return judged(
        fmt::format("title: strut\n"
                    "points: {{foot: [0, 0, 0 m], knee: [0, 450, {} mm],"
                    " head: [0, 0.9, 0 m]}}\n"
                    "members:\n"
                    "  strut: {{from: foot, to: head, section: 40 x 5 mm S355H,{}\n"
                    "    from_joint: ball joint, to_joint: ball joint}}\n"
                    "supports:\n"
                    "  foot: {{at: foot}}\n"
                    "  head: {{at: head, held: x z rx ry rz}}\n"
                    "forces: {{press: {{at: head, force_y: -20 kN}}}}\n",
                    rise, through));
  };
  const std::string bent = " through: [knee], bend_radius: 150 mm,";
  const double straight = finding(strut("0", ""), "strut", "column").utilization();
  const checks::Finding hardly = finding(strut("0.01", bent), "strut", "column");
  CHECK(hardly.utilization() == Approx(straight).epsilon(1e-3));
  const studies::Answer clearly = strut("40", bent);
  CHECK(finding(clearly, "strut", "column").utilization() >= 0.999 * straight);
  CHECK(finding(clearly, "strut", "combined forces").utilization() > straight);
  CHECK(finding(clearly, "strut", "yield").utilization() > straight);
}

}  // namespace combined_verdict_test
