// Gauss points against the integrals by hand, of a wedge b wide whose depth grows from d0 to d1.
#include "parts/taper_give.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"

namespace taper_give_test {
using Catch::Matchers::WithinRel;

TEST_CASE("what a wedge gives is its integrals by hand", "[parts][taper]") {
  const double ratio = GENERATE(1.0001, 2.0, 4.0, 10.0);
  constexpr double kLength = 0.25;
  constexpr double kLow = 0.04;
  const double slope = kLow * (ratio - 1.0) / kLength;
  const fea::TaperGive give = parts::taper_give(
      [&](double x) {
        const double depth = kLow + slope * x;
        return fea_test::section(depth, depth * depth * depth / 12.0, depth / 12.0, depth);
      },
      kLength);
  const double kClose = ratio > 5.0 ? 3.0e-3 : 1.0e-5;
  CHECK_THAT(give.along, WithinRel(std::log(ratio) / slope, kClose));
  CHECK_THAT(give.bend_z[0], WithinRel(12.0 * std::log(ratio) / slope, kClose));
  // 1 / depth^3.
  const double low2 = kLow * kLow;
  CHECK_THAT(give.bend_y[0],
             WithinRel(6.0 / (slope * low2) * (1.0 - 1.0 / (ratio * ratio)), kClose));
  if (ratio > 1.5) {  // else nothing but the difference of large numbers
    const double by_hand =
        std::log(ratio) + 2.0 * (1.0 / ratio - 1.0) - 0.5 * (1.0 / (ratio * ratio) - 1.0);
    CHECK_THAT(give.bend_y[2], WithinRel(12.0 / std::pow(slope, 3) * by_hand, kClose));
  }
  CHECK(give.shear_y == 0.0);
}

}  // namespace taper_give_test
