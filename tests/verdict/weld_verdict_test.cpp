// The root weld of a bracket at 0.98 and 1.02 of its limit. Required: 2.0 routine, 1.5 abuse.
// The weld as a line: Blodgett, Design of Welded Structures, sec. 7.4, from memory. Nominal
// strength 0.60 F_EXX on the throat, 0.707 of the leg: AISC 360-22 J2.4 and J2.2a, from memory.
#include <algorithm>
#include <array>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace weld_verdict_test {
using verdict_tests::check_flips;

namespace {

constexpr double kDrop = 0.250;
constexpr double kThroat = 0.006 / 1.41421356237309505;
constexpr double kLines = 4.0;  // two plates, both sides of each
constexpr double kBottom = 0.100;
constexpr double kStrength = 0.60 * hand::kE70;

/// On a rail so stiff that the bracket does not lean: leaning shortens the lever.
std::string case_text(const std::string& loads, const std::string& faces) {
  return fmt::format(
      "title: root weld\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 900 mm\n"
      "  rise: 0 mm\n"
      "  tube: 50 x 10 mm S355H\n"
      "  ends: weld-on pin\n"
      "bracket:\n"
      "  drop: 250 mm\n"
      "  plates: 2 of 12 mm S355\n"
      "  depth_at_rail: 100 mm\n"
      "  weld: 6 mm fillet, both sides of each plate\n"
      "  rail: boxed, 100 x 150 x 16 mm\n"
      "  side_force: 0 %\n"
      "  welded_to: {}\n"
      "  up_the_side: 75 mm\n"
      "  rail_stiffness: 20000 kN m/rad\n{}",
      faces, loads);
}

std::string push(double force) {
  return fmt::format(
      "forces:\n"
      "  push:\n"
      "    at: axle bolt\n"
      "    force_y: {} N\n",
      force);
}

/// The truck's side forces; the height of its mass center is not given.
std::string truck(double axle_weight, const std::string& load_case) {
  return fmt::format(
      "vehicle:\n"
      "  axle_weight: {} N\n"
      "  tire: 800 mm\n"
      "  track: 1.6 m\n"
      "  friction: 0.9\n"
      "load_cases: [{}]\n",
      axle_weight, load_case);
}

/// Throat stress of a side force of one at the bolt, weld on the rail's bottom alone.  [1/m^2]
double bottom_stress() {
  const double area = kLines * kThroat * kBottom;
  const double inertia = kLines * kThroat * std::pow(kBottom, 3) / 12.0;
  return std::hypot(1.0 / area, kDrop * 0.5 * kBottom / inertia);
}

/// The same with 75 mm more up the inner side of each line: an L, turned about its own centroid.
double corner_stress() {
  constexpr double kSide = 0.075;
  const double length = kBottom + kSide;
  const double y_c = kSide * -0.5 * kBottom / length;  // inner side at -50 mm
  const double z_c = kSide * 0.5 * kSide / length;
  const double of_bottom = std::pow(kBottom, 3) / 12.0 + kBottom * (y_c * y_c + z_c * z_c);
  const double of_side = std::pow(kSide, 3) / 12.0 + kSide * (std::pow(-0.5 * kBottom - y_c, 2) +
                                                              std::pow(0.5 * kSide - z_c, 2));
  const double polar = kLines * kThroat * (of_bottom + of_side);
  const double moment = kDrop + z_c;
  double worst = 0.0;
  using Point = std::array<double, 2>;
  for (const Point& p :
       {Point{0.5 * kBottom, 0.0}, Point{-0.5 * kBottom, 0.0}, Point{-0.5 * kBottom, kSide}}) {
    const double across = 1.0 / (kLines * kThroat * length) - moment / polar * (p[1] - z_c);
    const double up = moment / polar * (p[0] - y_c);
    worst = std::max(worst, std::hypot(across, up));
  }
  return worst;
}

}  // namespace

TEST_CASE("a bottom weld is over once its throat stress passes 0.60 F_EXX over 2", "[verdict]") {
  const double limit = kStrength / bottom_stress() / 2.0;
  check_flips({.case_text = [&](double u) { return case_text(push(u * limit), "bottom"); },
               .part = "bracket",
               .check = "weld"});
}

TEST_CASE("a weld on bottom and inner side turns about the centroid of its L", "[verdict]") {
  const double limit = kStrength / corner_stress() / 2.0;
  check_flips(
      {.case_text = [&](double u) { return case_text(push(u * limit), "bottom and inner side"); },
       .part = "bracket",
       .check = "weld"});
}

TEST_CASE("a side force of a twentieth turns the weld along the rail too", "[verdict]") {
  // Weld as a line; lines 25 and 37 mm from the bracket's middle. 5 % is a proposal, no source.
  const double area = kLines * kThroat * kBottom;
  const double about_rail = area * kBottom * kBottom / 12.0;
  const double along_rail = 0.5 * area * (0.025 * 0.025 + 0.037 * 0.037);
  const double upright = kDrop * 0.5 * kBottom / about_rail + 0.05 * kDrop * 0.037 / along_rail;
  const double limit = kStrength / std::hypot(std::hypot(1.0, 0.05) / area, upright) / 2.0;
  check_flips({.case_text =
                   [&](double u) {
                     std::string text = case_text(push(u * limit), "bottom");
                     return text.replace(text.find("side_force: 0 %"), 15, "side_force: 5 %");
                   },
               .part = "bracket",
               .check = "weld"});
}

// fu / (sqrt(3) beta_w) of the softer steel beside it, A36 of 58 ksi with 0.85; 1.25 x 1.5 asked:
// EN 1993-1-8 4.5.3.3, table 4.1 and 2.2, EN 1990, from memory.
TEST_CASE("by the preset of EN the weld is over once the softer steel's strength is passed",
          "[verdict]") {
  const double strength = 58.0 * hand::kKsi / (std::sqrt(3.0) * 0.85);
  const double limit = strength / bottom_stress() / (1.25 * 1.5);
  const auto text = [&](double u) {
    return case_text(push(u * limit), "bottom") + "factors: {preset: EN}\n";
  };
  check_flips({.case_text = text, .part = "bracket", .check = "weld"});
  for (const double plate : {3.9, 4.0}) {
    std::string thin = text(0.1);
    thin.replace(thin.find("2 of 12 mm"), 10, fmt::format("2 of {} mm", plate));
    const checks::Finding found =
        verdict_tests::finding(verdict_tests::judged(thin), "bracket", "weld");
    CHECK((found.state == checks::State::undecided) == (plate < 4.0));
    CHECK((found.reason.find("under 4 mm") != std::string::npos) == (plate < 4.0));
  }
}

TEST_CASE("in a hard corner the weld is over once 0.9 of the axle weight passes its limit",
          "[verdict]") {
  const double limit = kStrength / bottom_stress() / 2.0 / 0.9;
  check_flips(
      {.case_text = [&](double u) { return case_text(truck(u * limit, "hard corner"), "bottom"); },
       .part = "bracket",
       .check = "weld"});
}

TEST_CASE("against a curb the weld is over once 1.75 axle weights pass its limit", "[verdict]") {
  // Side curb factor by Garrett, in Brown, Robertson, Serpento, Motor Vehicle Structures, p. 24,
  // read. Abuse: 1.5 required.
  const double limit = kStrength / bottom_stress() / 1.5 / 1.75;
  check_flips(
      {.case_text =
           [&](double u) { return case_text(truck(u * limit, "slid into a curb"), "bottom"); },
       .part = "bracket",
       .check = "weld"});
}

}  // namespace weld_verdict_test
