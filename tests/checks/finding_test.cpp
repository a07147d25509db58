#include "checks/finding.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace finding_test {
using checks::Finding;
using checks::State;

TEST_CASE("a finding is within its limit from the required factor on", "[checks]") {
  Finding f;
  checks::decide(f, 1.5, 1.5);
  CHECK(f.state == State::within);
  CHECK(f.utilization() == 1.0);
  checks::decide(f, 1.5 * 1.02, 1.5);
  CHECK(f.state == State::within);
  CHECK(f.utilization() < 1.0);
  checks::decide(f, 1.5 * 0.98, 1.5);
  CHECK(f.state == State::over);
  CHECK(f.utilization() > 1.0);
}

TEST_CASE("a part without load is within its limit with a utilization of zero", "[checks]") {
  Finding f;
  checks::decide(f, std::numeric_limits<double>::infinity(), 1.5);
  CHECK(f.state == State::within);
  CHECK(f.utilization() == 0.0);
}

TEST_CASE("an undecided finding has a reason and no utilization", "[checks]") {
  Finding f;
  checks::decide(f, 2.0, 1.5);
  checks::leave_undecided(f, "outside the method");
  CHECK(f.state == State::undecided);
  CHECK(f.reason == "outside the method");
  CHECK(std::isnan(f.utilization()));
  CHECK(f.required == 1.5);
}

TEST_CASE("a safety factor that is not a number never passes", "[checks]") {
  Finding f;
  checks::decide(f, base::kUnset, 1.5);
  CHECK(f.state == State::undecided);
  CHECK_FALSE(f.reason.empty());
  checks::decide(f, 2.0, base::kUnset);
  CHECK(f.state == State::undecided);
}

TEST_CASE("the arithmetic of worked lines is read as printed", "[checks]") {
  const checks::WorkedLine line{
      "", "sqrt(({0})^2 + 4 * 4) / 0.5 - 2^{1} = {2}", {{-3.0}, {2.0}, {6.0}}};
  const auto sides = worked::sides(line);
  REQUIRE(sides.size() == 2);
  CHECK(sides[0] == 6.0);
  CHECK(sides[1] == 6.0);
  CHECK(worked::sides({"", "at {0} times the load", {{1.0}}}).empty());
  Finding wrong;
  wrong.lines = {{"", "{0} + {0} = {1}", {{1.0}, {2.1}}}};
  CHECK(worked::equations_that_hold(wrong) == -1);
}

}  // namespace finding_test
