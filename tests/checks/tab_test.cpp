#include "checks/tab.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/tab_root.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace tab_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

/// 6 mm of S275, M16 in a hole of 17 mm, 25 mm to the edges.
checks::TabInput tab_of(double force) {
  return {.plate = {.thickness = 0.006,
                    .bolt = 0.016,
                    .hole = 0.017,
                    .ahead = 0.025,
                    .beside = 0.025,
                    .yield = 275e6,
                    .tensile = 410e6},
          .plates = 1,
          .force = force,
          .required = 2.0};
}

}  // namespace

// Hand calculation with ASME BTH-1 3-3.3 and N_d = 2 (formulas read in a page of the 2008 edition):
// 27.86, 24.50, 28.05 and 16.50 kN; twice that with N_d = 1.
TEST_CASE("a tab has the strengths of BTH-1", "[checks][tab]") {
  const checks::EyeStrengths s = checks::eye_strengths(tab_of(1.0).plate);
  CHECK_THAT(s.bth_tension, WithinRel(2.0 * 27.86e3, 3e-4));
  CHECK_THAT(s.bth_splitting, WithinRel(2.0 * 24.50e3, 3e-4));
  CHECK_THAT(s.bth_shear, WithinRel(2.0 * 28.05e3, 3e-4));
  CHECK_THAT(s.bth_bearing, WithinRel(2.0 * 16.50e3, 3e-4));
}

// ASME BTH-1 3-3.3 at N_d = 1 (formulas read) by hand: 6 mm, pin 16 in a hole of 16.5, 25 mm to the
// edges, 250 and 400 MPa; bearing rules.
TEST_CASE("of a tab on a snug pin bearing rules", "[checks][tab]") {
  const checks::EyeStrengths s = checks::eye_strengths({.thickness = 0.006,
                                                        .bolt = 0.016,
                                                        .hole = 0.0165,
                                                        .ahead = 0.025,
                                                        .beside = 0.025,
                                                        .yield = 250e6,
                                                        .tensile = 400e6});
  CHECK_THAT(s.bth_tension, WithinRel(59.5e3, 1e-3));
  CHECK_THAT(s.bth_splitting, WithinRel(49.6e3, 1e-3));
  CHECK_THAT(s.bth_shear, WithinRel(55.9e3, 1e-3));
  CHECK_THAT(s.bth_bearing, WithinRel(30.0e3, 1e-3));
}

TEST_CASE("the tab's verdict turns at its limit and its lines add up", "[checks][tab]") {
  const double holds = checks::tab(tab_of(1.0)).capacity;
  CHECK_THAT(holds, WithinRel(33.0e3, 1e-3));  // bearing of BTH-1
  CHECK(checks::tab(tab_of(0.98 * holds / 2.0)).state == State::within);
  CHECK(checks::tab(tab_of(1.02 * holds / 2.0)).state == State::over);
  CHECK(worked::equations_that_hold(checks::tab(tab_of(5e3))) >= 10);
}

// n^2 + 4 (e / t) n - 1 = 0 of a plastic rectangle: 0.6180 at e / t = 0.25. Statics, no source.
TEST_CASE("a force off the plate's middle takes from a tab", "[checks][tab]") {
  checks::TabInput in = tab_of(5e3);
  const double straight = checks::tab(in).capacity;
  in.off = 0.25 * in.plate.thickness;
  CHECK_THAT(checks::tab(in).capacity / straight, WithinRel(0.6180, 1e-4));
  CHECK(worked::equations_that_hold(checks::tab(in)) >= 11);
  in.off = base::kUnset;
  CHECK(checks::tab(in).state == State::undecided);
}

TEST_CASE("a tab is decided up to 690 MPa of yield strength", "[checks][tab]") {
  checks::TabInput in = tab_of(5e3);
  in.plate.tensile = 800e6;
  in.plate.yield = 689e6;
  CHECK(checks::tab(in).state == State::within);
  in.plate.yield = 691e6;
  CHECK(checks::tab(in).state == State::undecided);
}

TEST_CASE("a hole that leaves nothing beside it is not decided", "[checks][tab]") {
  checks::TabInput in = tab_of(5e3);
  in.plate.beside = 0.0092;  // 0.7 mm on each side, less than the code takes off
  CHECK(checks::tab(in).state == State::undecided);
  in.plate.beside = 0.0095;
  CHECK(checks::tab(in).state != State::undecided);
}

TEST_CASE("more plate around the hole is never worse", "[checks][tab]") {
  for (double checks::EyePlate::*const size :
       {&checks::EyePlate::thickness, &checks::EyePlate::ahead, &checks::EyePlate::beside,
        &checks::EyePlate::tensile}) {
    checks::TabInput in = tab_of(5e3);
    double last = 0.0;
    for (int i = 0; i < 12; ++i) {
      const double here = checks::tab(in).capacity;
      CHECK(here >= last);
      last = here;
      in.plate.*size *= 1.1;
    }
  }
}

// Hand calculation, no source: 2 kN across one tab 60 x 6 mm, 50 mm from its root: 277.8 MPa.
TEST_CASE("a tab bends at its root, across and in its plane", "[checks][tab]") {
  checks::TabRootInput in{.plates = 1,
                          .thickness = 0.006,
                          .width = 0.060,
                          .height = 0.050,
                          .side = 2e3,
                          .yield = 275e6,
                          .required = 1.5};
  CHECK_THAT(checks::tab_root(in).demand, WithinRel(277.8e6, 1e-4));
  in.side = 0.0;
  in.force = 10e3;  // 138.9 bent, 27.78 pulled
  CHECK_THAT(checks::tab_root(in).demand, WithinRel(std::hypot(138.89e6, 27.778e6), 1e-4));
  CHECK(worked::equations_that_hold(checks::tab_root(in)) == 5);
  in.plates = 2;
  const double two = checks::tab_root(in).demand;
  CHECK_THAT(2.0 * two, WithinRel(std::hypot(138.89e6, 27.778e6), 1e-4));
  for (const double u : {0.98, 1.02}) {
    in.force = 10e3 * u * 275e6 / two / 1.5;
    CHECK(checks::tab_root(in).state == (u < 1.0 ? State::within : State::over));
  }
  in.plates = 1;
  in.off = 0.020;
  CHECK(checks::tab_root(in).demand > 2.0 * two);
}

}  // namespace tab_test
