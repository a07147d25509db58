#include "checks/saddle_weld.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/weld.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace saddle_weld_test {
using Catch::Matchers::WithinRel;

namespace {

double area(const std::vector<checks::WeldLine>& lines) {
  return checks::weld_properties(lines).area;
}

}  // namespace

// Own check, no source: on a part much thicker than the bar the saddle is a ring.
TEST_CASE("a fishmouth on a very thick part is the ring of a square end", "[checks][weld]") {
  const double ring = area(checks::ring_weld({0, 0, 0}, {1, 0, 0}, 0.020, 0.006));
  CHECK_THAT(area(checks::saddle_weld(0.020, 2.0, 0.006)), WithinRel(ring, 0.01));
  CHECK(area(checks::saddle_weld(0.020, 2.0, 0.006)) < ring);
}

// leg cos(psi / 2), psi = 90 degrees at the crown and 90 + asin(beta) at the sides; AWS D1.1, from
// memory.
TEST_CASE("its throat shrinks toward the sides, and stops counting past 135 degrees",
          "[checks][weld]") {
  const auto lines = checks::saddle_weld(0.020, 0.040, 0.006);
  CHECK(lines.size() == 180);
  CHECK_THAT(lines.front().throat(), WithinRel(0.006 * std::cos(base::kPi / 4.0), 1e-3));
  CHECK_THAT(lines[45].throat(), WithinRel(0.006 * std::cos(base::kPi / 3.0), 1e-3));
  // Equal tubes: sin^2 u up to 0.7071, u up to 57.23 degrees from each crown.
  const auto equal = checks::saddle_weld(0.020, 0.020, 0.006);
  CHECK(static_cast<double>(equal.size()) == Approx(4.0 * 57.23 / 2.0).margin(4.0));
  CHECK(area(equal) < area(lines));
}

TEST_CASE("a wider part, a larger bar or leg never makes a fishmouth's weld weaker",
          "[checks][weld]") {
  double last = 0.0;
  for (double around = 0.020; around < 0.2; around *= 1.05) {
    const double here =
        area(checks::saddle_weld(0.020, around, 0.006)) / checks::saddle_length(0.020, around);
    CHECK(here >= last * (1.0 - 1e-9));
    last = here;
  }
  CHECK_THAT(area(checks::saddle_weld(0.020, 0.030, 0.008)),
             WithinRel(8.0 / 6.0 * area(checks::saddle_weld(0.020, 0.030, 0.006)), 1e-9));
}

TEST_CASE("a weld that develops the wall is not taken as uneven", "[checks][weld]") {
  const double leg = std::sqrt(2.0) * 1.1 * 0.004;
  CHECK(checks::uneven_saddle(1.01 * leg, 0.004) == 1.0);
  CHECK(checks::uneven_saddle(0.99 * leg, 0.004) == 1.5);
}

TEST_CASE("an uneven weld is asked for its factor in its worked lines", "[checks][weld]") {
  checks::WeldInput in{.group = {checks::saddle_weld(0.020, 0.030, 0.005), 480e6},
                       .wrench = {.force = {20e3, 0.0, 0.0}},
                       .required = 2.0,
                       .uneven = 1.5,
                       .skewed = true};
  const checks::Finding uneven = checks::weld(in);
  in.uneven = 1.0;
  const checks::Finding even = checks::weld(in);
  CHECK_THAT(uneven.demand, WithinRel(1.5 * even.demand, 1e-12));
  CHECK(worked::equations_that_hold(uneven) > worked::equations_that_hold(even));
}

}  // namespace saddle_weld_test
