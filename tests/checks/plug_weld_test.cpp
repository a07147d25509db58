// Rosettes around a tube. The even ring of pins is statics, own check, no source; strengths and
// sizes AISC 360 J2.3, from memory.
#include "checks/plug_weld.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/tube_net_section.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace plug_weld_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

/// Four of 12 mm in a tube of 50 x 4 mm.
checks::RosetteInput four() {
  return {.count = 4,
          .hole = 0.012,
          .outside = 0.050,
          .wall = 0.004,
          .filler_tensile = 482.633e6,
          .required = 2.0};
}

}  // namespace

TEST_CASE("rosettes share a pull, and a ring of pins a moment, torque and shear",
          "[checks][plug]") {
  const auto demand = [](double axial, double across, double torque, double bending) {
    checks::RosetteInput in = four();
    in.axial = axial;
    in.across = across;
    in.torque = torque;
    in.bending = bending;
    return checks::rosettes(in).demand;
  };
  CHECK_THAT(demand(20e3, 0, 0, 0), WithinRel(5e3, 1e-12));
  // Two pins 50 mm apart hold a moment; the two beside them lie on its axis.
  CHECK_THAT(demand(0, 0, 0, 100.0), WithinRel(100.0 / 0.050, 1e-12));
  CHECK_THAT(demand(0, 0, 100.0, 0), WithinRel(100.0 / (4 * 0.025), 1e-12));
  CHECK_THAT(demand(0, 1e3, 0, 0), WithinRel(500.0, 1e-12));
  CHECK_THAT(demand(20e3, 0, 100.0, 0), WithinRel(std::hypot(5e3, 1e3), 1e-12));
}

TEST_CASE("rosettes are decided with holes as J2.3b has them, and not outside", "[checks][plug]") {
  const auto reason = [](double hole, double outside) {
    checks::RosetteInput in = four();
    in.axial = 1e3;
    in.hole = hole;
    in.outside = outside;
    return checks::rosettes(in).reason;
  };
  // 4 mm wall: 12 to 15 mm.
  CHECK(reason(0.0121, 0.050).empty());
  CHECK_THAT(reason(0.0119, 0.050), Contains("outside the method"));
  CHECK(reason(0.0149, 0.050).empty());
  CHECK_THAT(reason(0.0151, 0.050), Contains("outside the method"));
  CHECK(reason(0.012, 0.0361).empty());
  CHECK_THAT(reason(0.012, 0.0359), Contains("third of the tube"));
}

TEST_CASE("rosettes turn over at their limit and their lines add up", "[checks][plug]") {
  checks::RosetteInput in = four();
  const double holds = 4.0 * 0.60 * 482.633e6 * base::kPi / 4.0 * 0.012 * 0.012;
  for (const double u : {0.98, 1.02}) {
    in.axial = u * holds / 2.0;
    const checks::Finding f = checks::rosettes(in);
    CHECK(f.state == (u < 1.0 ? checks::State::within : checks::State::over));
    CHECK(worked::equations_that_hold(f) == static_cast<int>(f.lines.size()));
  }
  in.count = 5;
  CHECK(checks::rosettes(in).state == checks::State::within);
}

// By hand: A = pi 46 x 4 = 578.05 mm2, less 4 x (12 + 1.5875) x 4 = 217.4; I = 154 051 mm4, less
// 2 x 13.5875 x 4 x 23^2 = 57 502. Own check, no source.
TEST_CASE("what holes leave of a tube is pulled and bent", "[checks][plug]") {
  checks::TubeNetSectionInput in{.outside = 0.050,
                                 .wall = 0.004,
                                 .holes = 4,
                                 .hole = 0.012,
                                 .tensile = 400e6,
                                 .axial = 36.065e3,
                                 .required = 2.0};
  CHECK_THAT(checks::tube_net_section(in).demand, WithinRel(100e6, 1e-4));
  in.bending = 386.2;
  const checks::Finding both = checks::tube_net_section(in);
  CHECK_THAT(both.demand, WithinRel(200e6, 1e-4));
  CHECK(worked::equations_that_hold(both) == static_cast<int>(both.lines.size()));
  for (const double u : {0.98, 1.02}) {
    checks::TubeNetSectionInput loaded = in;
    loaded.axial *= u;
    loaded.bending *= u;
    CHECK(checks::tube_net_section(loaded).state ==
          (u < 1.0 ? checks::State::within : checks::State::over));
  }
  checks::TubeNetSectionInput thicker = in;
  thicker.wall = 0.005;
  CHECK(checks::tube_net_section(thicker).utilization() < both.utilization());
  in.holes = 3;
  CHECK(checks::tube_net_section(in).utilization() < both.utilization());
  in.holes = 5;
  in.hole = 0.0128;  // 5 x 14.39 x 4 = 287.8 of 578
  CHECK(checks::tube_net_section(in).state != checks::State::undecided);
  in.hole = 0.0130;
  CHECK(checks::tube_net_section(in).state == checks::State::undecided);
}

}  // namespace plug_weld_test
