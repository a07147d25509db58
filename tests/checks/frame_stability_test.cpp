#include "checks/frame_stability.hpp"

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace frame_stability_test {
using checks::StabilityOutcome;
using checks::State;

TEST_CASE("a frame is within the limit when its critical factor reaches the required one",
          "[checks]") {
  const auto state = [](double factor) {
    return checks::frame_stability({.outcome = StabilityOutcome::found,
                                    .critical_factor = factor,
                                    .part_that_goes = "lateral_link",
                                    .share = 0.83,
                                    .problem = "",
                                    .required = 3.0})
        ->state;
  };
  CHECK(state(3.0 * 1.02) == State::within);
  CHECK(state(3.0 * 0.98) == State::over);
}

// Amplifier 1 / (1 - 1/lambda), EN 1993-1-1 5.2.2(5), from memory: 3 -> 1.5, 10 -> 1.111.
TEST_CASE("the finding names the part that goes and how much sway is magnified", "[checks]") {
  const auto f = checks::frame_stability({.outcome = StabilityOutcome::found,
                                          .critical_factor = 3.0,
                                          .part_that_goes = "lateral_link",
                                          .share = 0.83,
                                          .problem = "",
                                          .required = 1.5});
  REQUIRE(f);
  CHECK(f->part == "lateral_link");
  CHECK_THAT(f->notes.at(0),
             Catch::Contains("83 % of the strain energy of the mode: lateral_link"));
  CHECK(worked::equations_that_hold(*f) == 1);
  CHECK(f->lines.at(1).values.at(1).si == Approx(1.5));
}

TEST_CASE("a frame that gives way earlier in second order is judged by that", "[checks]") {
  checks::FrameStabilityInput input{.outcome = StabilityOutcome::found,
                                    .critical_factor = 6.0,
                                    .second_order_factor = 2.9,
                                    .part_that_goes = "brace",
                                    .share = 0.83,
                                    .problem = "",
                                    .required = 3.0};
  const auto early = checks::frame_stability(input);
  REQUIRE(early);
  CHECK(early->state == State::over);
  CHECK(early->safety_factor == 2.9);
  CHECK(early->capacity == 2.9);
  CHECK(early->lines.at(0).values.at(0).si == 6.0);  // the linear one stays beside it
  CHECK(early->lines.at(1).values.at(0).si == 2.9);
  CHECK_THAT(early->notes.at(0), Catch::Contains("48 % of the linear critical factor"));
  input.second_order_factor = 6.1;
  CHECK(checks::frame_stability(input)->safety_factor == 6.0);
}

TEST_CASE("a frame without compression has no stability finding", "[checks]") {
  CHECK_FALSE(checks::frame_stability({.outcome = StabilityOutcome::no_compression,
                                       .part_that_goes = "",
                                       .problem = "",
                                       .required = 3.0}));
}

TEST_CASE("a search for buckling that failed leaves the frame undecided", "[checks]") {
  const auto f = checks::frame_stability({.outcome = StabilityOutcome::failed,
                                          .part_that_goes = "",
                                          .problem = "the list is not complete",
                                          .required = 3.0});
  REQUIRE(f);
  CHECK(f->state == State::undecided);
  CHECK_THAT(f->reason, Catch::Contains("not complete"));
}

}  // namespace frame_stability_test
