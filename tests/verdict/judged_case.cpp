#include "tests/verdict/judged_case.hpp"

#include <catch2/catch.hpp>

#include "cases/reader.hpp"
#include "studies/check.hpp"

namespace verdict_tests {
namespace {

using checks::State;
using studies::Verdict;

void check_one_side(const Limit& limit, double utilization) {
  const std::string text = limit.case_text(utilization);
  INFO(text);
  const studies::Answer answer = judged(text);
  const checks::Finding found = finding(answer, limit.part, limit.check);
  INFO("set: " << found.set << ", case: " << found.load_case << ", reason: " << found.reason);
  const bool inside = utilization < 1.0;
  CHECK(found.state == (inside ? State::within : State::over));
  CHECK(answer.verdict == (inside ? Verdict::within : Verdict::over));
  CHECK(found.utilization() == Approx(utilization).epsilon(limit.tolerance));
  if (!limit.set.empty()) CHECK(found.set == limit.set);
  check_others_within(answer, limit.part, limit.check);
}

}  // namespace

studies::Answer judged(const std::string& case_text) {
  const cases::Reading reading = cases::read(case_text, "case.yaml");
  for (const base::InputError& problem : reading.problems) UNSCOPED_INFO(problem.what());
  INFO(case_text);
  REQUIRE(reading.design.has_value());
  return studies::check(*reading.design);
}

checks::Finding finding(const studies::Answer& answer, const std::string& part,
                        const std::string& check) {
  for (const checks::Finding& found : answer.findings) {
    if (found.part == part && found.check == check) return found;
  }
  FAIL("no finding of " << part << ", " << check);
  return {};
}

void check_others_within(const studies::Answer& answer, const std::string& part,
                         const std::string& check) {
  for (const checks::Finding& found : answer.findings) {
    if (found.part == part && found.check == check) continue;
    INFO(found.part << ", " << found.check << " at " << found.utilization() << " " << found.reason);
    CHECK(found.state == State::within);
  }
}

void check_flips(const Limit& limit) {
  check_one_side(limit, 0.98);
  check_one_side(limit, 1.02);
}

double where_it_reaches(const std::function<double(double)>& growing, double value, double low,
                        double high) {
  REQUIRE(growing(low) < value);
  REQUIRE(growing(high) > value);
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    (growing(middle) < value ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace verdict_tests
