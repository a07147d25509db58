#include <cmath>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "tests/sections/printed_number.hpp"

using Catch::WithinAbs;
using Catch::WithinRel;
using namespace sections;

namespace {

constexpr double in = base::kInch;
constexpr double in2 = in * in;
constexpr double in3 = in2 * in;
constexpr double in4 = in3 * in;
constexpr double mm = base::kMillimeter;

/// A ring of `n` walls on a circle.
ThinWalled ring(int n, double radius, double wall, bool closed) {
  ThinWalled s{.points = {}, .walls = {}, .closed = closed};
  const int points = closed ? n : n + 1;
  for (int i = 0; i < points; ++i) {
    const double angle = 2.0 * base::kPi * (i + (closed ? 0.0 : 1e-6 * (n - 2 * i))) / n;
    s.points.push_back({radius * std::cos(angle), radius * std::sin(angle)});
  }
  s.walls.assign(static_cast<std::size_t>(n), wall);
  return s;
}

}  // namespace

// Beer, Johnston, DeWolf and Mazurek, Mechanics of Materials, examples 6.05 and 6.06 (from
// memory): flanges of 4 in and a web of 6 in on their middle lines, 0.15 in thick, under 2.5 kip.
TEST_CASE("a thin channel has the published shear center and shear stresses",
          "[sections][thin_wall][published]") {
  const Channel channel{
      .depth = 6.15 * in, .width = 4.075 * in, .web = 0.15 * in, .flange = 0.15 * in};
  const AreaProps p = area_props(channel);
  const double from_web_middle = -(p.centroid_y + p.shear_center_y - 0.075 * in);
  CHECK_THAT(from_web_middle / in, WithinRel(1.6, 0.003));
  CHECK_THAT(p.shear_center_z, WithinAbs(0.0, 1e-12));
  const PointStress web = worst_point(channel, {.vz = 2500.0 * base::kPoundForce});
  CHECK_THAT(web.shear / base::kKsi, WithinRel(3.06, 0.003));
  CHECK(web.point == "middle of the web");
}

// The same example: 2.22 ksi where the flange meets the web, which a bending moment about the
// vertical axis singles out.
TEST_CASE("the shear stress at the corner of a thin channel is the published one",
          "[sections][thin_wall][published]") {
  const Channel channel{
      .depth = 6.15 * in, .width = 4.075 * in, .web = 0.15 * in, .flange = 0.15 * in};
  const PointStress corner = worst_point(channel, {.vz = 2500.0 * base::kPoundForce, .my = 1e6});
  REQUIRE(corner.point == "corner of the upper flange and the web");
  CHECK_THAT(corner.shear / base::kKsi, WithinRel(2.22, 0.003));
}

// AISC Shapes Database v14/v15, table 1-5, C4x5.4 (read, in a transcription of the database): a
// rolled channel with fillets and tapered flanges, so three plain walls agree only about.
TEST_CASE("three walls stand for a rolled channel", "[sections][thin_wall][published]") {
  const AreaProps p = area_props(
      Channel{.depth = 4.0 * in, .width = 1.58 * in, .web = 0.184 * in, .flange = 0.296 * in});
  CHECK_THAT(p.area / in2, WithinRel(1.58, 0.02));
  CHECK_THAT(p.iyy / in4, WithinRel(3.85, 0.02));
  CHECK_THAT(p.modulus_y / in3, WithinRel(1.92, 0.02));
  CHECK_THAT(p.plastic_y / in3, WithinRel(2.29, 0.02));
  // The flanges of the rolled one taper toward their tips.
  CHECK_THAT(p.izz / in4, WithinRel(0.312, 0.20));
  CHECK_THAT(p.centroid_y / in, WithinRel(0.457, 0.12));
  CHECK_THAT(-(p.centroid_y + p.shear_center_y) / in, WithinRel(0.501, 0.10));
  CHECK(p.torsion / in4 < 0.0399);
  CHECK(p.torsion / in4 > 0.80 * 0.0399);
}

// Beer and Johnston, Mechanics of Materials, ch. 3, thin-walled hollow shafts (from memory):
// a 4 x 2.5 in tube with a wall of 0.160 in under 24 kip-in has 8.35 ksi, by Bredt's mean flow.
TEST_CASE("a closed line of walls carries torque by the published flow",
          "[sections][thin_wall][published]") {
  const double y = 1.17 * in;
  const double z = 1.92 * in;
  const ThinWalled box{.points = {{-y, -z}, {y, -z}, {y, z}, {-y, z}},
                       .walls = {0.16 * in, 0.16 * in, 0.16 * in, 0.16 * in},
                       .closed = true};
  const double torque = 24.0 * base::kKsi * in3;
  const double own = torque * 0.16 * in / area_props(box).torsion;  // the wall's own share
  CHECK_THAT((worst_point(box, {.t = torque}).torsion - own) / base::kKsi, WithinRel(8.35, 0.015));
  const double area = 8.986 * in2;
  const double girth = 4.0 * (y + z) / (0.16 * in);
  CHECK_THAT(
      area_props(box).torsion,
      WithinRel(4.0 * area * area / girth + 4.0 * (y + z) * std::pow(0.16 * in, 3) / 3.0, 1e-3));
}

