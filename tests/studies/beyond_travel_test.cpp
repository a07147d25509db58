// What a solved axle goes past is said.
#include "studies/beyond_travel.hpp"

#include <catch2/catch.hpp>

#include "parts/design.hpp"
#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace beyond_travel_test {
namespace {

using Catch::Matchers::WithinRel;
using Kind = studies::BeyondTravel::Kind;

parts::Design truck() {
  parts::Design design = studies_tests::read_example("front-axle-metric.yaml");
  design.variants.clear();
  design.load_cases = {"full_cross_up", "strap_catch", "bump_stop_slammed"};
  return design;
}

/// What of a kind the solved axle goes past; of nothing where it does not.
studies::BeyondTravel passed(const parts::Design& design, Kind kind) {
  for (const studies::BeyondTravel& one : studies::check(design).beyond_travel) {
    if (one.kind == kind) return one;
  }
  return {.what = "nothing", .load_case = {}};
}

}  // namespace

TEST_CASE("a damper that the solved axle goes past is said, with the load case", "[studies]") {
  parts::Design design = truck();
  design.limit_strap->free_travel = base::kUnset;
  design.limit_strap->damper_travel = 0.200;
  CHECK(passed(design, Kind::drop).what == "nothing");
  design.limit_strap->damper_travel = 0.060;
  const studies::BeyondTravel damper = passed(design, Kind::drop);
  CHECK(damper.what == studies::kDamperEnds);
  CHECK_THAT(damper.ends, WithinRel(0.060, 1e-12));
  CHECK(damper.reached >= studies::check(design).droop->hangs);
  CHECK_FALSE(damper.load_case.empty());
}

TEST_CASE("a damper at its shortest is said, a stop that is met is not", "[studies]") {
  parts::Design design = truck();
  design.axle->damper_bump_travel = 0.150;
  design.axle->coil_bump_travel = 0.160;
  CHECK(passed(design, Kind::rise).what == "nothing");
  design.axle->damper_bump_travel = 0.030;
  CHECK(passed(design, Kind::rise).what == studies::kDamperShortest);
  CHECK(passed(design, Kind::rise).reached > 0.030);
}

TEST_CASE("a roll that the axle's weight does not give is said", "[studies]") {
  parts::Design design = truck();
  design.load_cases = {"full_cross_up"};
  CHECK(passed(design, Kind::wheel_lifts).what == "nothing");
  design.vehicle->articulation *= 2.5;
  const studies::BeyondTravel lifts = passed(design, Kind::wheel_lifts);
  // All of the weight on one wheel: statics.
  CHECK_THAT(lifts.ends,
             WithinRel(0.5 * design.vehicle->axle_weight * design.vehicle->track, 1e-12));
  CHECK(lifts.reached > lifts.ends);
}

}  // namespace beyond_travel_test
