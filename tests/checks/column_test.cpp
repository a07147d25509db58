#include "checks/column.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/column_strength.hpp"
#include "tests/checks/worked_arithmetic.hpp"

using Catch::Matchers::WithinRel;
using checks::State;

namespace {

constexpr double kPi = base::kPi;

/// A tube of 50 x 5 mm, E 200 GPa, Fy 350 MPa.
checks::ColumnInput tube(double length) {
  return {.shape = sections::RoundTube{.outside = 0.050, .wall = 0.005},
          .elastic = 200e9,
          .yield = 350e6,
          .strength_basis = "specified minimum",
          .length = length,
          .compression = 50e3,
          .required = 3.0};
}

}  // namespace

// AISC Design Examples v14.0, Example E.11, Pipe 10 Std (from memory; inputs and Lc/r read in two
// reproductions): 3 significant figures, and the example rounds step by step.
TEST_CASE("a pipe column of 30 ft carries what AISC Design Example E.11 prints",
          "[checks][column]") {
  const double slenderness = 30.0 * 12.0 / 3.68;
  CHECK_THAT(slenderness, WithinRel(97.8, 5e-4));
  const double fn = checks::column_e3(29000.0, 35.0, slenderness);
  CHECK_THAT(fn, WithinRel(21.4, 3e-3));
  CHECK_THAT(fn * 11.5, WithinRel(247.0, 3e-3));
  CHECK_THAT(0.90 * fn * 11.5, WithinRel(222.0, 3e-3));
}

// AISC 360-10/-16 E3, equations E3-2 to E3-4 as in Manual Table 4-22 (from memory), phi = 0.90.
TEST_CASE("the E3 curve for 50 ksi steel passes the points of Table 4-22", "[checks][column]") {
  struct Row {
    double slenderness, phi_fn;
  };
  for (const Row& row : {Row{40, 40.0}, Row{80, 28.2}, Row{120, 15.7}, Row{150, 10.0}}) {
    CHECK_THAT(0.90 * checks::column_e3(29000.0, 50.0, row.slenderness),
               WithinRel(row.phi_fn, 5e-3));
  }
}

TEST_CASE("the two branches of E3 meet, and a stocky column yields", "[checks][column]") {
  const double limit = checks::column_e3_limit(200e9, 350e6);
  // The constants 0.658, 4.71 and 0.877 are rounded in the standard: the branches meet to 0.1 %.
  CHECK_THAT(checks::column_e3(200e9, 350e6, limit),
             WithinRel(checks::column_e3(200e9, 350e6, limit * 1.0000001), 1e-3));
  CHECK_THAT(checks::column_e3(200e9, 350e6, 1e-6), WithinRel(350e6, 1e-9));
}

// Computed by hand from the published formula (AISC 360-22 E3, from memory), 4 figures.
TEST_CASE("a tube of 50 x 5 mm follows E3 on both branches", "[checks][column]") {
  const auto shorter = checks::column(tube(0.9));
  REQUIRE(shorter);
  CHECK_THAT(shorter->capacity, WithinRel(195.7e3, 5e-4));
  CHECK_THAT(shorter->lines.at(0).values.back().si, WithinRel(56.22, 5e-4));
  CHECK_THAT(shorter->lines.at(1).values.back().si, WithinRel(624.5e6, 5e-4));
  CHECK_THAT(shorter->lines.at(2).values.back().si, WithinRel(276.8e6, 5e-4));
  const auto longer = checks::column(tube(2.0));
  REQUIRE(longer);
  CHECK_THAT(longer->capacity / 1.67, WithinRel(46.94e3, 5e-4));
  CHECK_THAT(longer->source, Catch::Contains("from memory"));
}

