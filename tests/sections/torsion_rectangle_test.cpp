#include "sections/torsion_rectangle.hpp"

#include <catch2/catch.hpp>

namespace torsion_rectangle_test {
using Catch::WithinRel;
using sections::rectangle_torsion;
using sections::RectangleTorsion;

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

}  // namespace torsion_rectangle_test
