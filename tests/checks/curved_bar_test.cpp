// Curved bars after Winkler. Sources: Shigley, Mechanical Engineering Design, 9th ed., Table 3-4
// and Example 3-15 (from memory), and closed forms of them; hollow sections by their difference.

#include "checks/curved_bar.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace curved_bar_test {
using Catch::Matchers::WithinRel;
using checks::curved_bar_factor;

TEST_CASE("round bars and tubes bent to a radius", "[checks][published]") {
  // Solid 25 on 75: rn 74.48, e .5245, factor 1.142; tube 38 x 5 on 114: e 1.229, factor 1.116.
  const sections::RoundBar bar{.diameter = 0.025};
  CHECK_THAT(curved_bar_factor(bar, 0.075).value(), WithinRel(1.142, 5e-4));
  const sections::RoundTube tube{.outside = 0.038, .wall = 0.005};
  CHECK_THAT(curved_bar_factor(tube, 0.114).value(), WithinRel(1.116, 5e-4));
  // Rod of 20 on 60 under 2000 N through the center of curvature: 180.79 MPa inside, of which
  // F / A is direct: the rest over M / S is the factor.
  const double area = base::kPi * 0.01 * 0.01;
  const double modulus = base::kPi * std::pow(0.01, 3) / 4.0;
  const double bending = (180.79e6 - 2000.0 / area) / (2000.0 * 0.06 / modulus);
  CHECK_THAT(curved_bar_factor(sections::RoundBar{.diameter = 0.02}, 0.06).value(),
             WithinRel(bending, 1e-4));
}

TEST_CASE("a rectangle bent about its width", "[checks][published]") {
  // Example 3-15: 0.75 wide, 4 deep, inner radius 2 in, 5000 lbf through the center of curvature:
  // 16.9 kpsi inside.
  const double inch = base::kInch;
  const sections::FlatBar hook{.depth = 0.75 * inch, .width = 4.0 * inch};
  // The radius of 4 in is not over the larger side: outside the limits of this method.
  CHECK_FALSE(curved_bar_factor(hook, 4.0 * inch));
  CHECK_THAT(curved_bar_factor(hook, 4.0001 * inch).value(),
             WithinRel((16.901 - 5.0 / 3.0) / (5.0 * 4.0 / 2.0), 1e-3));
}

TEST_CASE("the bend of a large radius is straight, a sharp one outside the method", "[checks]") {
  const sections::RoundBar bar{.diameter = 0.02};
  CHECK(curved_bar_factor(bar, 0.27).value() < checks::kCurvedBarCounts);
  CHECK(curved_bar_factor(bar, 0.15).value() > checks::kCurvedBarCounts);  // 1.052 at 15 radii
  CHECK_THAT(curved_bar_factor(bar, 0.15).value(), WithinRel(1.052, 1e-3));
  CHECK_THAT(curved_bar_factor(bar, 1000.0).value(), WithinRel(1.0, 1e-4));
  CHECK_FALSE(curved_bar_factor(bar, 0.02));
  // A hollow square lies between thin walls and the solid one.
  const sections::RectangularTube box{.depth = 0.04, .width = 0.04, .wall = 0.003, .corner = 0.006};
  const sections::FlatBar solid{.depth = 0.04, .width = 0.04};
  CHECK(curved_bar_factor(box, 0.12).value() > 1.05);
  CHECK(curved_bar_factor(box, 0.12).value() < curved_bar_factor(solid, 0.12).value() * 1.1);
  const sections::TwinPlate twin{.depth = 0.1, .thickness = 0.006, .gap = 0.05};
  CHECK_FALSE(curved_bar_factor(twin, 0.5));
  CHECK(curved_bar_factor(twin, 1.5).value() == 1.0);
}

}  // namespace curved_bar_test
