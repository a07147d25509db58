#include "checks/tube_torsion.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace tube_torsion_test {
using Catch::Matchers::WithinRel;

namespace {

constexpr double kElastic = 200e9;
constexpr double kYield = 350e6;

checks::TubeTorsion torsion(const sections::Shape& shape, double length = 0.9) {
  const auto found = checks::tube_torsion(shape, kElastic, kYield, length);
  REQUIRE(found);
  return *found;
}

double critical(const checks::TubeTorsion& t) {
  return t.lines.at(0).values.at(0).si;
}

}  // namespace

// AISC 360-22 H3.1, from memory; worked by hand, 4 figures.
TEST_CASE("a thin long tube buckles in torsion before it yields", "[checks][torsion]") {
  CHECK_THAT(critical(torsion(sections::RoundTube{.outside = 0.050, .wall = 0.005})),
             WithinRel(210e6, 1e-9));
  CHECK_THAT(critical(torsion(sections::RoundTube{.outside = 0.100, .wall = 0.001}, 1.5)),
             WithinRel(200.9e6, 3e-4));
  const sections::RectangularTube box = {
      .depth = 0.070, .width = 0.150, .wall = 0.004, .corner = 0.008};
  CHECK_THAT(critical(torsion(box)), WithinRel(210e6, 1e-9));
}

// AISC 360-22 H3.1 and G5, from memory; by hand for D/t = 100: 0.60 E / (D/t)^1.5 = 120 MPa however
// long, in shear 1.60 E / (sqrt(L/D) (D/t)^1.25) = 160 MPa at L/D = 40 and 0.78 E / (D/t)^1.5
// = 156 MPa however long.
TEST_CASE("a very long thin tube keeps a least strength in torsion and shear",
          "[checks][torsion]") {
  const sections::RoundTube thin = {.outside = 0.100, .wall = 0.001};
  const double area = base::kPi * 0.099 * 0.001;
  CHECK_THAT(critical(torsion(thin, 50.0)), WithinRel(120e6, 1e-6));
  CHECK_THAT(torsion(thin, 4.0).shear_y, WithinRel(0.5 * area * 160e6, 1e-6));
  CHECK_THAT(torsion(thin, 50.0).shear_z, WithinRel(0.5 * area * 156e6, 1e-6));
}

// C = 2 (B - t) (H - t) t - 4.5 (4 - pi) t^3: AISC 360-22 H3.1 user note, from memory; by hand for
// 60 x 40 x 3 mm, 4 figures.
TEST_CASE("the torsion constant of a box is that of the user note", "[checks][torsion]") {
  const checks::TubeTorsion box = torsion(
      sections::RectangularTube{.depth = 0.060, .width = 0.040, .wall = 0.003, .corner = 0.006});
  CHECK_THAT(box.torsion, WithinRel(0.6 * kYield * 1.255e-5, 3e-4));
  checks::Finding f;
  f.lines = box.lines;
  CHECK(worked::equations_that_hold(f) == 1);
}

TEST_CASE("the branches of a box in torsion and shear meet, and end at 260", "[checks][torsion]") {
  const double root = std::sqrt(kElastic / kYield);
  const auto box = [](double slenderness) {
    return torsion(sections::RectangularTube{
        .depth = 0.001 * (slenderness + 3.0), .width = 0.030, .wall = 0.001, .corner = 0.002});
  };
  for (const double limit :
       {2.45 * root, 3.07 * root, 1.10 * std::sqrt(5.0) * root, 1.37 * std::sqrt(5.0) * root}) {
    // The constants of the standard are rounded: the branches meet to half a percent.
    CHECK_THAT(box(limit * 0.9999).torsion, WithinRel(box(limit * 1.0001).torsion, 6e-3));
    CHECK_THAT(box(limit * 0.9999).shear_z, WithinRel(box(limit * 1.0001).shear_z, 6e-3));
  }
  CHECK(box(0.98 * 260.0).torsion > 0.0);
  CHECK(std::isnan(box(1.02 * 260.0).torsion));
  CHECK_THAT(box(1.02 * 260.0).reason, Catch::Contains("outside the method"));
}

TEST_CASE("what is no tube has no nominal torque", "[checks][torsion]") {
  CHECK_FALSE(checks::tube_torsion(sections::RoundBar{.diameter = 0.040}, kElastic, kYield, 1.0));
  CHECK_FALSE(checks::tube_torsion(sections::FlatBar{.depth = 0.040, .width = 0.010}, kElastic,
                                   kYield, 1.0));
}

}  // namespace tube_torsion_test
