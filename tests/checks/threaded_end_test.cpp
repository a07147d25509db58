#include "checks/threaded_end.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace threaded_end_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

/// M20 x 1.5, from memory.
sections::BoltThread fine() {
  return {.name = "M20 x 1.5", .inch = false, .coarse = false, .diameter = 0.020, .pitch = 0.0015};
}

checks::ThreadedShankInput shank(double axial, double across) {
  return {.thread = fine(),
          .yield = 400e6,
          .axial = axial,
          .across = across,
          .out = 0.025,
          .required = 1.5};
}

checks::ThreadEngagementInput engaged(double length) {
  return {.thread = fine(), .engaged = length, .tensile = 400e6, .axial = 30e3, .required = 2.0};
}

}  // namespace

// Hand calculation after Shigley, ch. 8, from memory: At 271.5 mm2, d3 18.16 mm; 40 kN: 147.3 MPa;
// 1.5 kN at 25 mm: 63.78 MPa.
TEST_CASE("a threaded shank is pulled and bent", "[checks][thread]") {
  CHECK_THAT(checks::threaded_shank(shank(40e3, 0.0)).demand, WithinRel(147.3e6, 3e-4));
  CHECK_THAT(checks::threaded_shank(shank(0.0, 1.5e3)).demand, WithinRel(63.78e6, 3e-4));
  const checks::Finding f = checks::threaded_shank(shank(40e3, 1.5e3));
  CHECK(worked::equations_that_hold(f) == 4);
  for (const double u : {0.98, 1.02}) {
    const double m = u * 400e6 / f.demand / 1.5;
    CHECK(checks::threaded_shank(shank(40e3 * m, 1.5e3 * m)).state ==
          (u < 1.0 ? State::within : State::over));
  }
}

// ASME B1.1 gives 1.367 in2 of female thread an inch for 5/8-18, class 2 (worked out from its class
// limits, from memory): the basic profile with a fifth off must not be over it, nor far under.
TEST_CASE("the thread area with its tolerance share is that of class 2", "[checks][thread]") {
  constexpr double in = base::kInch;
  checks::ThreadEngagementInput thread{
      .thread = {.name = "5/8-18", .diameter = 0.625 * in, .pitch = in / 18.0},
      .engaged = 0.625 * in,
      .tensile = 1.0 / (0.6 * 0.8),  // so that the capacity is the area with its tolerance
      .axial = 1.0,
      .required = 1.0};
  const double area = checks::thread_engagement(thread).capacity / (0.625 * in * in);
  CHECK(area < 1.02 * 1.367);
  CHECK(area > 0.95 * 1.367);
}

TEST_CASE("engagement counts from one diameter up to one and a half", "[checks][thread]") {
  CHECK(checks::thread_engagement(engaged(0.0199)).state == State::undecided);
  CHECK(checks::thread_engagement(engaged(0.0201)).state == State::within);
  const double one = checks::thread_engagement(engaged(0.020)).capacity;
  CHECK_THAT(checks::thread_engagement(engaged(0.030)).capacity, WithinRel(1.5 * one, 1e-9));
  CHECK_THAT(checks::thread_engagement(engaged(0.040)).capacity, WithinRel(1.5 * one, 1e-9));
  CHECK(worked::equations_that_hold(checks::thread_engagement(engaged(0.025))) == 3);
  for (const double u : {0.98, 1.02}) {
    checks::ThreadEngagementInput in = engaged(0.020);
    in.axial = u * one / 2.0;
    CHECK(checks::thread_engagement(in).state == (u < 1.0 ? State::within : State::over));
  }
}

}  // namespace threaded_end_test
