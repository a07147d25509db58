#include <algorithm>
#include <cmath>
#include <utility>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"

namespace section_stress_test {
using Catch::WithinAbs;
using Catch::WithinRel;
using namespace sections;

namespace {

const Resultants kMixed{.n = 12e3, .vy = 3e3, .vz = -5e3, .t = 180.0, .my = 260.0, .mz = -90.0};

const Shape kShapes[] = {RoundBar{0.03}, RoundTube{0.05, 0.005},
                         RectangularTube{0.06, 0.04, 0.003, 0.006}, FlatBar{0.06, 0.01},
                         TwinPlate{0.08, 0.006, 0.05}};

Resultants times(const Resultants& r, double f) {
  return {f * r.n, f * r.vy, f * r.vz, f * r.t, f * r.my, f * r.mz};
}

/// The same load seen from axes turned by `angle` about x.
Resultants turned(const Resultants& r, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {.n = r.n,
          .vy = c * r.vy + s * r.vz,
          .vz = c * r.vz - s * r.vy,
          .t = r.t,
          .my = c * r.my + s * r.mz,
          .mz = c * r.mz - s * r.my};
}

}  // namespace

TEST_CASE("stress is proportional to the load, and the same for the opposite load",
          "[sections][stress]") {
  for (const Shape& shape : kShapes) {
    const PointStress p = worst_point(shape, kMixed);
    INFO(describe(shape, false));
    CHECK(p.von_mises > 0.0);
    CHECK_THAT(worst_point(shape, times(kMixed, 3.0)).von_mises,
               WithinRel(3.0 * p.von_mises, 1e-12));
    CHECK_THAT(worst_point(shape, times(kMixed, -1.0)).von_mises, WithinRel(p.von_mises, 1e-12));
  }
}

TEST_CASE(
    "the largest von Mises stress is that of the worst point, where it is not less than asked",
    "[sections][stress]") {
  for (const Shape& shape : kShapes) {
    for (int i = 0; i < 40; ++i) {
      const double a = 0.7 * i;
      const Resultants r{.n = 12e3 * std::cos(a),
                         .vy = 40e3 * std::sin(1.3 * a),
                         .vz = -30e3 * std::cos(2.1 * a),
                         .t = i % 3 == 0 ? 0.0 : 180.0 * std::sin(a),
                         .my = i % 4 == 0 ? 0.0 : 260.0 * std::cos(0.4 * a),
                         .mz = i % 4 == 0 ? 0.0 : -90.0};
      const double worst = worst_point(shape, r).von_mises;
      INFO(describe(shape, false) << ", " << i);
      CHECK(largest_von_mises(shape, r) == worst);
      CHECK(largest_von_mises(shape, r, 0.999 * worst) == worst);
      CHECK(largest_von_mises(shape, r, 1.5 * worst) <= worst);
    }
  }
}

// A scan, each stress by itself: (N/A + M r/I)^2 + 3 (T/2S + shear factor V)^2.
TEST_CASE("round a tube no place sees more than the worst point", "[sections][stress]") {
  const RoundTube tube{0.05, 0.005};
  const AreaProps p = area_props(tube);
  const double ro = 0.5 * tube.outside;
  const double ri = ro - tube.wall;
  const double shear_factor =
      4.0 / 3.0 * (ro * ro + ro * ri + ri * ri) / (ro * ro + ri * ri) / p.area;
  for (int i = 0; i < 40; ++i) {
    const double a = 0.7 * i;
    const Resultants r{.n = -20e3 * std::cos(a),
                       .vy = 12e3 * std::sin(1.3 * a),
                       .vz = -9e3 * std::cos(2.1 * a),
                       .t = 900.0 * std::sin(a + 0.3),
                       .my = 460.0 * std::cos(0.4 * a),
                       .mz = -390.0 * std::sin(0.9 * a)};
    double most = 0.0;
    for (int k = 0; k < 36000; ++k) {
      const double angle = 2.0 * base::kPi * k / 36000.0;
      const double y = ro * std::cos(angle);
      const double z = ro * std::sin(angle);
      const double sigma = r.n / p.area + r.my * z / p.iyy - r.mz * y / p.izz;
      const double tau = r.t * ro / (2.0 * p.iyy) + shear_factor * (r.vz * y - r.vy * z) / ro;
      most = std::max(most, std::sqrt(sigma * sigma + 3.0 * tau * tau));
    }
    INFO(i);
    CHECK_THAT(worst_point(tube, r).von_mises, WithinRel(most, 1.0e-4));
  }
}

TEST_CASE("the parts at the worst point make up its von Mises stress, up to a sign of the shear",
          "[sections][stress]") {
  for (const Shape& shape : kShapes) {
    const PointStress p = worst_point(shape, kMixed);
    const double sigma = p.axial + p.bending;
    const double added = std::hypot(sigma, std::sqrt(3.0) * (p.torsion + p.shear));
    const double opposed = std::hypot(sigma, std::sqrt(3.0) * (p.torsion - p.shear));
    INFO(describe(shape, false));
    CHECK((std::abs(p.von_mises / added - 1.0) < 1e-12 ||
           std::abs(p.von_mises / opposed - 1.0) < 1e-12));
  }
}

TEST_CASE("a round section does not care how its axes are turned", "[sections][stress]") {
  const double straight = worst_point(RoundTube{0.05, 0.005}, kMixed).von_mises;
  for (int i = 1; i < 90; ++i) {
    // The sweep of 5 degrees leaves at most 1 - cos(2.5 deg) = 0.1 %.
    CHECK_THAT(worst_point(RoundTube{0.05, 0.005}, turned(kMixed, 0.07 * i)).von_mises,
               WithinRel(straight, 1e-3));
  }
}

TEST_CASE("a quarter turn of section and load together changes nothing", "[sections][stress]") {
  const Resultants quarter = turned(kMixed, 0.5 * base::kPi);
  CHECK_THAT(worst_point(FlatBar{0.01, 0.06}, quarter).von_mises,
             WithinRel(worst_point(FlatBar{0.06, 0.01}, kMixed).von_mises, 1e-9));
  CHECK_THAT(
      worst_point(RectangularTube{0.04, 0.06, 0.003, 0.006}, quarter).von_mises,
      WithinRel(worst_point(RectangularTube{0.06, 0.04, 0.003, 0.006}, kMixed).von_mises, 1e-9));
}

TEST_CASE("round sections take the resultant moment, rectangles the sum at the corner",
          "[sections][stress]") {
  const Resultants both{.my = 300.0, .mz = 400.0};
  const RoundBar bar{0.03};
  CHECK_THAT(worst_point(bar, both).von_mises, WithinRel(500.0 / area_props(bar).modulus_y, 1e-12));
  for (const Shape& shape :
       {Shape(FlatBar{0.06, 0.01}), Shape(RectangularTube{0.06, 0.04, 0.003, 0.006})}) {
    const AreaProps p = area_props(shape);
    const PointStress worst = worst_point(shape, both);
    CHECK_THAT(worst.von_mises, WithinRel(300.0 / p.modulus_y + 400.0 / p.modulus_z, 1e-12));
    CHECK(worst.point == "corner");
  }
}

TEST_CASE("bending has the sign of the fiber where axial stress adds to it", "[sections][stress]") {
  for (const Shape& shape : kShapes) {
    const PointStress pulled = worst_point(shape, {.n = 1e3, .my = 200.0, .mz = 30.0});
    CHECK(pulled.axial > 0.0);
    CHECK(pulled.bending > 0.0);
    const PointStress pushed = worst_point(shape, {.n = -1e3, .my = 200.0, .mz = 30.0});
    CHECK(pushed.axial < 0.0);
    CHECK(pushed.bending < 0.0);
  }
}

TEST_CASE("torsion and shear add on one side whatever their signs", "[sections][stress]") {
  for (const Shape& shape : kShapes) {
    for (const double sign : {1.0, -1.0}) {
      const PointStress p = worst_point(shape, {.vz = sign * 20e3, .t = 150.0});
      INFO(describe(shape, false));
      CHECK_THAT(p.von_mises, WithinRel(std::sqrt(3.0) * (p.torsion + p.shear), 1e-12));
    }
  }
  const PointStress bar = worst_point(FlatBar{0.06, 0.01}, {.vz = 20e3, .t = 150.0});
  CHECK_THAT(bar.shear, WithinRel(1.5 * 20e3 / 0.0006, 1e-12));
  CHECK(bar.point == "middle of the long side");
  const PointStress tube = worst_point(RoundTube{0.05, 0.005}, {.vz = 20e3, .t = 150.0});
  CHECK(tube.point == "outside, at right angles to the shear force");
}

TEST_CASE("at the fiber that is stretched, shear up on the left adds to a right-handed torque",
          "[sections][stress]") {
  // Tension side at +y; there Vz > 0 and T > 0 both push along +z, T < 0 against it.
  for (const Shape& shape : kShapes) {
    const Resultants with{.n = 5e3, .vz = 10e3, .t = 100.0, .mz = -40.0};
    Resultants against = with;
    against.t = -with.t;
    INFO(describe(shape, false));
    CHECK(worst_point(shape, with).von_mises > 1.001 * worst_point(shape, against).von_mises);
  }
}

TEST_CASE("a shear force along the diagonal of a square tube leaves its corner without shear",
          "[sections][stress]") {
  // By symmetry about the diagonal; the moments stretch the corner at +y, +z.
  const RectangularTube tube{0.05, 0.05, 0.003, 0.006};
  const PointStress p =
      worst_point(tube, {.n = 1e3, .vy = 2e3, .vz = 2e3, .my = 900.0, .mz = -900.0});
  CHECK(p.point == "corner");
  CHECK(p.shear < 1e-6 * p.von_mises);
  const PointStress other =
      worst_point(tube, {.n = 1e3, .vy = -2e3, .vz = 2e3, .my = 900.0, .mz = -900.0});
  CHECK(other.shear > 1e6);
}

TEST_CASE("two shear forces on a flat bar meet at its center", "[sections][stress]") {
  const PointStress p = worst_point(FlatBar{0.06, 0.01}, {.vy = 3e3, .vz = 4e3});
  CHECK(p.point == "center");
  CHECK_THAT(p.shear, WithinRel(1.5 * 5e3 / 0.0006, 1e-12));
}

TEST_CASE("the shear in the walls of a thin box adds up to the force", "[sections][stress]") {
  // Parabola between the corner and the middle of the two walls along the force: Simpson's rule
  // is exact. A moment brings the worst point from the middle to the corner.
  const double t = 1e-6;
  const double h = 0.06;
  const RectangularTube box{h + t, 0.04 + t, t, t};
  const PointStress middle = worst_point(box, {.vz = 1.0});
  CHECK(middle.point == "middle of the long wall");
  const PointStress corner = worst_point(box, {.vz = 1.0, .my = 100.0});
  CHECK(corner.point == "corner");
  const double force = 2.0 * t * h * (2.0 / 3.0 * middle.shear + 1.0 / 3.0 * corner.shear);
  CHECK_THAT(force, WithinRel(1.0, 1e-4));
}

TEST_CASE("a thin plate twisted and bent sideways is worst near its corner, not at a middle",
          "[sections][stress]") {
  // Away from the corner by one thickness torsion is all but full, bending still 0.9 of its most.
  const FlatBar plate{.depth = 0.1, .width = 0.005};
  const Resultants r{.t = 30.0, .my = 300.0, .mz = 15.0};
  const PointStress p = worst_point(plate, r);
  CHECK(p.point == "long side, 90 % of the way from its middle to the corner");
  const AreaProps a = area_props(plate);
  const double corner = 300.0 / a.modulus_y + 15.0 / a.modulus_z;
  const double torsion = worst_point(plate, {.t = 30.0}).torsion;
  CHECK(p.von_mises > corner);
  CHECK(p.von_mises < std::hypot(corner, std::sqrt(3.0) * torsion));
}

TEST_CASE("twin plates are each stressed by half of everything", "[sections][stress]") {
  const PointStress twin = worst_point(TwinPlate{0.08, 0.006, 0.05}, kMixed);
  const PointStress one = worst_point(FlatBar{0.08, 0.006}, times(kMixed, 0.5));
  CHECK(twin.von_mises == one.von_mises);
  CHECK(twin.torsion == one.torsion);
  const auto shear = [](const Shape& shape, const Resultants& r) {
    return worst_point(shape, r).shear;
  };
  CHECK(shear(TwinPlate{0.08, 0.006, 0.05}, {.vy = 2e3}) ==
        shear(FlatBar{0.08, 0.006}, {.vy = 1e3}));
  CHECK(twin.point == one.point);
}

TEST_CASE("square sections do not speak of long and short sides", "[sections][stress]") {
  CHECK(worst_point(FlatBar{0.02, 0.02}, {.t = 1.0}).point == "middle of the side");
  CHECK(worst_point(RectangularTube{0.05, 0.05, 0.003, 0.006}, {.vz = 1.0}).point ==
        "middle of the wall");
}

TEST_CASE("a section given by numbers adds everything at one extreme fiber", "[sections][stress]") {
  const ByNumbers s{.area = 1e-3,
                    .iyy = 4e-7,
                    .izz = 1e-7,
                    .torsion = 2e-7,
                    .shear_z = 5e-4,
                    .modulus_y = 1e-5,
                    .modulus_z = 5e-6,
                    .modulus_t = 8e-6};
  const PointStress p =
      worst_point(s, {.n = -2e3, .vy = 3e3, .vz = 2e3, .t = -80.0, .my = -100.0, .mz = 50.0});
  CHECK(p.point == "extreme fiber");
  CHECK_THAT(p.axial, WithinRel(-2e6, 1e-12));
  CHECK_THAT(p.bending, WithinRel(-2e7, 1e-12));
  CHECK_THAT(p.torsion, WithinRel(1e7, 1e-12));
  CHECK_THAT(p.shear, WithinRel(5e6, 1e-12));  // hypot(3e3 / area, 2e3 / shear_z)
  CHECK_THAT(p.von_mises, WithinRel(std::hypot(2.2e7, std::sqrt(3.0) * 1.5e7), 1e-12));
}

TEST_CASE("a torque on numbers without a torsion modulus leaves the stress unknown",
          "[sections][stress]") {
  const ByNumbers s{.area = 1e-3,
                    .iyy = 4e-7,
                    .izz = 1e-7,
                    .torsion = 2e-7,
                    .modulus_y = 1e-5,
                    .modulus_z = 5e-6};
  CHECK(std::isnan(worst_point(s, {.n = 1e3, .t = 1.0}).von_mises));
  CHECK_THAT(worst_point(s, {.n = 1e3}).von_mises, WithinRel(1e6, 1e-12));
}

TEST_CASE("an unset load or size leaves the stress unknown", "[sections][stress]") {
  for (const Shape& shape : kShapes) {
    for (double Resultants::*part :
         {&Resultants::n, &Resultants::vy, &Resultants::t, &Resultants::my}) {
      Resultants r = kMixed;
      r.*part = base::kUnset;
      CHECK(std::isnan(worst_point(shape, r).von_mises));
    }
  }
  CHECK(std::isnan(worst_point(RoundTube{.outside = 0.05}, kMixed).von_mises));
  CHECK(std::isnan(worst_point(FlatBar{.depth = 0.05}, kMixed).von_mises));
}

TEST_CASE("no load is no stress", "[sections][stress]") {
  for (const Shape& shape : kShapes) CHECK(worst_point(shape, {}).von_mises == 0.0);
}

}  // namespace section_stress_test
