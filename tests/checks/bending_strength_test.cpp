#include "checks/bending_strength.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace bending_strength_test {
using Catch::Matchers::WithinRel;

namespace {

/// E 200 GPa, Fy 350 MPa.
checks::BendingStrength strength(const sections::Shape& shape, double length = 1.0) {
  return checks::bending_strength({shape, 200e9, 350e6, length});
}

/// A tube of sharp corners, as hand calculations take it.
sections::RectangularTube sharp_tube(double depth, double width, double wall) {
  return {.depth = depth, .width = width, .wall = wall, .corner = 0.0};
}

bool lines_hold(const checks::NominalMoment& nominal) {
  checks::Finding f;
  f.lines = nominal.lines;
  return worked::equations_that_hold(f, 1e-9) == static_cast<int>(f.lines.size());
}

}  // namespace

// AISC 360-22 F8, from memory; worked by hand, 4 figures: compact, noncompact and slender walls.
TEST_CASE("a round tube follows F8 through all three kinds of wall", "[checks][bending]") {
  const auto tube = [](double outside, double wall) {
    return strength(sections::RoundTube{.outside = outside, .wall = wall}).y;
  };
  CHECK_THAT(tube(0.050, 0.005).value, WithinRel(3.558e3, 2e-4));
  CHECK_THAT(tube(0.200, 0.004).value, WithinRel(51.35e3, 2e-4));
  CHECK_THAT(tube(0.300, 0.0016).value, WithinRel(39.18e3, 2e-4));
  CHECK(lines_hold(tube(0.050, 0.005)));
  CHECK(lines_hold(tube(0.200, 0.004)));
  CHECK(lines_hold(tube(0.300, 0.0016)));
}

TEST_CASE("a round tube past 0.45 E/Fy has no nominal moment", "[checks][bending]") {
  const double limit = 0.45 * 200e9 / 350e6;
  const auto of = [&](double share) {
    return strength(sections::RoundTube{.outside = 0.002 * limit * share, .wall = 0.002}).z;
  };
  CHECK(of(0.98).value > 0.0);
  CHECK(of(0.98).reason.empty());
  CHECK(std::isnan(of(1.02).value));
  CHECK_THAT(of(1.02).reason, Catch::Contains("outside the method"));
}

// AISC 360-22 F7, from memory; worked by hand with sharp corners, 4 figures. Bent about the axis
// along which they are 130 and 150 mm wide.
TEST_CASE("a rectangular tube loses to F7 what its compressed wall cannot hold",
          "[checks][bending]") {
  const checks::NominalMoment noncompact = strength(sharp_tube(0.070, 0.130, 0.004)).y;
  CHECK_THAT(noncompact.value, WithinRel(13.98e3, 4e-4));
  CHECK(noncompact.lines.size() == 2);
  CHECK(lines_hold(noncompact));
  const checks::NominalMoment slender = strength(sharp_tube(0.070, 0.150, 0.004)).y;
  CHECK_THAT(slender.value, WithinRel(14.46e3, 4e-4));
  CHECK(lines_hold(slender));
  const checks::NominalMoment stocky = strength(sharp_tube(0.070, 0.070, 0.005)).y;
  CHECK(stocky.lines.size() == 1);
}

TEST_CASE("a web past 5.70 sqrt(E/Fy) has no nominal moment", "[checks][bending]") {
  const double limit = 5.70 * std::sqrt(200e9 / 350e6);
  const auto of = [&](double share) {
    const double wall = 0.002;
    return strength(sharp_tube(wall * (share * limit + 3.0), 0.040, wall)).y;
  };
  CHECK(of(0.98).value > 0.0);
  CHECK(std::isnan(of(1.02).value));
}

// AISC 360-22 F11, from memory; worked by hand, 4 figures: flat bar 12 x 80.
TEST_CASE("a flat bar on edge gives sideways over a long span", "[checks][bending]") {
  const sections::FlatBar bar = {.depth = 0.080, .width = 0.012};
  const checks::NominalMoment inelastic = strength(bar, 0.4).y;
  CHECK_THAT(inelastic.value, WithinRel(6.332e3, 2e-4));
  CHECK_THAT(inelastic.lines.front().values.back().si, WithinRel(6.720e3, 2e-4));
  CHECK(lines_hold(inelastic));
  const checks::NominalMoment elastic = strength(bar, 2.5).y;
  CHECK_THAT(elastic.value, WithinRel(3.502e3, 2e-4));
  CHECK(lines_hold(elastic));
  CHECK(strength(bar, 2.5).z.lines.size() == 1);  // lying flat it cannot
  CHECK(strength(bar, 0.08).y.lines.size() == 1);
  const sections::TwinPlate pair = {.depth = 0.080, .thickness = 0.012, .gap = 0.050};
  CHECK_THAT(strength(pair, 2.5).y.value, WithinRel(2.0 * 3.502e3, 2e-4));
}

