// Tie rod, drag link and pitman arm at 0.98 and 1.02 of their limits. Own check, no source: a
// moment M about a kingpin is M over the steering arm in the tie rod (statics). A steering part is
// asked 3.5 against buckling in routine loads (shop practice for machine links, no source) and 5 on
// a static rating that reverses. The pitman arm, asked 1.5 on yield, bends as a cantilever and is
// twisted by the drop of its ball.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace steering_verdict_test {
using verdict_tests::check_flips;

namespace {

constexpr double kArm = 0.15;

/// All far stronger than needed but for the steering, which a corner does not load either.
std::string parked(double moment, const std::string& tie_rod, const std::string& rating,
                   const std::string& pitman = "",
                   const std::string& drag_link = "70 x 10 mm S355H") {
  return fmt::format(
      "title: steering\n"
      "vehicle: {{axle_weight: 16 kN, tire: 830 mm, hub_height: 400 mm, track: 1.6 m,\n"
      "  kingpin_offset: 60 mm, pitman_arm: 160 mm}}\n"
      "points:\n"
      "  link at frame: [0.1, 0.45, 0.4 m]\n"
      "  link at axle: [0.1, -0.45, 0.4 m]\n"
      "  lower bolt: [0, 0.4, 0.3 m]\n"
      "  upper bolt: [0, 0.4, 0.55 m]\n"
      "  pivot: [-0.9, 0.4, 0.45 m]\n"
      "  pitman ball: [0.15, 0.44, 0.4 m]\n"
      "  knuckle ball: [0.15, -0.74, 0.4 m]\n"
      "  tie rod ball: [-0.15, 0.74, 0.4 m]\n"
      "lateral_link: {{frame_bolt: link at frame, axle_bolt: link at axle,\n"
      "  tube: 100 x 12 mm S355H, ends: tapped rod end, static_rating: 5000 kN}}\n"
      "arm: {{axle_lower: lower bolt, axle_upper: upper bolt, frame: pivot, joins_at: 0.4 m,\n"
      "  lower: 100 x 12 mm S355H, upper: 100 x 12 mm S355H, axle_joint: ball joint,\n"
      "  frame_joint: ball joint, static_rating: 5000 kN}}\n"
      "axle: {{coil_spacing: 0.9 m, coil_rate: 100 N/mm, bump_travel: 20 mm,\n"
      "  stop_rate: 1500 N/mm}}\n"
      "steering:\n"
      "  pitman_ball: pitman ball\n"
      "  knuckle_ball: knuckle ball\n"
      "  tie_rod_ball: tie rod ball\n"
      "  drag_link: {}\n"
      "  tie_rod: {}\n"
      "  static_rating: {}\n"
      "{}"
      "load_cases: [hard_corner, {{name: parked, at: left kingpin, moment: [0, 0, {} N m]}}]\n",
      drag_link, tie_rod, rating, pitman, moment);
}

}  // namespace

TEST_CASE("a tie rod is over once its push passes 1 / 3.5 of its column load", "[verdict]") {
  const hand::Section s = hand::tube(0.032, 0.004);
  const double slenderness = 1.48 / std::sqrt(s.inertia / s.area);
  const double column = hand::column_stress(hand::kYoungEn, hand::kS355H, slenderness) * s.area;
  check_flips(
      {.case_text =
           [&](double u) { return parked(u * column / 3.5 * kArm, "32 x 4 mm S355H", "5000 kN"); },
       .part = "tie_rod",
       .check = "column"});
}

// Its ball stands 0.15 m ahead of the kingpin, the other one 1.18 m away across the truck.
TEST_CASE("a drag link is over once its push passes 1 / 3.5 of its column load", "[verdict]") {
  const hand::Section s = hand::tube(0.032, 0.004);
  const double slenderness = 1.18 / std::sqrt(s.inertia / s.area);
  const double column = hand::column_stress(hand::kYoungEn, hand::kS355H, slenderness) * s.area;
  check_flips({.case_text =
                   [&](double u) {
                     return parked(u * column / 3.5 * 0.15, "70 x 10 mm S355H", "5000 kN", "",
                                   "32 x 4 mm S355H");
                   },
               .part = "drag_link",
               .check = "column"});
}

