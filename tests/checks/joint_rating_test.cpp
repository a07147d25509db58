// Rated joints: a force against what their maker lets them carry. Own check, no source.
#include "checks/joint_rating.hpp"

#include <cmath>
#include <utility>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace joint_rating_test {
using Catch::Matchers::WithinRel;

TEST_CASE("a joint without a rating is left undecided, never assumed", "[checks][joint]") {
  const checks::Finding f = checks::joint_rating({.force = 10.0e3, .required = 5.0});
  CHECK(f.state == checks::State::undecided);
  CHECK_THAT(f.reason, Catch::Contains("rating missing"));
}

TEST_CASE("a static rating is compared with the force; an ultimate one counts 1 / 1.5",
          "[checks][joint]") {
  // limit to ultimate is usually 1.5: two bearing makers' reference pages (makers withheld), read:
  // common practice, no source
  const checks::Finding s =
      checks::joint_rating({.force = 10.0e3, .static_rating = 60.0e3, .required = 5.0});
  CHECK_THAT(s.safety_factor, WithinRel(6.0, 1e-12));
  CHECK(s.state == checks::State::within);
  const checks::Finding u =
      checks::joint_rating({.force = 10.0e3, .ultimate_rating = 60.0e3, .required = 5.0});
  CHECK_THAT(u.safety_factor, WithinRel(4.0, 1e-12));
  CHECK(u.state == checks::State::over);
}

TEST_CASE("with both ratings the lower of static and ultimate / 1.5 decides", "[checks][joint]") {
  const checks::Finding f = checks::joint_rating(
      {.force = 10.0e3, .static_rating = 60.0e3, .ultimate_rating = 75.0e3, .required = 1.0});
  CHECK_THAT(f.capacity, WithinRel(50.0e3, 1e-12));
}

// Fr + k Fa with k = C / Ca: bearing makers' reference pages (makers withheld), read: common
// practice, no source. By hand: Fr 10 kN, Fa 1 kN, Ca = C / 5: 15 kN; C / 10: 20 kN.
TEST_CASE("with an axial rating the force along the bolt counts more", "[checks][joint]") {
  for (const auto& [part, combined] : {std::pair{5.0, 15.0e3}, {10.0, 20.0e3}}) {
    const checks::Finding f = checks::joint_rating({.force = std::hypot(10.0e3, 1.0e3),
                                                    .along = 1.0e3,
                                                    .static_rating = 60.0e3,
                                                    .axial_rating = 60.0e3 / part,
                                                    .required = 3.5});
    CHECK_THAT(f.demand, WithinRel(combined, 1e-12));
    CHECK(f.state == (combined < 60.0e3 / 3.5 ? checks::State::within : checks::State::over));
    CHECK(worked::equations_that_hold(f) == 2);
  }
  const checks::Finding without = checks::joint_rating(
      {.force = 10.0e3, .along = 1.1e3, .static_rating = 60.0e3, .required = 3.0});
  CHECK(without.safety_factor == Approx(6.0));
  CHECK_THAT(without.notes.front(), Catch::Contains("axial_rating"));
}

TEST_CASE("the joint verdict turns at its limit", "[checks][joint]") {
  const auto state = [](double force) {
    return checks::joint_rating({.force = force, .static_rating = 50.0e3, .required = 5.0}).state;
  };
  CHECK(state(0.98 * 10.0e3) == checks::State::within);
  CHECK(state(1.02 * 10.0e3) == checks::State::over);
}

}  // namespace joint_rating_test
