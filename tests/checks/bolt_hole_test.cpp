#include "checks/bolt_hole.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "checks/caveat.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace bolt_hole_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

/// A plate of 6 mm, Fu 410 MPa, M16 in a hole of 17 mm, 25 mm from the edge.
checks::BoltHoleInput plate(double force) {
  return {.force = force,
          .bolt = 0.016,
          .hole = 0.017,
          .edge = 0.025,
          .thickness = 0.006,
          .plates = 1,
          .tensile = 410e6,
          .required = 2.0};
}

}  // namespace

// AISC 360-22 J3.11, from memory; worked by hand, 4 figures: bearing 94.46, tear-out 48.71 kN.
TEST_CASE("a plate tears out before it gives in bearing, near its edge", "[checks][bolt]") {
  const checks::Finding near = checks::bolt_hole(plate(10e3));
  CHECK_THAT(near.capacity, WithinRel(48.71e3, 2e-4));
  CHECK(worked::equations_that_hold(near) == 4);
  checks::BoltHoleInput in = plate(10e3);
  in.edge = 0.050;
  CHECK_THAT(checks::bolt_hole(in).capacity, WithinRel(94.46e3, 2e-4));
  in.plates = 2;
  CHECK_THAT(checks::bolt_hole(in).capacity, WithinRel(2.0 * 94.46e3, 2e-4));
}

TEST_CASE("the bolt hole verdict turns at its limit", "[checks][bolt]") {
  CHECK(checks::bolt_hole(plate(0.98 * 48.71e3 / 2.0)).state == State::within);
  CHECK(checks::bolt_hole(plate(1.02 * 48.71e3 / 2.0)).state == State::over);
}

// EN 1993-1-8 table 3.3, from memory: 1.2 d0, here 20.4 mm.
TEST_CASE("a hole near its edge is warned of", "[checks][bolt]") {
  checks::BoltHoleInput in = plate(1e3);
  const auto warned = [&](double edge) {
    in.edge = edge;
    const checks::Finding f = checks::bolt_hole(in);
    return std::any_of(f.notes.begin(), f.notes.end(), checks::is_caveat);
  };
  CHECK(warned(0.0203));
  CHECK_FALSE(warned(0.0205));
}

TEST_CASE("a hole whose bolt's force cannot be told is undecided", "[checks][bolt]") {
  checks::BoltHoleInput in = plate(base::kUnset);
  in.unknown_force = "its bolts lie on one line";
  const checks::Finding f = checks::bolt_hole(in);
  CHECK(f.state == State::undecided);
  CHECK(f.reason == in.unknown_force);
}

}  // namespace bolt_hole_test
