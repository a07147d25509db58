#include "checks/wall_slenderness.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"

namespace wall_slenderness_test {
using Catch::Matchers::WithinRel;

namespace {

constexpr double kElastic = 200e9;
constexpr double kYield = 350e6;

sections::RectangularTube box(double depth, double width, double wall) {
  return {.depth = depth, .width = width, .wall = wall, .corner = wall};
}

}  // namespace

// AISC 360-22 E7, from memory; worked by hand: b/t 47, Fn 300 MPa, 4 figures.
TEST_CASE("a flat wall that buckles counts with part of its width", "[checks][wall]") {
  const sections::RectangularTube tube = box(0.150, 0.060, 0.003);
  const checks::EffectiveArea area = checks::effective_area(tube, kElastic, kYield, 300e6);
  REQUIRE(area.lines.size() == 3);
  CHECK_THAT(area.lines[0].values.back().si, WithinRel(337.9e6, 2e-4));
  CHECK_THAT(area.lines[1].values.back().si, WithinRel(0.1179, 4e-4));
  const double gross = sections::area_props(tube).area;
  CHECK_THAT(area.ratio, WithinRel(1.0 - 2.0 * (0.141 - 0.1179) * 0.003 / gross, 1e-3));
}

TEST_CASE("all of a wall counts up to lambda_r sqrt(Fy/Fn)", "[checks][wall]") {
  // 1.40 sqrt(E/Fy) sqrt(Fy/Fn) = 36.15 at Fn 300 MPa
  const auto ratio = [](double slenderness) {
    return checks::effective_area(box(0.003 * (slenderness + 3.0), 0.060, 0.003), kElastic, kYield,
                                  300e6)
        .ratio;
  };
  CHECK(ratio(36.1) == 1.0);
  CHECK(ratio(36.8) < 1.0);
  double last = 1.0;
  for (double slenderness = 37.0; slenderness < 200.0; slenderness *= 1.1) {
    CHECK(ratio(slenderness) < last);
    last = ratio(slenderness);
  }
}

TEST_CASE("a shape without walls has none that is slender", "[checks][wall]") {
  for (const sections::Shape& shape :
       {sections::Shape(sections::RoundBar{.diameter = 0.050}),
        sections::Shape(sections::FlatBar{.depth = 0.500, .width = 0.002}),
        sections::Shape(sections::TwinPlate{.depth = 0.500, .thickness = 0.002, .gap = 0.050})}) {
    CHECK_FALSE(checks::has_slender_wall(shape, kElastic, kYield));
    CHECK(checks::wall_words(shape, kElastic, kYield).empty());
    CHECK(checks::effective_area(shape, kElastic, kYield, kYield).ratio == 1.0);
  }
}

TEST_CASE("the words say which wall is nearest to its limit", "[checks][wall]") {
  CHECK_THAT(
      checks::wall_words(sections::RoundTube{.outside = 0.050, .wall = 0.004}, kElastic, kYield),
      Catch::Contains("D/t of 12.5 is not over 0.11 E/Fy = 62.9"));
  const std::string thin = checks::wall_words(box(0.150, 0.060, 0.003), kElastic, kYield);
  CHECK_THAT(thin, Catch::Contains("upright wall's b/t of 47 is over 1.40 sqrt(E/Fy) = 33.5"));
}

// AISC 360-22 table B4.1a (read in a handbook on the 2005 edition): 0.56 sqrt(E/Fy) for flanges of
// channels, 0.45 for legs of angles.
TEST_CASE("slender walls of an open section count in part", "[checks][wall]") {
  const double root = std::sqrt(kElastic / kYield);
  const auto ratio = [&](const sections::Shape& shape) {
    return checks::effective_area(shape, kElastic, kYield, kYield).ratio;
  };
  const auto leg = [&](double limit) {
    return ratio(sections::Angle{.depth = 0.05, .width = 0.04, .wall = 0.05 / (limit * root)});
  };
  CHECK(leg(0.46) < 1.0);
  CHECK(leg(0.44) == 1.0);
  const auto flange = [&](double limit) {
    return ratio(sections::Channel{
        .depth = 0.1, .width = 0.05, .web = 0.01, .flange = 0.05 / (limit * root)});
  };
  CHECK(flange(0.57) < 1.0);
  CHECK(flange(0.55) == 1.0);
}

}  // namespace wall_slenderness_test