TEST_CASE("a round bar stops at 1.6 Fy S", "[checks][bending]") {
  const checks::NominalMoment bar = strength(sections::RoundBar{.diameter = 0.050}).y;
  CHECK_THAT(bar.value, WithinRel(1.6 * 350e6 * base::kPi * std::pow(0.050, 3) / 32.0, 1e-9));
  CHECK(lines_hold(bar));
}

// AISC 360-22 F7.4, from memory; Lp and Lr worked by hand: a tube of 150 x 70 x 4 mm, 3 figures.
TEST_CASE("a tall tube gives sideways only over a very long span", "[checks][bending]") {
  const auto tall = [](double length) {
    return strength(sharp_tube(0.150, 0.070, 0.004), length).y;
  };
  CHECK(tall(2.0).lines.size() == 1);
  const checks::NominalMoment longer = tall(10.0);
  REQUIRE(longer.lines.size() == 2);
  CHECK_THAT(longer.lines[1].values[3].si, WithinRel(2.07, 5e-3));
  CHECK_THAT(longer.lines[1].values[4].si, WithinRel(56.7, 5e-3));
  CHECK(lines_hold(longer));
  CHECK(tall(60.0).value < 0.7 * tall(2.0).value);
  CHECK(strength(sharp_tube(0.070, 0.150, 0.004), 60.0).z.lines.size() == 2);
}

TEST_CASE("a thinner wall or a longer span never makes a section stronger", "[checks][bending]") {
  double last = 1e300;
  for (double wall = 0.008; wall > 0.0012; wall *= 0.97) {
    const double tube = strength(sections::RoundTube{.outside = 0.300, .wall = wall}).y.value;
    CHECK(tube < last);
    last = tube;
  }
  last = 1e300;
  for (double wall = 0.006; wall > 0.0008; wall *= 0.97) {
    const double box = strength(sharp_tube(0.080, 0.120, wall)).y.value;
    CHECK(box < last);
    last = box;
  }
  last = 1e300;
  for (double length = 0.05; length < 5.0; length *= 1.1) {
    const double bar = strength(sections::FlatBar{.depth = 0.080, .width = 0.012}, length).y.value;
    CHECK(bar <= last);
    last = bar;
  }
}

TEST_CASE("an angle's legs yield first or buckle, and over a long span it gives sideways",
          "[checks][bending]") {
  // AISC 360-22 F10.3, from memory: legs up to 0.83 sqrt(E/Fy) = 19.9 yield first.
  const sections::Angle stocky = {.depth = 0.050, .width = 0.050, .wall = 0.005};
  CHECK(strength(stocky, 0.3).y.lines.size() == 1);
  const sections::Angle thin = {.depth = 0.050, .width = 0.050, .wall = 0.0024};
  const checks::NominalMoment leg = strength(thin, 0.1).y;
  REQUIRE(leg.lines.size() == 2);
  CHECK(lines_hold(leg));
  const double root = std::sqrt(350e6 / 200e9);
  CHECK_THAT(leg.value / leg.lines[0].values.back().si,
             WithinRel(2.43 - 1.72 * 50.0 / 2.4 * root, 1e-9));
  // F10-4, from memory, of even legs: 9/8 E A rz t / Lb, its 9/8 rounded from pi / sqrt(7.8).
  const sections::AreaProps p = sections::area_props(stocky);
  const double least = std::min(p.radius_y, p.radius_z);
  CHECK_THAT(checks::sideways_moment(200e9, p.area * least * least, p.torsion, 3.0, 0.0),
             WithinRel(9.0 / 8.0 * 200e9 * p.area * least * 0.005 / 3.0, 5e-3));
  const checks::BendingStrength longer = strength(stocky, 6.0);
  CHECK(std::max(longer.y.lines.size(), longer.z.lines.size()) == 2);
  CHECK(std::min(longer.y.lines.size(), longer.z.lines.size()) == 1);
  CHECK(lines_hold(longer.y));
  CHECK(lines_hold(longer.z));
}

