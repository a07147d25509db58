// The rail's wall under a bracket at 0.98 and 1.02 of its limit. Required: 1.5 routine, 1.25 abuse.
// Formulas from memory (AISC 360-22 J10.2, EN 1993-1-8 table 7.14); open rails: yield line, our own
// derivation, no source.
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace rail_wall_verdict_test {
using Catch::Matchers::Contains;
using verdict_tests::check_flips;
using verdict_tests::finding;
using verdict_tests::judged;

namespace {

constexpr double kDrop = 0.250;
constexpr double kA36 = 36.0 * hand::kKsi;  // ASTM A36, from memory

/// A level link under a bracket of two plates of 12 mm, 50 mm apart.
std::string case_text(const std::string& rail, const std::string& faces, double depth,
                      const std::string& loads) {
  return fmt::format(
      "title: rail wall\n"
      "lateral_link: {{bolt_to_bolt: 900 mm, rise: 0 mm, tube: 50 x 10 mm S355H,\n"
      "  ends: weld-on pin}}\n"
      "bracket:\n"
      "  drop: 250 mm\n"
      "  plates: 2 of 12 mm S355\n"
      "  depth_at_rail: {} mm\n"
      "  depth_at_bolt: 100 mm\n"
      "  side_force: 0 %\n"
      "  weld: 20 mm fillet, both sides of each plate\n"
      "  filler: 400 ksi\n"
      "  rail: {}\n"
      "  welded_to: {}\n"
      "  rail_stiffness: 20000 kN m/rad\n{}",
      1000.0 * depth, rail, faces, loads);
}

std::string push(double force) {
  return fmt::format("forces:\n  push:\n    at: axle bolt\n    force_y: {} N\n", force);
}

/// What a side force of one at the bolt shears out of the wall, of its strength: a block of both
/// plates, 0.6 Fy on the lines outside (after AISC 360-22 J4.3, from memory).
/// @param ends  of half of the block; none at a corner
double shear_share(double wall, double line, double ends = 0.0) {
  return 0.5 / (0.6 * kA36 * wall * (line + ends));
}

}  // namespace

TEST_CASE("a rail's walls are over once the corners under a bracket yield", "[verdict]") {
  // 2 (5 t + 12 mm) of each wall for the two plates; walls 95 mm apart.
  const double wall = 0.005;
  const double corner = kA36 * wall * 2.0 * (5.0 * wall + 0.012);
  const double distorts =
      2.0 * kA36 * wall * (0.074 * wall + std::sqrt(0.100 * 0.150 * wall * 0.250));
  const double of_one = std::max(kDrop / (0.100 - wall) / corner, kDrop / distorts);
  const double limit = 1.0 / std::hypot(of_one, shear_share(wall, 0.100)) / 1.5;
  check_flips({.case_text =
                   [&](double u) {
                     return case_text("boxed, 100 x 150 x 5 mm", "bottom", 0.100, push(u * limit));
                   },
               .part = "bracket",
               .check = "rail wall"});
  // Stronger rail steel and a frame plate help, a softer rule does not.
  const std::string text =
      case_text("boxed, 100 x 150 x 5 mm", "bottom", 0.100, push(1.02 * limit));
  CHECK(
      finding(judged(text + "factors: {rail_wall_routine: 1.4}\n"), "bracket", "rail wall").state ==
      checks::State::within);
}

TEST_CASE("holes left in a rail's walls bring it over sooner", "[verdict]") {
  // As above, 20 mm of holes off the 74 mm of each wall that carry.
  const double wall = 0.005;
  const double corner = kA36 * wall * (2.0 * (5.0 * wall + 0.012) - 0.020);
  const double limit =
      1.0 / std::hypot(kDrop / (0.100 - wall) / corner, shear_share(wall, 0.100)) / 1.5;
  check_flips({.case_text =
                   [&](double u) {
                     return case_text("boxed, 100 x 150 x 5 mm\n  holes_in_side: 20 mm", "bottom",
                                      0.100, push(u * limit));
                   },
               .part = "bracket",
               .check = "rail wall"});
}

TEST_CASE("plates within one face of a box are over once the face yields", "[verdict]") {
  // EN 1993-1-8 table 7.14 for the two plates as a block, 74 mm along, 80 of 160 mm across.
  const double t = 0.008;
  const double roll = kA36 * t * t * (0.074 * 1.5 + std::sqrt(2.0 * 0.160 * 0.080 * 3.0));
  const double alone = 2.0 * kA36 * t * t * (0.012 * 1.5 + std::sqrt(2.0 * 0.160 * 0.080 * 3.0));
  REQUIRE(roll < alone);
  const double kn = 1.3 - 0.4 * 0.4 / 0.5;
  const double limit = 1.0 / std::hypot(kDrop / (kn * roll), shear_share(t, 0.080, 0.074)) / 1.5;
  check_flips({.case_text =
                   [&](double u) {
                     return case_text("boxed, 160 x 150 x 8 mm", "bottom", 0.080, push(u * limit));
                   },
               .part = "bracket",
               .check = "rail wall",
               .tolerance = 2e-3});
}

TEST_CASE("an open rail is over once its web yields along a line", "[verdict]") {
  const double t = 0.008;
  const double holds = kA36 * t * t / 4.0 * (0.074 + 2.0 * 0.075) / 0.5;
  const double limit = 1.0 / std::hypot(kDrop / holds, shear_share(t, 0.100)) / 1.5;
  check_flips({.case_text =
                   [&](double u) {
                     return case_text("open, 100 x 150 x 8 mm", "bottom and inner side", 0.100,
                                      push(u * limit));
                   },
               .part = "bracket",
               .check = "rail wall",
               .tolerance = 2e-3});
}

TEST_CASE("a root weld whose wall no method covers is not decided either", "[verdict]") {
  const studies::Answer answer =
      judged(case_text("open, 100 x 150 x 8 mm", "bottom", 0.060, push(100.0)));
  CHECK(answer.verdict == studies::Verdict::not_decided);
  for (const char* check : {"weld", "rail wall"}) {
    const checks::Finding found = finding(answer, "bracket", check);
    CHECK(found.state == checks::State::undecided);
    CHECK_THAT(found.reason, Contains("outside the method"));
  }
}

// Half of 10 / (B / t) Fy t / (Fyp tp) Bp from each end: AISC 360-16 K5, from memory.
TEST_CASE("of a weld across a thin face only the ends at the corners count", "[verdict]") {
  const double t = 0.006;
  const double backed = 0.5 * 10.0 * t / 0.100 * (kA36 * t) / (hand::kS355 * 0.012) * 0.100;
  const double throat = 0.006 / std::sqrt(2.0);
  const double inertia =
      4.0 * throat * (std::pow(0.100, 3) - std::pow(0.100 - 2.0 * backed, 3)) / 12.0;
  const double stress =
      std::hypot(1.0 / (8.0 * throat * backed), kDrop * 0.050 / inertia);  // of a push of one
  const double limit = 0.60 * hand::kE70 / stress / 2.0;
  check_flips({.case_text =
                   [&](double u) {
                     std::string text =
                         case_text("boxed, 100 x 150 x 6 mm", "bottom", 0.100, push(u * limit));
                     text.replace(text.find("20 mm fillet"), 12, "6 mm fillet");
                     return text.replace(text.find("  filler: 400 ksi\n"), 18, "");
                   },
               .part = "bracket",
               .check = "weld"});
}

}  // namespace rail_wall_verdict_test
