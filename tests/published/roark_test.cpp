// Roark's fits of the torsion of solid rectangles, 60 x 10. They are good to 4 %, here far better.

#include <catch2/catch.hpp>

#include "sections/torsion_rectangle.hpp"
#include "tests/published/verification.hpp"

namespace roark_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within;

TEST_CASE("a rectangle's torsion agrees with Roark's fits", "[sections][torsion]") {
  // K = a b^3 (16/3 - 3.36 b/a (1 - b^4 / 12a^4)) and the stress at the middle of the long side
  // 3T / (8ab^2) (1 + 0.6095 b/a + 0.8865 (b/a)^2 - 1.8023 (b/a)^3 + 0.9100 (b/a)^4), a 30, b 5.
  const Source source{"Roark's Formulas for Stress and Strain, table 10.7, case 4 (60 x 10)",
                      Basis::formula_from_memory};
  const auto r = sections::rectangle_torsion(60.0, 10.0);
  verify(source, "K", "17900", r.constant, within(0.001));
  verify(source, "stress for a torque of one", "5.593e-4", r.on_long_side(0.0), within(0.002));
}

}  // namespace roark_test
