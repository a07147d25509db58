#include "checks/column.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "checks/column_strength.hpp"
#include "sections/area_props.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace column_test {
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
}

// AISC 360-22 E7, from memory; by hand: Fn of 0.3 m and of the gross section, then
// Fel = (1.38 * 1.40 sqrt(E/Fy) / 37)^2 Fy and be / b = (1 - 0.20 sqrt(Fel/Fn)) sqrt(Fel/Fn).
TEST_CASE("a rectangular tube of thin walls counts with part of its area", "[checks][column]") {
  checks::ColumnInput in = tube(0.3);
  const sections::RectangularTube thin = {
      .depth = 0.100, .width = 0.040, .wall = 0.0025, .corner = 0.005};
  in.shape = thin;
  const sections::AreaProps props = sections::area_props(thin);
  const double fn = checks::column_e3(200e9, 350e6, 0.3 / props.radius_z);
  const double limit = 1.40 * std::sqrt(200e9 / 350e6);
  REQUIRE(37.0 > limit * std::sqrt(350e6 / fn));
  const double root = 1.38 * limit / 37.0 * std::sqrt(350e6 / fn);
  const double lost = 0.0925 * (1.0 - (1.0 - 0.20 * root) * root);
  const auto f = checks::column(in);
  CHECK_THAT(f->capacity, WithinRel(fn * (props.area - 2.0 * lost * 0.0025), 1e-9));
  CHECK(worked::equations_that_hold(*f) >= 8);
  CHECK_THAT(f->source, Catch::Contains("E7"));
  in.shape =
      sections::RectangularTube{.depth = 0.060, .width = 0.040, .wall = 0.0025, .corner = 0.005};
  CHECK_THAT(checks::column(in)->source, !Catch::Contains("E7"));
}