// AISC 360-22 F2 and F6, from memory; worked by hand.
TEST_CASE("a channel is plastic over a short span and gives sideways over a long one",
          "[checks][bending]") {
  const sections::Channel channel = {.depth = 0.100, .width = 0.050, .web = 0.006, .flange = 0.008};
  const checks::NominalMoment stocky = strength(channel, 0.5).y;
  CHECK_THAT(stocky.value, WithinRel(350e6 * 47.384e-6, 1e-4));
  CHECK(stocky.lines.size() == 1);
  double last = stocky.value;
  std::size_t lowered = 0;
  for (double length = 0.6; length < 12.0; length *= 1.15) {
    const checks::NominalMoment m = strength(channel, length).y;
    CHECK(m.value <= last * (1.0 + 1e-9));
    CHECK(lines_hold(m));
    if (m.lines.size() == 2) ++lowered;
    last = m.value;
  }
  CHECK(lowered > 5);
  // Beyond Lr it is the elastic moment, pi / L sqrt(E Iz G J + (pi E / L)^2 Iz Cw) (Timoshenko and
  // Gere, sec. 6.2, from memory); F2 rounds G to E / 2.6 and pi^2 / 2 x 2.6 to 0.078's inverse.
  const sections::AreaProps p = sections::area_props(channel);
  const double warped =
      std::pow(base::kPi * 200e9 / 12.0, 2) * p.izz * checks::channel_warping(channel);
  CHECK_THAT(
      strength(channel, 12.0).y.value,
      WithinRel(base::kPi / 12.0 * std::sqrt(200e9 * p.izz * 200e9 / 2.6 * p.torsion + warped),
                0.01));
  // Along the flanges: at most 1.6 Fy S.
  CHECK_THAT(strength(channel).z.value, WithinRel(1.6 * 350e6 * p.modulus_z, 1e-9));
}

TEST_CASE("a channel's flange decides whether it is plastic, yields or is outside the method",
          "[checks][bending]") {
  const double root = std::sqrt(200e9 / 350e6);
  const auto of = [&](double slenderness) {
    return strength(
        sections::Channel{
            .depth = 0.100, .width = slenderness * root * 0.004, .web = 0.004, .flange = 0.004},
        0.05);
  };
  const auto shape_factor = [&](double slenderness) {
    const sections::AreaProps p = sections::area_props(sections::Channel{
        .depth = 0.100, .width = slenderness * root * 0.004, .web = 0.004, .flange = 0.004});
    return of(slenderness).y.value / (350e6 * p.modulus_y);
  };
  CHECK(shape_factor(0.37) > 1.1);
  CHECK_THAT(shape_factor(0.39), WithinRel(1.0, 1e-9));
  CHECK_THAT(shape_factor(0.55), WithinRel(1.0, 1e-9));
  CHECK_THAT(of(0.57).y.reason, Catch::Contains("outside the method"));
  // F6: along the flanges the plastic moment falls in a straight line to 0.7 Fy S.
  CHECK(of(0.99).z.value > 0.0);
  CHECK(lines_hold(of(0.80).z));
  CHECK(std::isnan(of(1.01).z.value));
}

TEST_CASE("an open line of walls gives sideways over a long span, more so the less even it is",
          "[checks][bending]") {
  const sections::ThinWalled hat = {
      .points =
          {{-0.045, 0.0}, {-0.025, 0.0}, {-0.025, 0.05}, {0.025, 0.05}, {0.025, 0.0}, {0.045, 0.0}},
      .walls = {0.004, 0.004, 0.004, 0.004, 0.004},
      .closed = false};
  const checks::BendingStrength brief = strength(hat, 0.02);
  sections::ThinWalled thick = hat;
  for (double& wall : thick.walls) wall = 0.010;
  CHECK(strength(thick, 0.02).y.lines.size() == 1);
  const checks::BendingStrength slender = strength(hat, 4.0);
  CHECK(slender.y.lines.size() == 2);
  CHECK(lines_hold(slender.y));
  CHECK(lines_hold(slender.z));
  CHECK(slender.y.value < brief.y.value);
  CHECK(checks::sideways_moment(200e9, 1e-7, 1e-9, 2.0, 0.05) <
        checks::sideways_moment(200e9, 1e-7, 1e-9, 2.0, 0.0));
  sections::ThinWalled thin = hat;
  for (double& wall : thin.walls) wall = 0.0008;
  CHECK_THAT(strength(thin, 0.02).y.reason, Catch::Contains("outside the method"));
}

}  // namespace bending_strength_test
