#include "checks/bend_flattening.hpp"

#include <catch2/catch.hpp>

namespace bend_flattening_test {

// ASME B31.1 app. D (flexibility 1.65 / h) and ASME III NB-3683 (B2 = 1.30 / h^(2/3)), both from
// memory; h = t R / r^2.
TEST_CASE("a thin tube flattens at its bend, a thick one does not", "[checks]") {
  // 50 x 1.6 on R 100: r = 24.2, h = 0.2732.
  const checks::Flattening thin =
      checks::bend_flattening(sections::RoundTube{0.050, 0.0016}, 0.100);
  CHECK(thin.give == Approx(6.04).epsilon(1e-3));
  CHECK(thin.stress == Approx(3.087).epsilon(1e-3));
  // 38 x 5 on R 114: h = 2.094.
  const checks::Flattening thick =
      checks::bend_flattening(sections::RoundTube{0.038, 0.005}, 0.114);
  CHECK(thick.give == 1.0);
  CHECK(thick.stress == 1.0);
}

TEST_CASE("a bar keeps its section at a bend", "[checks]") {
  const checks::Flattening bar = checks::bend_flattening(sections::RoundBar{0.030}, 0.060);
  CHECK(bar.give == 1.0);
  CHECK(bar.stress == 1.0);
}

}  // namespace bend_flattening_test
