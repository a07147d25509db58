// The wall of a round tube under a tab. Strengths AISC 360-10 table K1.1, from memory.
#include "checks/tab_wall.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace tab_wall_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

constexpr double kOwn = 0.832;  // Qf at U = 0.4

/// A tube of 100 x 5 mm, Fy 350 MPa.
checks::TabWallInput tube(bool across, double width) {
  return {.outside = 0.100,
          .wall = 0.005,
          .yield = 350e6,
          .tensile = 480e6,
          .across = across,
          .width = width,
          .height = 0.040,
          .force = 10e3,
          .required = 2.0};
}

}  // namespace

// By hand from the formulas, without Qf: 62.56 kN along (120 mm), 93.63 kN across (60 mm).
TEST_CASE("a wall carries a plate along it and across it by K1.1", "[checks][tab wall]") {
  CHECK_THAT(checks::tab_wall_strength(tube(false, 0.120)).pull, WithinRel(kOwn * 62.56e3, 2e-4));
  CHECK_THAT(checks::tab_wall_strength(tube(true, 0.060)).pull, WithinRel(kOwn * 93.63e3, 2e-4));
  const checks::TabWallStrength s = checks::tab_wall_strength(tube(false, 0.120));
  CHECK_THAT(s.moment, WithinRel(0.8 * 0.120 * s.pull, 1e-12));
  CHECK_THAT(s.edge, WithinRel(2.0 * 0.005 * 350e6 / std::sqrt(3.0), 1e-12));
}

TEST_CASE("the tab wall's verdict turns at its limit and its lines add up", "[checks][tab wall]") {
  for (const bool across : {false, true}) {
    checks::TabWallInput in = tube(across, across ? 0.060 : 0.120);
    in.pull = 2e3;
    const double limit = 1.0 / checks::tab_wall(in).utilization();
    const double one = in.force;
    for (const double u : {0.98, 1.02}) {
      in.force = u * limit * one;
      in.pull = u * limit * 2e3;
      const checks::Finding f = checks::tab_wall(in);
      CHECK(f.state == (u < 1.0 ? State::within : State::over));
      CHECK(worked::equations_that_hold(f) == static_cast<int>(f.lines.size()));
    }
  }
}

TEST_CASE("a tab wall outside the range is not decided", "[checks][tab wall]") {
  const auto reason = [](double wall, double width, bool across) {
    checks::TabWallInput in = tube(across, width);
    in.wall = wall;
    return checks::tab_wall(in).reason;
  };
  CHECK(reason(0.00201, 0.120, false).empty());
  CHECK_THAT(reason(0.00199, 0.120, false), Contains("outside the method"));
  CHECK(reason(0.0099, 0.120, false).empty());
  CHECK_THAT(reason(0.0101, 0.120, false), Contains("outside the method"));
  CHECK(reason(0.005, 0.021, true).empty());
  CHECK_THAT(reason(0.005, 0.019, true), Contains("0.2 to 1"));
  CHECK(reason(0.005, 0.099, true).empty());
  CHECK_THAT(reason(0.005, 0.101, true), Contains("0.2 to 1"));
  CHECK(reason(0.005, 0.399, false).empty());
  CHECK_THAT(reason(0.005, 0.401, false), Contains("up to 4"));
  checks::TabWallInput in = tube(false, 0.120);
  in.yield = 359e6;
  CHECK(checks::tab_wall(in).reason.empty());
  in.yield = 361e6;
  CHECK_THAT(checks::tab_wall(in).reason, Contains("360 MPa"));
  in = tube(false, 0.120);
  in.pull = base::kUnset;
  CHECK_THAT(checks::tab_wall(in).reason, Contains("second tab"));
}

TEST_CASE("a thicker wall or a wider tab is never worse for the wall", "[checks][tab wall]") {
  for (const bool across : {false, true}) {
    checks::TabWallInput in = tube(across, 0.050);
    double last = checks::tab_wall(in).utilization();
    for (int i = 0; i < 6; ++i) {
      (i % 2 == 0 ? in.wall : in.width) *= 1.1;
      const double now = checks::tab_wall(in).utilization();
      CHECK(now < last);
      last = now;
    }
  }
}

}  // namespace tab_wall_test
