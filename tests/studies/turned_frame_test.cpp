// What a frame is worth does not depend on which way it stands in the shop.
#include <cmath>
#include <map>
#include <utility>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace turned_frame_test {
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

/// A portal on round posts with a load and a swing off its middle, turned about the vertical.
std::string portal(double degrees) {
  const double c = std::cos(degrees * 3.14159265358979323846 / 180.0);
  const double s = std::sin(degrees * 3.14159265358979323846 / 180.0);
  const auto point = [&](double x, double y, double z) {
    return fmt::format("[{:.15f}, {:.15f}, {:.15f} m]", c * x - s * y, s * x + c * y, z);
  };
  return fmt::format(
      "title: portal\n"
      "points:\n"
      "  left foot: {}\n"
      "  right foot: {}\n"
      "  left knee: {}\n"
      "  right knee: {}\n"
      "  hook: {}\n"
      "members:\n"
      "  left post:\n"
      "    from: left foot\n"
      "    to: left knee\n"
      "    section: 89 x 5 mm S355H\n"
      "  right post:\n"
      "    from: right foot\n"
      "    to: right knee\n"
      "    section: 89 x 5 mm S355H\n"
      "  left beam:\n"
      "    from: left knee\n"
      "    to: hook\n"
      "    section: 100 x 60 x 4 mm S355H\n"
      "  right beam:\n"
      "    from: hook\n"
      "    to: right knee\n"
      "    section: 100 x 60 x 4 mm S355H\n"
      "supports:\n"
      "  left:\n"
      "    at: left foot\n"
      "  right:\n"
      "    at: right foot\n"
      "forces:\n"
      "  load:\n"
      "    at: hook\n"
      "    force_x: {:.12f} N\n"
      "    force_y: {:.12f} N\n"
      "    force_z: -8 kN\n",
      point(0, 1.2, 0), point(0, -1.2, 0), point(0, 1.2, 2.2), point(0, -1.2, 2.2),
      point(0, 0.3, 2.2), c * 500.0 - s * 200.0, s * 500.0 + c * 200.0);
}

}  // namespace

TEST_CASE("a frame turned by 30 degrees has the same utilizations", "[studies]") {
  const auto straight = utilizations(studies::check(read_case(portal(0.0))));
  const auto turned = utilizations(studies::check(read_case(portal(30.0))));
  REQUIRE(straight.size() == turned.size());
  REQUIRE(straight.size() >= 8);
  for (const auto& [place, utilization] : straight) {
    INFO(place.first << ", " << place.second);
    CHECK(turned.at(place) == Approx(utilization).epsilon(1e-5));
  }
}

}  // namespace turned_frame_test
