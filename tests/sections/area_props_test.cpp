#include "sections/area_props.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace area_props_test {
using Catch::WithinRel;
using namespace sections;

TEST_CASE("a round tube tends to the thin ring", "[sections][area_props]") {
  const double r = 0.020;
  const double t = 1e-6;
  const AreaProps p = area_props(RoundTube{.outside = 2 * r + t, .wall = t});
  // The next term of the expansion is (t / 2r)^2 = 6e-10; cancellation costs more, about 1e-10 r/t.
  CHECK_THAT(p.area, WithinRel(2 * base::kPi * r * t, 1e-8));
  CHECK_THAT(p.iyy, WithinRel(base::kPi * r * r * r * t, 1e-8));
  CHECK_THAT(p.torsion, WithinRel(2 * base::kPi * r * r * r * t, 1e-8));
}

TEST_CASE("a round tube without a hole is a round bar", "[sections][area_props]") {
  const AreaProps tube = area_props(RoundTube{.outside = 0.04, .wall = 0.02 * (1 - 1e-12)});
  const AreaProps bar = area_props(RoundBar{.diameter = 0.04});
  CHECK_THAT(tube.area, WithinRel(bar.area, 1e-9));
  CHECK_THAT(tube.iyy, WithinRel(bar.iyy, 1e-9));
  CHECK_THAT(tube.plastic_y, WithinRel(bar.plastic_y, 1e-9));
  CHECK_THAT(tube.shear_y, WithinRel(bar.shear_y, 1e-9));
}

TEST_CASE("a rectangular tube is turned by swapping depth and width", "[sections][area_props]") {
  const AreaProps p = area_props(RectangularTube{0.08, 0.05, 0.004, 0.008});
  const AreaProps q = area_props(RectangularTube{0.05, 0.08, 0.004, 0.008});
  CHECK(p.iyy == q.izz);
  CHECK(p.modulus_z == q.modulus_y);
  CHECK(p.plastic_y == q.plastic_z);
  CHECK(p.shear_y == q.shear_z);
  CHECK_THAT(p.torsion, WithinRel(q.torsion, 1e-12));
}

TEST_CASE("a rounded box agrees with its own area taken in strips", "[sections][area_props]") {
  const double depth = 0.08;
  const double width = 0.05;
  const double wall = 0.004;
  const double corner = 0.010;
  const auto breadth = [](double z, double h, double b, double r) {
    const double into = z - (0.5 * h - r);
    if (z > 0.5 * h) return 0.0;
    return into <= 0.0 ? b : b - 2.0 * (r - std::sqrt(r * r - into * into));
  };
  constexpr int kStrips = 200000;
  double area = 0.0;
  double inertia = 0.0;
  double plastic = 0.0;
  for (int i = 0; i < kStrips; ++i) {
    const double dz = 0.5 * depth / kStrips;
    const double z = (i + 0.5) * dz;
    const double strip = 2.0 * dz *
                         (breadth(z, depth, width, corner) -
                          breadth(z, depth - 2 * wall, width - 2 * wall, corner - wall));
    area += strip;
    inertia += strip * z * z;
    plastic += strip * z;
  }
  const AreaProps p = area_props(RectangularTube{depth, width, wall, corner});
  CHECK_THAT(p.area, WithinRel(area, 1e-6));  // the strips' own error
  CHECK_THAT(p.iyy, WithinRel(inertia, 1e-6));
  CHECK_THAT(p.plastic_y, WithinRel(plastic, 1e-6));
}

TEST_CASE("with nu = 0 Cowper's box coefficient is that of the shear flow's energy",
          "[sections][area_props]") {
  // 1 / (kappa A) = sum of q^2 / t over the walls for a force of one: flow in the cross walls
  // rises linearly to the corner, in the walls along the force as a parabola to the middle.
  const double t = 1e-8;
  for (const double b : {0.3, 1.0, 2.5}) {
    const double h = 1.0;
    const double inertia = t * (h * h * h / 6.0 + b * h * h / 2.0);
    const double corner = t * b * h / (4.0 * inertia);
    const double rise = t * h * h / (8.0 * inertia);
    const double middle = corner + rise;
    const double cross = 2.0 * b * corner * corner / 3.0;
    const double along =
        2.0 * h * (middle * middle - 2.0 / 3.0 * middle * rise + rise * rise / 5.0);
    const AreaProps p = area_props(RectangularTube{h + t, b + t, t, t}, 0.0);
    INFO(b);
    CHECK_THAT(p.shear_z, WithinRel(t / (cross + along), 1e-6));
  }
}

TEST_CASE("twin plates are two flat bars that bend alone across their plane",
          "[sections][area_props]") {
  const AreaProps one = area_props(FlatBar{.depth = 0.08, .width = 0.006});
  const AreaProps two = area_props(TwinPlate{.depth = 0.08, .thickness = 0.006, .gap = 0.05});
  CHECK_THAT(two.area, WithinRel(2 * one.area, 1e-14));
  CHECK_THAT(two.iyy, WithinRel(2 * one.iyy, 1e-14));
  CHECK_THAT(two.izz, WithinRel(2 * one.izz, 1e-14));
  CHECK_THAT(two.torsion, WithinRel(2 * one.torsion, 1e-14));
  CHECK_THAT(two.shear_z, WithinRel(2 * one.shear_z, 1e-14));
  CHECK_THAT(two.modulus_y, WithinRel(2 * one.modulus_y, 1e-14));
  CHECK_THAT(two.modulus_z, WithinRel(2 * one.modulus_z, 1e-14));
  CHECK_THAT(two.radius_z, WithinRel(one.radius_z, 1e-14));
}

TEST_CASE("a section given by numbers keeps them, and no shear area means no shear give",
          "[sections][area_props]") {
  ByNumbers s{.area = 1e-3, .iyy = 4e-7, .izz = 1e-7, .torsion = 2e-7};
  s.shear_z = 5e-4;
  const AreaProps p = area_props(s);
  CHECK(p.area == 1e-3);
  CHECK(p.torsion == 2e-7);
  CHECK(p.shear_z == 5e-4);
  CHECK(std::isinf(p.shear_y));
  CHECK_THAT(p.radius_y, WithinRel(0.02, 1e-12));
  CHECK_THAT(p.polar, WithinRel(5e-7, 1e-12));
  CHECK(std::isnan(p.plastic_y));
  CHECK(std::isnan(p.modulus_y));
}

TEST_CASE("a size that was never given poisons the properties", "[sections][area_props]") {
  CHECK(std::isnan(area_props(RoundBar{}).area));
  CHECK(std::isnan(area_props(RoundTube{.outside = 0.05}).iyy));
  CHECK(std::isnan(area_props(RectangularTube{0.05, 0.05, 0.003}).torsion));
  CHECK(std::isnan(area_props(FlatBar{.depth = 0.05}).torsion));
  CHECK(std::isnan(area_props(TwinPlate{.depth = 0.05}).izz));
}

}  // namespace area_props_test
