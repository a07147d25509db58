// Left and right are alike: a mirrored truck and a mirrored load give the same utilizations.
#include <map>
#include <utility>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace mirrored_design_test {
using studies_tests::read_case;

namespace {

using Place = std::pair<std::string, std::string>;  // part and check

std::map<Place, double> utilizations(const studies::Answer& answer) {
  std::map<Place, double> all;
  for (const checks::Finding& f : answer.findings) {
    REQUIRE(f.state != checks::State::undecided);
    all[{f.part, f.check}] = f.utilization();
  }
  return all;
}

/// A braced bracket on the left rail (side 1) or on the right one (side -1).
std::string link_on(double side) {
  return fmt::format(
      "title: link on one rail\n"
      "points:\n"
      "  link at frame: [60, {}, 500 mm]\n"
      "  link at axle: [30, {}, 420 mm]\n"
      "lateral_link:\n"
      "  frame_bolt: link at frame\n"
      "  axle_bolt: link at axle\n"
      "  tube: 45 x 8 mm E355\n"
      "  ends: weld-on bushing\n"
      "  bend: 20 mm off straight, forward\n"
      "bracket:\n"
      "  drop: 200 mm\n"
      "  plates: 2 of 10 mm S355\n"
      "  depth_at_rail: 120 mm\n"
      "  weld: 8 mm fillet, both sides of each plate\n"
      "  rail: boxed, 75 x 150 x 4 mm\n"
      "  welded_to: bottom and inner side\n"
      "  rail_stiffness: 60 kN m/rad\n"
      "brace:\n"
      "  tube: 38 x 4 mm E355\n"
      "  length: 850 mm\n"
      "  slope: 15 deg\n"
      "  far_end: welded to opposite rail\n"
      "  end_mount: 10 kN/mm\n"
      "forces:\n"
      "  push:\n"
      "    at: axle bolt\n"
      "    force_y: {} N\n",
      side * 430.0, side * -420.0, side * -9000.0);
}

/// A portal that is its own mirror image, pushed toward one side.
std::string portal(const std::string& knee, double push) {
  return fmt::format(
      "title: portal\n"
      "points:\n"
      "  left foot: [0, 1.0, 0 m]\n"
      "  right foot: [0, -1.0, 0 m]\n"
      "  left knee: [0, 1.0, 1.8 m]\n"
      "  right knee: [0, -1.0, 1.8 m]\n"
      "members:\n"
      "  left post:\n"
      "    from: left foot\n"
      "    to: left knee\n"
      "    section: 80 x 60 x 4 mm S355H\n"
      "  right post:\n"
      "    from: right foot\n"
      "    to: right knee\n"
      "    section: 80 x 60 x 4 mm S355H\n"
      "  beam:\n"
      "    from: left knee\n"
      "    to: right knee\n"
      "    section: 80 x 60 x 4 mm S355H\n"
      "supports:\n"
      "  left:\n"
      "    at: left foot\n"
      "  right:\n"
      "    at: right foot\n"
      "forces:\n"
      "  push:\n"
      "    at: {}\n"
      "    force_y: {} N\n"
      "    force_z: -5 kN\n"
      "    force_x: 300 N\n",
      knee, push);
}

/// The same part on the other side.
std::string other_side(const std::string& part) {
  if (part.rfind("left", 0) == 0) return "right" + part.substr(4);
  if (part.rfind("right", 0) == 0) return "left" + part.substr(5);
  return part;
}

}  // namespace

TEST_CASE("a bracket on the right rail is worth what it is on the left", "[studies]") {
  const auto left = utilizations(studies::check(read_case(link_on(1.0))));
  const auto right = utilizations(studies::check(read_case(link_on(-1.0))));
  REQUIRE(left.size() == right.size());
  REQUIRE(left.size() >= 5);
  for (const auto& [place, utilization] : left) {
    INFO(place.first << ", " << place.second);
    CHECK(right.at(place) == Approx(utilization).epsilon(1e-6));
  }
}

TEST_CASE("left and right loads use a symmetric frame alike", "[studies]") {
  const auto left = utilizations(studies::check(read_case(portal("left knee", -2000.0))));
  const auto right = utilizations(studies::check(read_case(portal("right knee", 2000.0))));
  REQUIRE(left.size() == right.size());
  for (const auto& [place, utilization] : left) {
    if (place.second == "frame stability") continue;  // which post names the mode is a tie
    INFO(place.first << ", " << place.second);
    CHECK(right.at({other_side(place.first), place.second}) == Approx(utilization).epsilon(1e-6));
  }
}

}  // namespace mirrored_design_test
