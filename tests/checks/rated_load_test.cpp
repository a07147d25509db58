// Coil seats and bump stops against the load their maker lets them carry. Own check, no source.
#include "checks/rated_load.hpp"

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace rated_load_test {

TEST_CASE("a rated load turns over at the rating and its lines add up", "[checks][rated]") {
  checks::RatedLoadInput in{
      .preload = 6e3, .rate = 40e3, .travel = 0.050, .rating = 8e3, .required = 1.0};
  for (const double u : {0.98, 1.02}) {
    in.preload = 6e3 * u;
    in.travel = 0.050 * u;
    in.force = 8e3 * u;
    const checks::Finding f = checks::rated_load(in);
    CHECK(f.state == (u < 1.0 ? checks::State::within : checks::State::over));
    CHECK(f.utilization() == Approx(u));
    CHECK(worked::equations_that_hold(f) == 2);
  }
  in.safety_factor = 0.9;
  CHECK(checks::rated_load(in).state == checks::State::over);
}

}  // namespace rated_load_test
