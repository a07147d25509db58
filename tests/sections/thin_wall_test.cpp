#include <cmath>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "sections/area_props.hpp"
#include "sections/stress.hpp"

namespace thin_wall_test {
using Catch::WithinAbs;
using Catch::WithinRel;
using namespace sections;

namespace {

constexpr double mm = base::kMillimeter;

ThinWalled turned(ThinWalled s, double angle) {
  for (auto& p : s.points) {
    p = {p[0] * std::cos(angle) - p[1] * std::sin(angle) + 3 * mm,
         p[0] * std::sin(angle) + p[1] * std::cos(angle) - 7 * mm};
  }
  return s;
}

ThinWalled divided(const ThinWalled& s) {
  ThinWalled out{.points = {}, .walls = {}, .closed = s.closed};
  for (std::size_t i = 0; i < s.walls.size(); ++i) {
    const auto& a = s.points[i];
    const auto& b = s.points[(i + 1) % s.points.size()];
    out.points.push_back(a);
    out.points.push_back({0.7 * a[0] + 0.3 * b[0], 0.7 * a[1] + 0.3 * b[1]});
    out.walls.insert(out.walls.end(), {s.walls[i], s.walls[i]});
  }
  if (!s.closed) out.points.push_back(s.points.back());
  return out;
}

ThinWalled backward(ThinWalled s) {
  std::reverse(s.points.begin(), s.points.end());
  std::reverse(s.walls.begin(), s.walls.end());
  if (s.closed) std::rotate(s.walls.begin(), s.walls.begin() + 1, s.walls.end());
  return s;
}

/// An odd open line and an odd closed one.
ThinWalled hook() {
  return {.points = {{0, 0}, {40 * mm, 0}, {55 * mm, 30 * mm}, {20 * mm, 62 * mm}, {0, 50 * mm}},
          .walls = {3 * mm, 4 * mm, 2 * mm, 5 * mm},
          .closed = false};
}
ThinWalled cell() {
  return {.points = {{0, 0}, {60 * mm, 5 * mm}, {50 * mm, 70 * mm}, {-5 * mm, 40 * mm}},
          .walls = {3 * mm, 4 * mm, 2 * mm, 5 * mm},
          .closed = true};
}

void check_same(const AreaProps& a, const AreaProps& b, double tolerance) {
  CHECK_THAT(a.area, WithinRel(b.area, tolerance));
  CHECK_THAT(a.iyy + a.izz, WithinRel(b.iyy + b.izz, tolerance));
  CHECK_THAT(std::min(a.iyy, a.izz), WithinRel(std::min(b.iyy, b.izz), tolerance));
  CHECK_THAT(a.torsion, WithinRel(b.torsion, tolerance));
  CHECK_THAT(std::min(a.shear_y, a.shear_z), WithinRel(std::min(b.shear_y, b.shear_z), tolerance));
  CHECK_THAT(std::max(a.shear_y, a.shear_z), WithinRel(std::max(b.shear_y, b.shear_z), tolerance));
  CHECK_THAT(std::min(a.modulus_y, a.modulus_z),
             WithinRel(std::min(b.modulus_y, b.modulus_z), tolerance));
  CHECK_THAT(std::max(a.plastic_y, a.plastic_z),
             WithinRel(std::max(b.plastic_y, b.plastic_z), tolerance));
  CHECK_THAT(std::hypot(a.shear_center_y, a.shear_center_z),
             WithinRel(std::hypot(b.shear_center_y, b.shear_center_z), tolerance));
}

std::string problem_of(const Shape& shape) {
  try {
    require_valid(shape);
  } catch (const base::InputError& error) {
    return error.where().key + ": " + error.problem();
  }
  return "";
}

}  // namespace

TEST_CASE("turning a line of walls turns its principal axes only", "[sections][thin_wall]") {
  for (const ThinWalled& s : {hook(), cell()}) {
    const AreaProps before = area_props(s);
    for (const double angle : {0.3, 0.7, 1.2, 1.6, 2.9, -2.0}) {
      INFO(angle);
      const AreaProps after = area_props(turned(s, angle));
      check_same(after, before, 1e-9);
      CHECK_THAT(std::remainder(after.axes_angle - before.axes_angle - angle, base::kPi / 2.0),
                 WithinAbs(0.0, 1e-9));
      CHECK(std::abs(after.axes_angle) <= base::kPi / 4.0 + 1e-12);
    }
  }
}

TEST_CASE("dividing the walls or running backward changes nothing", "[sections][thin_wall]") {
  const Resultants load{.n = 2e3, .vy = 3e3, .vz = -4e3, .t = 50.0, .my = 200.0, .mz = -150.0};
  for (const ThinWalled& s : {hook(), cell()}) {
    check_same(area_props(divided(s)), area_props(s), 1e-9);
    check_same(area_props(backward(s)), area_props(s), 1e-9);
    const double stress = worst_point(s, load).von_mises;
    CHECK_THAT(worst_point(backward(s), load).von_mises, WithinRel(stress, 1e-9));
    // More places are looked at, so that the worst can only rise, and by little.
    const double more = worst_point(divided(s), load).von_mises;
    CHECK(more >= stress * (1.0 - 1e-9));
    CHECK(more <= stress * 1.03);
  }
}

TEST_CASE("the torsion constant of an open line is the sum of its strips",
          "[sections][thin_wall]") {
  double sum = 0.0;
  const ThinWalled s = hook();
  for (std::size_t i = 0; i < s.walls.size(); ++i) {
    const double length =
        std::hypot(s.points[i + 1][0] - s.points[i][0], s.points[i + 1][1] - s.points[i][1]);
    sum += length * std::pow(s.walls[i], 3) / 3.0;
  }
  CHECK_THAT(area_props(s).torsion, WithinRel(sum, 1e-12));
}

TEST_CASE("a closed line around a box is the rectangular tube", "[sections][thin_wall]") {
  const double t = 2 * mm;
  const double y = 20 * mm;
  const double z = 40 * mm;
  const ThinWalled line{
      .points = {{-y, -z}, {y, -z}, {y, z}, {-y, z}}, .walls = {t, t, t, t}, .closed = true};
  const RectangularTube tube{
      .depth = 2 * z + t, .width = 2 * y + t, .wall = t, .corner = 1.0001 * t};
  const AreaProps walls = area_props(line, 0.0);
  const AreaProps box = area_props(tube, 0.0);
  CHECK_THAT(walls.area, WithinRel(box.area, 0.01));
  CHECK_THAT(walls.iyy, WithinRel(box.iyy, 0.015));
  CHECK_THAT(walls.izz, WithinRel(box.izz, 0.015));
  CHECK_THAT(walls.modulus_y, WithinRel(box.modulus_y, 0.015));
  CHECK_THAT(walls.plastic_z, WithinRel(box.plastic_z, 0.015));
  CHECK_THAT(walls.torsion, WithinRel(box.torsion, 0.02));
  CHECK_THAT(walls.shear_y, WithinRel(box.shear_y, 0.03));
  CHECK_THAT(walls.shear_z, WithinRel(box.shear_z, 0.03));
  const Resultants load{.n = 2e3, .vy = 3e3, .vz = -4e3, .t = 150.0, .my = 900.0, .mz = -150.0};
  CHECK_THAT(worst_point(line, load).von_mises, WithinRel(worst_point(tube, load).von_mises, 0.04));
}

TEST_CASE("a boxed channel is the closed line of its walls", "[sections][thin_wall]") {
  const BoxedChannel boxed{
      .depth = 80 * mm, .width = 38 * mm, .web = 2 * mm, .flange = 2 * mm, .plate = 2 * mm};
  const RectangularTube tube{
      .depth = 80 * mm, .width = 40 * mm, .wall = 2 * mm, .corner = 2.0001 * mm};
  const AreaProps walls = area_props(boxed);
  CHECK_THAT(walls.centroid_y, WithinRel(20 * mm, 1e-9));
  CHECK_THAT(walls.shear_center_y, WithinAbs(0.0, 1e-9));
  CHECK_THAT(walls.iyy, WithinRel(area_props(tube).iyy, 0.015));
  CHECK_THAT(walls.torsion, WithinRel(area_props(tube).torsion, 0.02));
  CHECK(walls.torsion > 100.0 * area_props(Channel{80 * mm, 38 * mm, 2 * mm, 2 * mm}).torsion);
}

TEST_CASE("the shear center of two legs is where they meet", "[sections][thin_wall]") {
  const AreaProps p = area_props(Angle{.depth = 80 * mm, .width = 50 * mm, .wall = 4 * mm});
  const double c = std::cos(p.axes_angle);
  const double s = std::sin(p.axes_angle);
  CHECK_THAT(p.centroid_y + p.shear_center_y * c - p.shear_center_z * s, WithinRel(2 * mm, 1e-9));
  CHECK_THAT(p.centroid_z + p.shear_center_y * s + p.shear_center_z * c, WithinRel(2 * mm, 1e-9));
}

TEST_CASE("plastic moduli of a channel and an angle are those of rectangles",
          "[sections][thin_wall]") {
  // Two flanges and a web, symmetric about y.
  const AreaProps p =
      area_props(Channel{.depth = 100 * mm, .width = 50 * mm, .web = 5 * mm, .flange = 8 * mm});
  const double flanges = 2.0 * 50 * 8 * 46.0;
  const double web = 5.0 * 84 * 84 / 4.0;
  CHECK_THAT(p.plastic_y, WithinRel((flanges + web) * 1e-9, 1e-9));
  const double iyy = 50.0 * 1e6 / 12.0 - 45.0 * 84 * 84 * 84 / 12.0;
  CHECK_THAT(p.iyy, WithinRel(iyy * 1e-12, 1e-9));
  CHECK_THAT(p.modulus_y, WithinRel(iyy / 50.0 * 1e-9, 1e-9));
}

TEST_CASE("shapes that cannot exist say why", "[sections][thin_wall]") {
  CHECK(problem_of(Channel{0.1, 0.05, 0.05, 0.005}).rfind("web: 50 mm", 0) == 0);
  CHECK(problem_of(Channel{0.1, 0.05, 0.005, 0.05}).rfind("flange: 50 mm", 0) == 0);
  CHECK(problem_of(Angle{0.05, 0.04, 0.04}).rfind("wall: 40 mm", 0) == 0);
  CHECK(problem_of(BoxedChannel{0.1, 0.05, 0.005, 0.005, base::kUnset}).rfind("plate: no", 0) == 0);
  const auto line = [](ThinWalled s) { return problem_of(s); };
  ThinWalled s = hook();
  CHECK(line(s).empty());
  CHECK(line(cell()).empty());
  s.walls.pop_back();
  CHECK(line(s) == "walls: 3 thicknesses are given for 4 walls; give one for each, or one for all");
  s = hook();
  s.walls[1] = -1.0;
  CHECK(line(s).rfind("walls: -1000 mm", 0) == 0);
  s = hook();
  s.points[2][0] = std::nan("");
  CHECK(line(s).rfind("points: a point is not finite", 0) == 0);
  s = {.points = {{0, 0}, {1, 0}, {2, 0}}, .walls = {0.1, 0.1}, .closed = false};
  CHECK(line(s).rfind("points: the walls lie in one straight line", 0) == 0);
  s = {.points = {{0, 0}, {1, 0}, {0, 0.01}}, .walls = {0.1, 0.1}, .closed = false};
  CHECK(line(s).rfind("points: wall 2 folds back on wall 1", 0) == 0);
  s = {.points = {{0, 0}, {1, 0}, {1, 1}, {0.2, -1}}, .walls = {0.01, 0.01, 0.01}, .closed = false};
  CHECK(line(s).rfind("points: walls 1 and 3 cross", 0) == 0);
  s = {.points = {{0, 0}, {1, 0}, {1, 1}, {0, 0}}, .walls = {0.01, 0.01, 0.01}, .closed = false};
  CHECK(line(s).rfind("points: the line ends where it starts", 0) == 0);
  s = {.points = {{0, 0}, {1, 0}, {1, 0.05}, {0, 0.05}}, .walls = {0.1, 0.1, 0.1}, .closed = false};
  CHECK(line(s).rfind("walls: wall 2 is too short", 0) == 0);
  s = {.points = {{0, 0}, {0, 0}, {1, 0.05}}, .walls = {0.1, 0.1}, .closed = false};
  CHECK(line(s).rfind("points: wall 1 has no length", 0) == 0);
}

TEST_CASE("symmetric shapes keep their axes and their shear center", "[sections][thin_wall]") {
  const std::vector<Shape> shapes = {RoundBar{0.03}, RoundTube{0.05, 0.004},
                                     RectangularTube{0.06, 0.04, 0.003, 0.006}, FlatBar{0.06, 0.01},
                                     TwinPlate{0.1, 0.008, 0.05}};
  for (const Shape& shape : shapes) {
    const AreaProps p = area_props(shape);
    CHECK(p.axes_angle == 0.0);
    CHECK(p.shear_center_y == 0.0);
    CHECK(p.drawn_iyy == p.iyy);
    CHECK(p.drawn_iyz == 0.0);
    CHECK(p.plastic_y > p.modulus_y);
    CHECK_THAT(p.radius_y * p.radius_y * p.area, WithinRel(p.iyy, 1e-12));
    CHECK_THAT(p.mass_per_length(7850.0), WithinRel(7850.0 * p.area, 1e-12));
  }
}

}  // namespace thin_wall_test