TEST_CASE("a steering ball joint is over past a fifth of its static rating", "[verdict]") {
  const double limit = 50.0e3 / 5.0 * kArm;
  for (const char* part : {"tie_rod", "drag_link"}) {
    const auto text = [&](double u) { return parked(u * limit, "70 x 10 mm S355H", "50 kN"); };
    for (const double u : {0.98, 1.02}) {
      const studies::Answer answer = verdict_tests::judged(text(u));
      CHECK(verdict_tests::finding(answer, part, "joint rating").state ==
            (u < 1.0 ? checks::State::within : checks::State::over));
    }
  }
}

// Push times length over b h^2 / 6: Shigley, Mechanical Engineering Design, 9th ed., eq. 3-24, from
// memory.
TEST_CASE("a flat pitman arm is over once its root passes two thirds of yield", "[verdict]") {
  const double modulus = 0.020 * 0.045 * 0.045 / 6.0;
  const double limit = hand::kS355 / 1.5 * modulus / 0.160 * kArm;
  check_flips(
      {.case_text =
           [&](double u) {
             return parked(u * limit, "70 x 10 mm S355H", "5000 kN",
                           "  pitman_arm: 20 x 45 mm flat bar shop\n") +
                    "materials:\n  shop: {description: plate, young: 210 GPa, density: 7850 "
                    "kg/m^3,\n    yield: 355 MPa, tensile: 470 MPa, weld_zone_yield: 100 "
                    "MPa, weld_zone_tensile: 200 MPa}\n";
           },
       .part = "pitman_arm",
       .check = "yield"});
}

// 32 M / (pi d^3) and 16 T / (pi d^3), von Mises: Shigley, 9th ed., eqs. 3-24, 3-37 and 5-15, from
// memory.
TEST_CASE("a dropped pitman arm is over earlier: its ball's drop twists it", "[verdict]") {
  const double modulus = hand::bar(0.045).modulus;
  const double bending = 0.160 / modulus;  // stress of a push of one
  const double torsion = 0.060 / (2.0 * modulus);
  const double von_mises = std::sqrt(bending * bending + 3.0 * torsion * torsion);
  const double limit = 310.2641e6 / 1.5 / von_mises * kArm;
  check_flips({.case_text =
                   [&](double u) {
                     return parked(u * limit, "70 x 10 mm S355H", "5000 kN",
                                   "  pitman_arm: 45 mm round bar 1045_HR\n  pitman_drop: 60 mm\n");
                   },
               .part = "pitman_arm",
               .check = "yield"});
}

// Four bolts 0.1 m apart, their middle 0.15 m over the drag link's push F: F / 4 + 0.15 F / (4 x
// 0.05) = F pulls each lower one (bolt group, Shigley, 9th ed., sec. 8-12, from memory). 0.75 Fu A
// of a shank (AISC 360-22 J3.7, from memory), SAE J429 grade 8: 150 ksi (read); 2.0 is asked.
TEST_CASE("the bolts of a steering gear are over once its push pulls them off the rail",
          "[verdict]") {
  const auto shares_shown = [](const std::string& text) {
    const checks::Finding found =
        verdict_tests::finding(verdict_tests::judged(text), "steering_gear", "bolt");
    return std::count_if(found.lines.begin(), found.lines.end(),
                         [](const auto& line) { return line.symbols.rfind("of bolt ", 0) == 0; });
  };
  const double shank = hand::kPi / 4.0 * 0.375 * 0.375 * 0.0254 * 0.0254;
  const double limit = 0.75 * 150.0 * hand::kKsi * shank / 2.0 * kArm;
  check_flips({.case_text =
                   [&](double u) {
                     std::string text =
                         parked(u * limit, "70 x 10 mm S355H", "5000 kN",
                                "  gear_bolts: 3/8-24 grade 8\n"
                                "  gear_bolts_at: [bolt 1, bolt 2, bolt 3, bolt 4]\n");
                     const std::string points =
                         "  bolt 1: [0.1, 0.4, 0.5 m]\n  bolt 2: [0.2, 0.4, 0.5 m]\n"
                         "  bolt 3: [0.1, 0.4, 0.6 m]\n  bolt 4: [0.2, 0.4, 0.6 m]\n";
                     text.insert(text.find("lateral_link:"), points);
                     CHECK(shares_shown(text) == 4);
                     return text;
                   },
               .part = "steering_gear",
               .check = "bolt"});
}

}  // namespace steering_verdict_test
