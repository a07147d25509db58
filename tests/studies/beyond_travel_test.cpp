// What a solved axle goes past is said.
#include "studies/beyond_travel.hpp"

#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "parts/design.hpp"
#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace beyond_travel_test {
namespace {

using Catch::Matchers::WithinRel;
using Kind = studies::BeyondTravel::Kind;

parts::Design truck() {
  std::ifstream file(LINKMARGIN_SOURCE_DIR "/cases/examples/front-axle-metric.yaml");
  std::stringstream text;
  text << file.rdbuf();
  parts::Design design = studies_tests::read_case(text.str());
  design.variants.clear();
  design.load_cases = {"full_cross_up", "strap_catch", "bump_stop_slammed"};
  return design;
}

const studies::BeyondTravel* of_kind(const std::vector<studies::BeyondTravel>& all, Kind kind) {
  for (const studies::BeyondTravel& one : all) {
    if (one.kind == kind) return &one;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("a damper that the solved axle goes past is said, with the load case", "[studies]") {
  parts::Design design = truck();
  design.limit_strap->free_travel = base::kUnset;
  design.limit_strap->damper_travel = 0.200;
  CHECK(of_kind(studies::check(design).beyond_travel, Kind::drop) == nullptr);
  design.limit_strap->damper_travel = 0.060;
  const studies::Answer answer = studies::check(design);
  const studies::BeyondTravel* passed = of_kind(answer.beyond_travel, Kind::drop);
  REQUIRE(passed != nullptr);
  CHECK(passed->what == studies::kDamperEnds);
  CHECK_THAT(passed->ends, WithinRel(0.060, 1e-12));
  CHECK(passed->reached >= answer.droop->hangs);
  CHECK_FALSE(passed->load_case.empty());
}

TEST_CASE("a damper at its shortest and a crushed stop are said, a stop that is met is not",
          "[studies]") {
  parts::Design design = truck();
  design.axle->damper_bump_travel = 0.150;
  design.axle->coil_bump_travel = 0.160;
  CHECK(of_kind(studies::check(design).beyond_travel, Kind::rise) == nullptr);
  design.axle->damper_bump_travel = 0.030;
  const studies::Answer answer = studies::check(design);
  const studies::BeyondTravel* passed = of_kind(answer.beyond_travel, Kind::rise);
  REQUIRE(passed != nullptr);
  CHECK(passed->what == studies::kDamperShortest);
  CHECK(passed->reached > 0.030);
}

TEST_CASE("a roll that the axle's weight does not give is said", "[studies]") {
  parts::Design design = truck();
  design.load_cases = {"full_cross_up"};
  CHECK(of_kind(studies::check(design).beyond_travel, Kind::wheel_lifts) == nullptr);
  design.vehicle->articulation *= 2.5;
  const studies::Answer answer = studies::check(design);
  const studies::BeyondTravel* passed = of_kind(answer.beyond_travel, Kind::wheel_lifts);
  REQUIRE(passed != nullptr);
  // All of the weight on one wheel: statics.
  CHECK_THAT(passed->ends,
             WithinRel(0.5 * design.vehicle->axle_weight * design.vehicle->track, 1e-12));
  CHECK(passed->reached > passed->ends);
}

}  // namespace beyond_travel_test