// AISC 360-22 E7 (from memory), computed by hand: a 200 x 2 mm tube of 350 MPa keeps 0.8838.
TEST_CASE("a thin round tube counts with part of its area", "[checks][column]") {
  CHECK_THAT(checks::round_tube_e7(200e9, 350e6, 100.0), WithinRel(0.8838, 1e-4));
  CHECK(checks::round_tube_e7(200e9, 350e6, 62.8) == 1.0);
  CHECK(checks::round_tube_e7(200e9, 350e6, 62.9) == 1.0);  // the formula gives 1.012: capped
  checks::ColumnInput in = tube(1.0);
  in.shape = sections::RoundTube{.outside = 0.200, .wall = 0.002};
  const auto f = checks::column(in);
  REQUIRE(f);
  const double area = kPi * 0.198 * 0.002;
  const double radius = std::sqrt(0.200 * 0.200 + 0.196 * 0.196) / 4.0;
  CHECK_THAT(f->capacity, WithinRel(checks::column_e3(200e9, 350e6, 1.0 / radius) * area *
                                        checks::round_tube_e7(200e9, 350e6, 100.0),
                                    1e-9));
  CHECK(worked::equations_that_hold(*f) >= 8);
}

TEST_CASE("a wall too thin for the method leaves the column undecided", "[checks][column]") {
  checks::ColumnInput in = tube(1.0);
  in.shape = sections::RoundTube{.outside = 0.520, .wall = 0.002};  // 260 over 0.45 E/Fy = 257
  CHECK(checks::column(in)->state == State::undecided);
  CHECK_THAT(checks::column(in)->reason, Catch::Contains("outside the method"));
  CHECK(std::isnan(checks::column(in)->utilization()));
  in.shape = sections::RectangularTube{
      .depth = 0.100, .width = 0.040, .wall = 0.0025, .corner = 0.005};  // b/t 37 over 33.5
  CHECK(checks::column(in)->state == State::undecided);
  in.shape =
      sections::RectangularTube{.depth = 0.060, .width = 0.040, .wall = 0.0025, .corner = 0.005};
  CHECK(checks::column(in)->state != State::undecided);
}

// Mott, Machine Elements in Mechanical Design, 4th ed., Example Problem 6-2 (from memory, medium):
// 12 x 18 mm bar of 290 MPa, 280 mm long, K = 0.8.
TEST_CASE("Mott's short rectangular column follows Johnson", "[checks][column]") {
  const double radius = 0.012 / std::sqrt(12.0);
  const double slenderness = 0.8 * 0.280 / radius;
  CHECK_THAT(slenderness, WithinRel(64.7, 1e-3));
  CHECK_THAT(checks::johnson_limit(207e9, 290e6), WithinRel(119.0, 5e-3));
  CHECK_THAT(checks::johnson_load(207e9, 290e6, 0.012 * 0.018, slenderness),
             WithinRel(53.3e3, 2e-3));
}

// Shigley, Mechanical Engineering Design, 9th ed., Example 4-19 (inputs read, answers from memory):
// a link that must not buckle under 4 x 5000 lbf; each size printed carries 20 kip.
TEST_CASE("Shigley's rectangular link needs the sizes of Example 4-19", "[checks][column]") {
  CHECK_THAT(checks::johnson_limit(30e6, 75e3), WithinRel(88.9, 1e-3));
  const double long_link = checks::euler_load(30e6, 0.747 * std::pow(0.625, 3) / 12.0, 15.0);
  CHECK_THAT(long_link, WithinRel(20000.0, 3e-3));
  const double slenderness = 8.0 / (0.5 / std::sqrt(12.0));
  const double short_link = checks::johnson_load(30e6, 75e3, 0.66 * 0.5, slenderness);
  CHECK_THAT(short_link, WithinRel(20000.0, 5e-3));
}

TEST_CASE("Johnson and Euler meet at half the yield strength", "[checks][column]") {
  const double limit = checks::johnson_limit(200e9, 350e6);
  CHECK_THAT(checks::johnson_load(200e9, 350e6, 1.0, limit), WithinRel(175e6, 1e-12));
  CHECK_THAT(checks::euler_load(200e9, 1.0, limit), WithinRel(175e6, 1e-12));
}

// Hibbeler, Mechanics of Materials, Example 13.1, SI ed. (read): 7.2 m pinned tube, radii 75 / 70
// mm.
TEST_CASE("Hibbeler's tube of 7.2 m buckles at 228.2 kN", "[checks][column]") {
  const double inertia = kPi / 4.0 * (std::pow(0.075, 4) - std::pow(0.070, 4));
  CHECK_THAT(checks::euler_load(200e9, inertia, 7.2), WithinRel(228.2e3, 2.5e-4));
}