// Textbook thin-wall torsion, closed tube against slit tube, e.g. Boresi and Schmidt, Advanced
// Mechanics of Materials, ch. 6 (from memory): 3 (r/t)^2 = 300 and 3 r/t = 30 at r/t = 10.
TEST_CASE("slitting a tube costs the published stiffness and stress",
          "[sections][thin_wall][published]") {
  const int n = 180;
  const double closed = area_props(ring(n, 50 * mm, 5 * mm, true)).torsion;
  const double open = area_props(ring(n, 50 * mm, 5 * mm, false)).torsion;
  CHECK_THAT((closed - open) / open, WithinRel(300.0, 1e-3));
  const double stress_open = worst_point(ring(n, 50 * mm, 5 * mm, false), {.t = 1.0}).torsion;
  const double bredt = 1.0 / (2.0 * base::kPi * 2500 * mm * mm * 5 * mm);
  CHECK_THAT(stress_open / bredt, WithinRel(30.0, 1e-3));
}

// Gere, Mechanics of Materials, ch. 3 (from memory): a thin round and a thin square tube of one
// perimeter and wall; stress 0.785 and twist 0.617 of the square one's.
TEST_CASE("round and square tubes of one perimeter compare as published",
          "[sections][thin_wall][published]") {
  const double wall = 0.05 * mm;
  const double side = 0.5 * base::kPi * 20 * mm;
  const ThinWalled round = ring(360, 20 * mm, wall, true);
  const ThinWalled square{.points = {{0, 0}, {side, 0}, {side, side}, {0, side}},
                          .walls = {wall, wall, wall, wall},
                          .closed = true};
  CHECK_THAT(worst_point(round, {.t = 1.0}).torsion / worst_point(square, {.t = 1.0}).torsion,
             WithinRel(0.785, 0.002));
  CHECK_THAT(area_props(square).torsion / area_props(round).torsion, WithinRel(0.617, 0.002));
}

// Cowper, J. Appl. Mech. 33 (1966), thin tubes at a Poisson's ratio of 0, where his coefficients
// are those of the energy of the shear flow: 2/4 round, 20/48 square (from memory).
TEST_CASE("shear areas of thin closed walls tend to Cowper's", "[sections][thin_wall][published]") {
  const double wall = 0.02 * mm;
  const AreaProps round = area_props(ring(360, 20 * mm, wall, true));
  CHECK_THAT(round.shear_y / round.area, WithinRel(0.5, 2e-3));
  const AreaProps square =
      area_props(ThinWalled{.points = {{0, 0}, {20 * mm, 0}, {20 * mm, 20 * mm}, {0, 20 * mm}},
                            .walls = {wall, wall, wall, wall},
                            .closed = true});
  CHECK_THAT(square.shear_z / square.area, WithinRel(20.0 / 48.0, 2e-3));
}

// Textbook unsymmetric bending, sigma = [(My Iz + Mz Iyz) z - (Mz Iy + My Iyz) y] / (Iy Iz -
// Iyz^2); the numbers are hand arithmetic on two rectangles (common practice, no source).
TEST_CASE("an angle bends about its slanted principal axes", "[sections][thin_wall]") {
  const Angle angle{.depth = 50 * mm, .width = 50 * mm, .wall = 5 * mm};
  const AreaProps p = area_props(angle);
  CHECK_THAT(p.area, WithinRel(475e-6, 1e-12));
  CHECK(PrintedNumber{"14.34"}.agrees_with(p.centroid_y / mm));
  CHECK(PrintedNumber{"14.34"}.agrees_with(p.centroid_z / mm));
  CHECK_THAT(p.drawn_iyy, WithinRel(1.125e-7, 5e-4));
  CHECK_THAT(p.drawn_izz, WithinRel(p.drawn_iyy, 1e-12));
  CHECK_THAT(p.drawn_iyz, WithinRel(-6.661e-8, 5e-4));
  CHECK_THAT(std::abs(p.axes_angle), WithinRel(base::kPi / 4.0, 1e-9));
  const double moment = 100.0;  // about the axis along y as drawn
  const PointStress worst = worst_point(
      angle, {.my = moment * std::cos(p.axes_angle), .mz = -moment * std::sin(p.axes_angle)});
  CHECK(PrintedNumber{"41.23"}.agrees_with(worst.von_mises / 1e6));
  CHECK(worst.point == "tip of the leg along z");
}
