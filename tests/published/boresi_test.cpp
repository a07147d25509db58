// Torsion of a flat bar, and of a tube with and without a slit.

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "sections/torsion_rectangle.hpp"
#include "tests/published/verification.hpp"

namespace boresi_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within;
using namespace sections;

// Worked there with the rounded factor 0.267.
TEST_CASE("Boresi's flat bar in torsion has 82.7 MPa on its long side", "[sections][stress]") {
  const Source source{
      "Boresi and Schmidt, Advanced Mechanics of Materials, problem 6.31 (38.1 x "
      "12.7 mm, 135.7 N m)",
      Basis::read};
  const PointStress p = worst_point(FlatBar{.depth = 0.0381, .width = 0.0127}, {.t = 135.7});
  verify(source, "largest shear stress", "82.706 MPa", p.torsion / base::kMegapascal,
         within(0.005));
  CHECK(p.point == "middle of the long side");
}

// The formulas are those of thin walls; ours are those of the ring and of the strip as long as its
// middle line, which differ from them by one in 4 (r/t)^2 and one in 100 at r/t = 10.
TEST_CASE("a slit takes a thin tube's torsion away", "[sections][torsion]") {
  const Source source{
      "Boresi and Schmidt, Advanced Mechanics of Materials, ch. 6, closed and slit "
      "tube, r/t = 10",
      Basis::formula_from_memory};
  const RoundTube tube{.outside = 21.0, .wall = 1.0};
  const auto slit = rectangle_torsion(2.0 * base::kPi * 10.0, 1.0);
  verify(source, "J closed over J slit", "300", area_props(tube).torsion / slit.constant,
         within(0.015));
  // Stress at the middle of the wall.
  verify(source, "stress slit over closed", "30",
         slit.on_long_side(0.0) / (10.0 / area_props(tube).torsion), within(0.015));
}

}  // namespace boresi_test