// Mott, 4th ed., section 6-11 (read): 0.75 in round, 32 in long, 1/8 in crooked, factor 3 on the
// load. The page rounds A to 0.442 and r to 0.188, which moves the answer by 0.15 %.
TEST_CASE("Mott's crooked column may carry 1077 lb", "[checks][column]") {
  const double area = kPi / 4.0 * 0.75 * 0.75;
  const double inertia = kPi / 64.0 * std::pow(0.75, 4);
  const double first_yield =
      checks::crooked_column({.area = area,
                              .modulus = inertia / 0.375,
                              .yield = 42e3,
                              .euler = checks::euler_load(30e6, inertia, 32.0),
                              .bow = 0.125});
  CHECK_THAT(first_yield / 3.0, WithinRel(1077.0, 2e-3));
}

// Computed by hand from Perry's formula: tube 38 x 5, 900 mm, Sy 350 MPa, E 200 GPa.
TEST_CASE("a bow of 3 mm takes a quarter off a 38 x 5 tube", "[checks][column]") {
  const double area = kPi * 0.033 * 0.005;
  const double inertia = kPi / 64.0 * (std::pow(0.038, 4) - std::pow(0.028, 4));
  checks::CrookedColumn c = {.area = area,
                             .modulus = inertia / 0.019,
                             .yield = 350e6,
                             .euler = checks::euler_load(200e9, inertia, 0.9),
                             .bow = 0.003};
  CHECK_THAT(checks::crooked_column(c), WithinRel(95.64e3, 1e-3));
  c.bow = 0.0009;
  CHECK_THAT(checks::crooked_column(c), WithinRel(126.3e3, 1e-3));
  c.bow = 0.0;  // straight: Euler or squash, whichever is less
  CHECK_THAT(checks::crooked_column(c), WithinRel(std::min(c.euler, area * 350e6), 1e-9));
}

TEST_CASE("the column verdict turns at the required factor", "[checks][column]") {
  checks::ColumnInput in = tube(0.9);
  const double capacity = checks::column(in)->capacity;
  in.compression = 0.98 * capacity / in.required;
  CHECK(checks::column(in)->state == State::within);
  in.compression = 1.02 * capacity / in.required;
  CHECK(checks::column(in)->state == State::over);
  CHECK_THAT(checks::column(in)->utilization(), WithinRel(1.02, 1e-9));
}

TEST_CASE("a multiple found by solving again decides in place of the quotient",
          "[checks][column]") {
  checks::ColumnInput in = tube(0.9);
  CHECK(checks::column(in)->safety_factor > 3.0);
  in.safety_factor = 2.5;
  CHECK(checks::column(in)->state == State::over);
  CHECK(checks::column(in)->safety_factor == 2.5);
}

TEST_CASE("a member that is not compressed has no column finding", "[checks][column]") {
  checks::ColumnInput in = tube(0.9);
  in.compression = 0.0;
  CHECK_FALSE(checks::column(in));
  in.compression = -10e3;
  CHECK_FALSE(checks::column(in));
}

TEST_CASE("a flat bar buckles about its weaker axis", "[checks][column]") {
  checks::ColumnInput in = tube(0.5);
  in.shape = sections::FlatBar{.depth = 0.050, .width = 0.010};
  const double upright = checks::column(in)->capacity;
  in.shape = sections::FlatBar{.depth = 0.010, .width = 0.050};
  CHECK_THAT(checks::column(in)->capacity, WithinRel(upright, 1e-12));
  CHECK_THAT(checks::column(in)->lines.at(0).values.back().si,
             WithinRel(0.5 / (0.010 / std::sqrt(12.0)), 1e-12));
}

TEST_CASE("a very slender column is noted, and every worked line can be redone",
          "[checks][column]") {
  const auto slender = checks::column(tube(3.5));  // Lc/r 219
  CHECK_THAT(slender->notes.at(1), Catch::Contains("over the 200"));
  CHECK(worked::equations_that_hold(*slender) == 7);
  const auto stocky = checks::column(tube(0.9));
  CHECK(stocky->notes.size() == 1);
  CHECK(worked::equations_that_hold(*stocky) == 8);  // with Johnson's
}
