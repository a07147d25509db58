// Limit straps against their rated breaking load. Own check, no source: statics of energy by hand.
#include "checks/strap.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace strap_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

// 280 kg at 1.5 m/s on one strap of 400 kN/m: m g + sqrt((m g)^2 + k m v^2) = 18.86 kN (statics of
// energy, no source).
checks::StrapInput caught(double breaking_load) {
  return {.weight = 280.0 * 9.80665,
          .rate = 400.0e3,
          .energy = 280.0 * 1.5 * 1.5,
          .force = 18.86e3,
          .breaking_load = breaking_load,
          .required = 1.0};
}

}  // namespace

// 0.6 of the breaking load: proposal, no source.
TEST_CASE("a strap holds up to 0.6 of its breaking load", "[checks][strap]") {
  const checks::Finding holds = checks::strap(caught(18.86e3 / 0.6 * 1.02));
  CHECK(holds.state == checks::State::within);
  CHECK_THAT(holds.safety_factor, WithinRel(1.02, 1e-12));
  CHECK(checks::strap(caught(18.86e3 / 0.6 * 0.98)).state == checks::State::over);
  const std::vector<checks::Value>& values = holds.lines.at(1).values;
  CHECK_THAT(values[0].si + std::sqrt(values[0].si * values[0].si + values[1].si * values[2].si),
             WithinRel(values[3].si, 1e-3));
  CHECK(worked::equations_that_hold(holds, 1e-3) == 3);
  const checks::Finding tight = checks::tight_strap({.force = 9e3,
                                                     .rate = 400.0e3,
                                                     .slack = 0.100,
                                                     .breaking_load = 20e3,
                                                     .required = 1.0,
                                                     .safety_factor = 12.0 / 9.0});
  CHECK(worked::equations_that_hold(tight) == 2);
}

TEST_CASE("a strap without a rating is not decided", "[checks][strap]") {
  const checks::Finding found = checks::strap(caught(base::kUnset));
  CHECK(found.state == checks::State::undecided);
  CHECK_THAT(found.reason, Contains("limit_strap.breaking_load"));
}

}  // namespace strap_test
