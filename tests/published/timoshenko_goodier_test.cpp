// Torsion of solid rectangles.

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "sections/torsion_rectangle.hpp"
#include "tests/published/verification.hpp"

namespace timoshenko_goodier_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within_absolute;
using sections::rectangle_torsion;
using sections::RectangleTorsion;

// tau = T / (alpha a b^2), J = beta a b^3, and the short side's stress as a share of the long
// side's. Read in a lecture appendix, but for a/b = 10.
TEST_CASE("rectangles twist as in Timoshenko's table", "[sections][torsion]") {
  struct Row {
    std::string ratio_name;
    double ratio;
    const char *alpha, *beta, *share;
    Basis basis;
  };
  const std::vector<Row> rows = {{"1", 1.0, "0.208", "0.1406", "1.000", Basis::read},
                                 {"1.5", 1.5, "0.231", "0.1958", "0.859", Basis::read},
                                 {"2", 2.0, "0.246", "0.229", "0.795", Basis::read},
                                 {"3", 3.0, "0.267", "0.263", "0.753", Basis::read},
                                 {"4", 4.0, "0.282", "0.281", "0.745", Basis::read},
                                 {"10", 10.0, "0.312", "0.312", "0.743", Basis::from_memory}};
  for (const Row& row : rows) {
    const Source source{
        "Timoshenko and Goodier, Theory of Elasticity, 3rd ed., art. 109, table of "
        "torsion constants",
        row.basis};
    const RectangleTorsion r = rectangle_torsion(row.ratio, 1.0);
    const std::string at = ", a/b = " + row.ratio_name;
    verify(source, "alpha of T / (alpha a b2)" + at, row.alpha,
           1.0 / (r.on_long_side(0.0) * row.ratio), within_absolute(0.001));
    verify(source, "beta of J = beta a b3" + at, row.beta, r.constant / row.ratio,
           within_absolute(0.001));
    verify(source, "stress of the short side over the long side's" + at, row.share,
           r.on_short_side(0.0) / r.on_long_side(0.0), within_absolute(0.001));
  }
}

TEST_CASE("a 60 x 10 plate has 55.86 MPa mid long side and 41.48 mid short side",
          "[sections][stress]") {
  const Source source{
      "St. Venant's series, Timoshenko and Goodier, art. 109 (plate 60 x 10 mm, "
      "0.1 kN m)",
      Basis::formula_from_memory};
  const sections::FlatBar plate{.depth = 0.060, .width = 0.010};
  verify(source, "J", "1.790e4 mm4", sections::area_props(plate).torsion / 1e-12);
  verify(source, "stress, middle of the long side", "55.86 MPa",
         sections::worst_point(plate, {.t = 100.0}).torsion / base::kMegapascal);
  // Enough bending moment brings the worst point to the short side.
  const auto bent = sections::worst_point(plate, {.t = 100.0, .my = 2000.0});
  CHECK(bent.point == "middle of the short side");
  verify(source, "stress, middle of the short side", "41.48 MPa", bent.torsion / base::kMegapascal,
         within_absolute(0.02));
}

}  // namespace timoshenko_goodier_test