TEST_CASE("Johnson and Euler meet at half the yield strength", "[checks][column]") {
  const double limit = checks::johnson_limit(200e9, 350e6);
  CHECK_THAT(checks::johnson_load(200e9, 350e6, 1.0, limit), WithinRel(175e6, 1e-12));
  CHECK_THAT(checks::euler_load(200e9, 1.0, limit), WithinRel(175e6, 1e-12));
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
  // Shigley, eq. 4-50, from memory, worked by hand: 3 mm off at both ends.
  CHECK_THAT(checks::secant_column(c), WithinRel(92.01e3, 1e-3));
  c.bow = 0.0009;
  CHECK_THAT(checks::crooked_column(c), WithinRel(126.3e3, 1e-3));
  c.bow = 0.0;  // straight: Euler or squash, whichever is less
  CHECK_THAT(checks::crooked_column(c), WithinRel(std::min(c.euler, area * 350e6), 1e-9));
  CHECK_THAT(checks::secant_column(c), WithinRel(std::min(c.euler, area * 350e6), 1e-9));
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

// AISC 360-22 E4-3, the closed form for one axis of symmetry (from memory): (Fes + Fez) / (2 H)
// (1 - sqrt(1 - 4 Fes Fez H / (Fes + Fez)^2)) with 6453 and 532.9 MPa and H = 0.8105.
TEST_CASE("bending and twisting together follow E4 for one axis of symmetry", "[checks][column]") {
  const double offset = std::sqrt(1.0 - 0.8105);
  CHECK_THAT(checks::flexural_torsional_e4({.about_y = 6453e6,
                                            .about_z = 1e12,
                                            .torsional = 532.9e6,
                                            .offset_y = offset,
                                            .offset_z = 0.0}),
             WithinRel(524.1e6, 2e-4));
  // With both centers at one point nothing is coupled: the least of the three.
  CHECK_THAT(checks::flexural_torsional_e4({300e6, 200e6, 250e6, 0.0, 0.0}),
             WithinRel(200e6, 1e-9));
}

TEST_CASE("a pressed channel is judged by E4 when it twists first", "[checks][column]") {
  checks::ColumnInput channel = tube(1.0);
  channel.shape = sections::Channel{.depth = 0.1, .width = 0.05, .web = 0.006, .flange = 0.006};
  const auto twisting = checks::column(channel);
  REQUIRE(twisting);
  CHECK_THAT(twisting->source, Catch::Contains("E4"));
  CHECK_THAT(twisting->lines.at(2).symbols, Catch::Contains("E4-4"));
  channel.length = 6.0;
  const auto bending = checks::column(channel);
  REQUIRE(bending);
  CHECK(bending->capacity < twisting->capacity);
  channel.shape = sections::BoxedChannel{0.1, 0.05, 0.006, 0.006, 0.006};
  CHECK_THAT(checks::column(channel)->source, !Catch::Contains("E4"));
}

namespace {

/// The tube of 0.9 m with 240 MPa beside its welds, which reach that far in.
checks::ColumnInput welded_tube(double farthest) {
  checks::ColumnInput in = tube(0.9);
  in.welds = checks::ColumnWelds{.yield = 240e6, .farthest = farthest, .basis = "invented"};
  return in;
}

bool says(const checks::Finding& f, const std::string& words) {
  return std::any_of(f.lines.begin(), f.lines.end(), [&](const checks::WorkedLine& line) {
    return line.symbols.find(words) != std::string::npos;
  });
}

}  // namespace

// Practice of the Aluminum Design Manual for welds at the ends of columns, from memory.
TEST_CASE("welds within a twentieth of a column's length leave its buckling alone",
          "[checks][column]") {
  const double parent = checks::column(tube(0.9))->capacity;
  checks::ColumnInput weak = tube(0.9);
  weak.yield = 240e6;
  const double beside = checks::column(weak)->capacity;
  const double area = kPi * 0.045 * 0.005;
  const auto at_ends = checks::column(welded_tube(0.0449));
  REQUIRE(at_ends);
  CHECK_THAT(at_ends->capacity, WithinRel(240e6 * area, 1e-9));  // under the parent's 195.7 kN
  CHECK(at_ends->capacity < parent);
  CHECK(says(*at_ends, "at its welded ends"));
  CHECK(worked::equations_that_hold(*at_ends) == 9);
  checks::ColumnInput strong_ends = welded_tube(0.01);
  strong_ends.welds->yield = 340e6;
  CHECK_THAT(checks::column(strong_ends)->capacity, WithinRel(parent, 1e-9));
  const auto part_way = checks::column(welded_tube(0.0451));
  REQUIRE(part_way);
  CHECK_THAT(part_way->capacity, WithinRel(beside, 1e-9));
  CHECK(says(*part_way, "over 0.05 L"));
  CHECK(says(*part_way, "with the parent's Fy, not used"));
  CHECK(worked::equations_that_hold(*part_way) == 8);
}

TEST_CASE("a reach that is assumed near the step is warned of", "[checks][column]") {
  const auto warned = [](double farthest, bool assumed) {
    checks::ColumnInput in = welded_tube(farthest);  // 0.05 L = 45 mm
    in.welds->assumed = assumed;
    const std::vector<std::string> notes = checks::column(in)->notes;
    return std::any_of(notes.begin(), notes.end(), [](const std::string& note) {
      return note.rfind("warning: ", 0) == 0 &&
             note.find("how far its welds reach") != std::string::npos;
    });
  };
  for (const double near : {0.0361, 0.0449, 0.0451, 0.0539}) {
    CHECK(warned(near, true));
    CHECK_FALSE(warned(near, false));
  }
  for (const double far : {0.0359, 0.0541, base::kUnset}) CHECK_FALSE(warned(far, true));
}

TEST_CASE("a column whose welds are not known to be at its ends counts as welded throughout",
          "[checks][column]") {
  const auto unknown = checks::column(welded_tube(base::kUnset));
  REQUIRE(unknown);
  CHECK_THAT(unknown->capacity, WithinRel(checks::column(welded_tube(0.45))->capacity, 1e-12));
  CHECK(std::any_of(unknown->notes.begin(), unknown->notes.end(), [](const std::string& note) {
    return note.find("is not known") != std::string::npos;
  }));
}

TEST_CASE("welds farther in never make a column stronger", "[checks][column]") {
  for (const double length : {0.2, 0.9, 2.0, 4.0}) {
    double before = 1e12;
    for (const double share : {0.0, 0.02, 0.05, 0.06, 0.3, 0.5}) {
      checks::ColumnInput in = welded_tube(share * length);
      in.length = length;
      const double now = checks::column(in)->capacity;
      CHECK(now <= before);
      before = now;
    }
  }
}

TEST_CASE("the bow beside a column is what its standard allows as delivered", "[checks][column]") {
  checks::ColumnInput in = tube(0.9);
  in.bow = 0.0015;
  in.bow_basis = "EN 10305-1: 1.5 mm in 1 m";
  const checks::Finding f = *checks::column(in);
  const auto line = std::find_if(f.lines.begin(), f.lines.end(), [](const auto& l) {
    return l.symbols.find("bow a of L/666.7") != std::string::npos;
  });
  REQUIRE(line != f.lines.end());
  CHECK_THAT(line->values[2].si, WithinRel(0.00135, 1e-9));
  REQUIRE(std::next(line) != f.lines.end());
  CHECK_THAT(std::next(line)->symbols, Catch::Contains("secant"));
  CHECK(std::next(line)->values[0].si < line->values[0].si);
  CHECK(worked::equations_that_hold(f) >= 7);
}

}  // namespace column_test
