#include <cmath>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "tests/published/verification.hpp"

namespace thin_walls_test {
using namespace sections;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

constexpr double in = base::kInch;
constexpr double in2 = in * in;
constexpr double in3 = in2 * in;
constexpr double in4 = in3 * in;
constexpr double mm = base::kMillimeter;

const Source kChannel{"Beer, Johnston, DeWolf, Mazurek, Mechanics of Materials, ex. 6.05 and 6.06",
                      Basis::from_memory};
const Source kRolled{"AISC Shapes Database v14/v15, table 1-5, C4x5.4", Basis::read};
const Source kHollow{"Beer and Johnston, Mechanics of Materials, ch. 3, thin-walled hollow shafts",
                     Basis::from_memory};
const Source kSlit{"Boresi and Schmidt, Advanced Mechanics of Materials, ch. 6",
                   Basis::from_memory};
const Source kPerimeter{"Gere, Mechanics of Materials, ch. 3", Basis::from_memory};
const Source kCowper{"Cowper, J. Appl. Mech. 33 (1966), thin tubes, Poisson's ratio 0",
                     Basis::from_memory};
const Source kAngle{"unsymmetric bending of two rectangles", Basis::common_practice};

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
          "[sections][thin_wall]") {
  const Channel channel{
      .depth = 6.15 * in, .width = 4.075 * in, .web = 0.15 * in, .flange = 0.15 * in};
  const AreaProps p = area_props(channel);
  const double from_web_middle = -(p.centroid_y + p.shear_center_y - 0.075 * in);
  verify(kChannel, "shear center from the web's middle", "1.6 in", from_web_middle / in,
         within(0.003));
  CHECK(std::abs(p.shear_center_z) < 1e-12);
  const PointStress web = worst_point(channel, {.vz = 2500.0 * base::kPoundForce});
  verify(kChannel, "largest shear stress", "3.06 ksi", web.shear / base::kKsi, within(0.003));
  CHECK(web.point == "middle of the web");
}

// The same example: 2.22 ksi where the flange meets the web, which a bending moment about the
// vertical axis singles out.
TEST_CASE("the shear stress at the corner of a thin channel is the published one",
          "[sections][thin_wall]") {
  const Channel channel{
      .depth = 6.15 * in, .width = 4.075 * in, .web = 0.15 * in, .flange = 0.15 * in};
  const PointStress corner = worst_point(channel, {.vz = 2500.0 * base::kPoundForce, .my = 1e6});
  REQUIRE(corner.point == "corner of the upper flange and the web");
  verify(kChannel, "shear stress at the corner", "2.22 ksi", corner.shear / base::kKsi,
         within(0.003));
}

// AISC Shapes Database v14/v15, table 1-5, C4x5.4 (read, in a transcription of the database): a
// rolled channel with fillets and tapered flanges, so three plain walls agree only about.
TEST_CASE("three walls stand for a rolled channel", "[sections][thin_wall]") {
  const AreaProps p = area_props(
      Channel{.depth = 4.0 * in, .width = 1.58 * in, .web = 0.184 * in, .flange = 0.296 * in});
  verify(kRolled, "A, three plain walls", "1.58 in2", p.area / in2, within(0.02));
  verify(kRolled, "Ix, three plain walls", "3.85 in4", p.iyy / in4, within(0.02));
  verify(kRolled, "Sx, three plain walls", "1.92 in3", p.modulus_y / in3, within(0.02));
  verify(kRolled, "Zx, three plain walls", "2.29 in3", p.plastic_y / in3, within(0.02));
  // The flanges of the rolled one taper toward their tips.
  verify(kRolled, "Iy, three plain walls", "0.312 in4", p.izz / in4, within(0.22));
  verify(kRolled, "x bar, three plain walls", "0.457 in", p.centroid_y / in, within(0.12));
  verify(kRolled, "eo, three plain walls", "0.501 in", -(p.centroid_y + p.shear_center_y) / in,
         within(0.10));
  verify(kRolled, "J, three plain walls", "0.0399 in4", p.torsion / in4, within(0.20));
}

// Beer and Johnston, Mechanics of Materials, ch. 3, thin-walled hollow shafts (from memory):
// a 4 x 2.5 in tube with a wall of 0.160 in under 24 kip-in has 8.35 ksi, by Bredt's mean flow.
TEST_CASE("a closed line of walls carries torque by the published flow", "[sections][thin_wall]") {
  const double y = 1.17 * in;
  const double z = 1.92 * in;
  const ThinWalled box{.points = {{-y, -z}, {y, -z}, {y, z}, {-y, z}},
                       .walls = {0.16 * in, 0.16 * in, 0.16 * in, 0.16 * in},
                       .closed = true};
  const double torque = 24.0 * base::kKsi * in3;
  const double own = torque * 0.16 * in / area_props(box).torsion;  // the wall's own share
  verify(kHollow, "shear stress, 4 x 2.5 in tube, drawn by its walls", "8.35 ksi",
         (worst_point(box, {.t = torque}).torsion - own) / base::kKsi, within(0.015));
  const double area = 8.986 * in2;
  const double girth = 4.0 * (y + z) / (0.16 * in);
  const double bredt = 4.0 * area * area / girth + 4.0 * (y + z) * std::pow(0.16 * in, 3) / 3.0;
  CHECK(area_props(box).torsion == Approx(bredt).epsilon(1e-3));
}

