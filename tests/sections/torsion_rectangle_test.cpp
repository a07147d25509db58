#include "sections/torsion_rectangle.hpp"

#include <catch2/catch.hpp>

using Catch::WithinAbs;
using Catch::WithinRel;
using sections::rectangle_torsion;
using sections::RectangleTorsion;

// Timoshenko & Goodier, Theory of Elasticity, 3rd ed., table of torsion constants of rectangles
// (read at 1, 1.5, 2, 3 and 4 in a lecture appendix; 10 from memory): tau = T / (alpha a b^2),
// J = beta a b^3, and the short side's stress as a share of the long side's.
TEST_CASE("rectangles twist as in Timoshenko's table", "[sections][torsion]") {
  struct Row {
    double ratio, alpha, beta, share;
  };
  const Row row = GENERATE(Row{1, 0.208, 0.1406, 1.000}, Row{1.5, 0.231, 0.1958, 0.859},
                           Row{2, 0.246, 0.229, 0.795}, Row{3, 0.267, 0.263, 0.753},
                           Row{4, 0.282, 0.281, 0.745}, Row{10, 0.312, 0.312, 0.743});
  INFO(row.ratio);
  const RectangleTorsion r = rectangle_torsion(row.ratio, 1.0);
  CHECK_THAT(1.0 / (r.on_long_side(0.0) * row.ratio), WithinAbs(row.alpha, 0.001));
  CHECK_THAT(r.constant / row.ratio, WithinAbs(row.beta, 0.001));
  CHECK_THAT(r.on_short_side(0.0) / r.on_long_side(0.0), WithinAbs(row.share, 0.001));
}

// Roark's Formulas for Stress and Strain, table 10.7 case 4 (from memory): fits of the series,
// good to 4 %, here far better.
TEST_CASE("a rectangle's torsion agrees with Roark's fits", "[sections][torsion]") {
  const double x = 1.0 / 6.0;
  const double a = 30.0;
  const double b = 5.0;
  const double constant = a * b * b * b * (16.0 / 3.0 - 3.36 * x * (1.0 - x * x * x * x / 12.0));
  const double stress =
      3.0 / (8.0 * a * b * b) *
      (1.0 + 0.6095 * x + 0.8865 * x * x - 1.8023 * x * x * x + 0.9100 * x * x * x * x);
  const RectangleTorsion r = rectangle_torsion(60.0, 10.0);
  CHECK_THAT(r.constant, WithinRel(constant, 0.001));
  CHECK_THAT(r.on_long_side(0.0), WithinRel(stress, 0.002));
}

TEST_CASE("the order of the sides does not matter", "[sections][torsion]") {
  CHECK(rectangle_torsion(0.06, 0.01).constant == rectangle_torsion(0.01, 0.06).constant);
  CHECK(rectangle_torsion(0.01, 0.06).longer == 0.06);
}

TEST_CASE("a thin strip tends to J = a b^3 / 3 and tau = T b / J", "[sections][torsion]") {
  const RectangleTorsion r = rectangle_torsion(1e6, 1.0);
  CHECK_THAT(r.constant, WithinRel(1e6 / 3.0, 1e-6));
  CHECK_THAT(r.on_long_side(0.0), WithinRel(1.0 / r.constant, 1e-9));
}

TEST_CASE("a square is stressed alike along both sides", "[sections][torsion]") {
  // The two sides come from different series, both cut off where 1e-3 is left at most.
  const RectangleTorsion r = rectangle_torsion(1.0, 1.0);
  for (const double at : {0.0, 0.25, 0.5, 0.75}) {
    INFO(at);
    CHECK_THAT(r.on_long_side(at), WithinRel(r.on_short_side(at), 1e-3));
    CHECK(r.on_long_side(-at) == r.on_long_side(at));
  }
}

TEST_CASE("the shear stress around a twisted rectangle sums to 2 A / J", "[sections][torsion]") {
  // Stokes' theorem on the warping, which is single valued: closed integral of tau ds = 2 G theta
  // A.
  for (const double ratio : {1.0, 1.7, 6.0, 20.0}) {
    const RectangleTorsion r = rectangle_torsion(ratio, 1.0);
    constexpr int kSteps = 4000;
    double around = 0.0;
    for (int i = 0; i < kSteps; ++i) {
      const double at = (i + 0.5) / kSteps;
      around += 2.0 * (r.on_long_side(at) * r.longer + r.on_short_side(at) * r.shorter) / kSteps;
    }
    INFO(ratio);
    CHECK_THAT(around, WithinRel(2.0 * ratio / r.constant, 1e-3));
  }
}
