#include "checks/local_buckling.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/bending_strength.hpp"
#include "sections/area_props.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace local_buckling_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

/// A tube of 300 x 1.6 mm, E 200 GPa, Fy 350 MPa: D/t 187.5 over 0.31 E/Fy = 177.1.
checks::LocalBucklingInput thin_tube(const sections::Resultants& r) {
  return {.shape = sections::RoundTube{.outside = 0.300, .wall = 0.0016},
          .elastic = 200e9,
          .yield = 350e6,
          .strength_basis = "specified minimum",
          .length = 2.0,
          .resultants = r,
          .required = 1.5};
}

}  // namespace

// AISC 360-22 E7 and F8, from memory, by hand: Mn 39.18 kN m; Ae/Ag = 0.038 * 571.4 / 187.5 + 2/3.
TEST_CASE("compression and bending of a thin tube add up", "[checks][wall]") {
  const double area = base::kPi / 4.0 * (0.300 * 0.300 - 0.2968 * 0.2968);
  const double share = 0.038 * 200e9 / (350e6 * 187.5) + 2.0 / 3.0;
  const checks::Finding f = checks::local_buckling(thin_tube({.n = -60e3, .my = 6e3, .mz = 8e3}));
  CHECK_THAT(f.demand, WithinRel(60e3 / (350e6 * share * area) + 10e3 / 39.18e3, 3e-4));
  CHECK(worked::equations_that_hold(f) == 6);
  CHECK_THAT(f.source, Catch::Contains("from memory"));
}

TEST_CASE("the thin wall verdict turns at its limit", "[checks][wall]") {
  const auto state = [](double moment) {
    return checks::local_buckling(thin_tube({.my = moment})).state;
  };
  CHECK(state(0.98 * 39.18e3 / 1.5) == State::within);
  CHECK(state(1.02 * 39.18e3 / 1.5) == State::over);
}

TEST_CASE("tension takes nothing off, and no load is no demand", "[checks][wall]") {
  CHECK(checks::local_buckling(thin_tube({.n = 100e3, .my = 10e3})).demand ==
        checks::local_buckling(thin_tube({.my = 10e3})).demand);
  CHECK(checks::local_buckling(thin_tube({})).demand == 0.0);
  CHECK(checks::local_buckling(thin_tube({})).state == State::within);
}

TEST_CASE("a wall too thin for the methods is not decided once it is loaded", "[checks][wall]") {
  checks::LocalBucklingInput in = thin_tube({.n = -60e3});
  in.shape = sections::RoundTube{.outside = 0.520, .wall = 0.002};  // 260 over 0.45 E/Fy = 257
  CHECK(checks::local_buckling(in).state == State::undecided);
  CHECK_THAT(checks::local_buckling(in).reason, Catch::Contains("outside the method"));
  CHECK(std::isnan(checks::local_buckling(in).demand));
  in.resultants = {.my = 10e3};
  CHECK(checks::local_buckling(in).state == State::undecided);
  in.resultants = {.n = 60e3};
  CHECK(checks::local_buckling(in).state == State::within);
}

TEST_CASE("a rectangular tube adds up its two moments", "[checks][wall]") {
  checks::LocalBucklingInput in = thin_tube({.n = -20e3, .my = 2e3, .mz = 3e3});
  in.shape =
      sections::RectangularTube{.depth = 0.070, .width = 0.150, .wall = 0.003, .corner = 0.006};
  const checks::Finding f = checks::local_buckling(in);
  const checks::BendingStrength nominal =
      checks::bending_strength({in.shape, in.elastic, in.yield, in.length});
  const double bending = 2e3 / nominal.y.value + 3e3 / nominal.z.value;
  CHECK(f.demand > bending + 20e3 / (350e6 * sections::area_props(in.shape).area));
  CHECK(worked::equations_that_hold(f) == static_cast<int>(f.lines.size()));
}

}  // namespace local_buckling_test
