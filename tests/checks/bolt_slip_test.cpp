#include "checks/bolt_slip.hpp"

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace bolt_slip_test {
using Catch::Matchers::WithinRel;

namespace {

checks::BoltSlipInput m16() {
  const auto threads = sections::bolt_threads();
  for (const sections::BoltThread& thread : threads) {
    if (thread.name == "M16 x 2") {
      return {
          .thread = thread, .grade = *sections::find_bolt_grade("10.9", thread), .required = 1.5};
    }
  }
  FAIL("no M16");
  return {};
}

}  // namespace

// Shigley, eq. 8-31, from memory; worked by hand: 0.75 x 830 MPa x 156.7 mm^2 = 97.53 kN, two faces
// of 0.20 hold 39.01 kN.
TEST_CASE("clamped faces hold what their preload rubs", "[checks][bolt]") {
  checks::BoltSlipInput in = m16();
  CHECK_THAT(checks::reusable_preload(in.thread, in.grade), WithinRel(97.53e3, 1e-3));
  in.shear = 10e3;
  CHECK_THAT(checks::bolt_slip(in).demand, WithinRel(10.0 / 39.01, 1e-3));
  in.planes = 1;
  CHECK_THAT(checks::bolt_slip(in).demand, WithinRel(20.0 / 39.01, 1e-3));
  // A pull takes off the clamping in proportion.
  in.tension = 97.53e3;
  in.shear = 0.0;
  CHECK_THAT(checks::bolt_slip(in).demand, WithinRel(1.0, 1e-3));
}

TEST_CASE("clamped faces slip past their limit, and the lines add up", "[checks][bolt]") {
  checks::BoltSlipInput in = m16();
  for (const double u : {0.98, 1.02}) {
    in.shear = u * 39.01e3 / 1.5;
    in.tension = 0.0;
    const checks::Finding f = checks::bolt_slip(in);
    CHECK(f.state == (u < 1.0 ? checks::State::within : checks::State::over));
    CHECK(worked::equations_that_hold(f) == 3);
  }
}

}  // namespace bolt_slip_test