// Textbook thin-wall torsion, closed tube against slit tube, e.g. Boresi and Schmidt, Advanced
// Mechanics of Materials, ch. 6 (from memory): 3 (r/t)^2 = 300 and 3 r/t = 30 at r/t = 10.
TEST_CASE("slitting a tube costs the published stiffness and stress", "[sections][thin_wall]") {
  const int n = 180;
  const double closed = area_props(ring(n, 50 * mm, 5 * mm, true)).torsion;
  const double open = area_props(ring(n, 50 * mm, 5 * mm, false)).torsion;
  verify(kSlit, "J closed over J slit, r/t = 10", "300", (closed - open) / open, within(1e-3));
  const double stress_open = worst_point(ring(n, 50 * mm, 5 * mm, false), {.t = 1.0}).torsion;
  const double bredt = 1.0 / (2.0 * base::kPi * 2500 * mm * mm * 5 * mm);
  verify(kSlit, "stress slit over stress closed, r/t = 10", "30.0", stress_open / bredt,
         within(1e-3));
}

// Gere, Mechanics of Materials, ch. 3 (from memory): a thin round and a thin square tube of one
// perimeter and wall; stress 0.785 and twist 0.617 of the square one's.
TEST_CASE("round and square tubes of one perimeter compare as published", "[sections][thin_wall]") {
  const double wall = 0.05 * mm;
  const double side = 0.5 * base::kPi * 20 * mm;
  const ThinWalled round = ring(360, 20 * mm, wall, true);
  const ThinWalled square{.points = {{0, 0}, {side, 0}, {side, side}, {0, side}},
                          .walls = {wall, wall, wall, wall},
                          .closed = true};
  verify(kPerimeter, "stress, round over square tube of one perimeter", "0.785",
         worst_point(round, {.t = 1.0}).torsion / worst_point(square, {.t = 1.0}).torsion,
         within(0.002));
  verify(kPerimeter, "twist, round over square tube of one perimeter", "0.617",
         area_props(square).torsion / area_props(round).torsion, within(0.002));
}

// Cowper, J. Appl. Mech. 33 (1966), thin tubes at a Poisson's ratio of 0, where his coefficients
// are those of the energy of the shear flow: 2/4 round, 20/48 square (from memory).
TEST_CASE("shear areas of thin closed walls tend to Cowper's", "[sections][thin_wall]") {
  const double wall = 0.02 * mm;
  const AreaProps round = area_props(ring(360, 20 * mm, wall, true));
  verify(kCowper, "shear coefficient, thin round, drawn by its walls", "0.5",
         round.shear_y / round.area, within(2e-3));
  const AreaProps square =
      area_props(ThinWalled{.points = {{0, 0}, {20 * mm, 0}, {20 * mm, 20 * mm}, {0, 20 * mm}},
                            .walls = {wall, wall, wall, wall},
                            .closed = true});
  verify(kCowper, "shear coefficient, thin square, drawn by its walls", "0.4167",
         square.shear_z / square.area, within(2e-3));
}

// Textbook unsymmetric bending, sigma = [(My Iz + Mz Iyz) z - (Mz Iy + My Iyz) y] / (Iy Iz -
// Iyz^2); the numbers are hand arithmetic on two rectangles (common practice, no source).
TEST_CASE("an angle bends about its slanted principal axes", "[sections][thin_wall]") {
  const Angle angle{.depth = 50 * mm, .width = 50 * mm, .wall = 5 * mm};
  const AreaProps p = area_props(angle);
  verify(kAngle, "A of L 50 x 50 x 5", "475 mm2", p.area * 1e6);
  verify(kAngle, "centroid of L 50 x 50 x 5", "14.34 mm", p.centroid_y / mm);
  verify(kAngle, "Iy of L 50 x 50 x 5", "112500 mm4", p.drawn_iyy * 1e12, within(5e-4));
  verify(kAngle, "Iyz of L 50 x 50 x 5", "-66610 mm4", p.drawn_iyz * 1e12, within(5e-4));
  CHECK(p.drawn_izz == Approx(p.drawn_iyy).epsilon(1e-12));
  CHECK(p.centroid_z == Approx(p.centroid_y).epsilon(1e-12));
  CHECK(std::abs(p.axes_angle) == Approx(base::kPi / 4.0).epsilon(1e-9));
  const double moment = 100.0;  // about the axis along y as drawn
  const PointStress worst = worst_point(
      angle, {.my = moment * std::cos(p.axes_angle), .mz = -moment * std::sin(p.axes_angle)});
  verify(kAngle, "stress of L 50 x 50 x 5 under 100 N m", "41.23 MPa", worst.von_mises / 1e6);
  CHECK(worst.point == "tip of the leg along z");
}

}  // namespace thin_walls_test
