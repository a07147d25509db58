// What is said to give at a multiple of the load has about come to what it holds there.
#include "studies/failure_order.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace failure_order_test {
namespace {

template <class Named>
const Named& named(const std::vector<Named>& all, const std::string& name) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Named& one) { return one.name == name; });
  REQUIRE(found != all.end());
  return *found;
}

/// Demand over what it holds, of the one of that check that comes nearest.
double used(const studies::Cell& cell, const studies::GivesAt& gives) {
  double most = 0.0;
  for (const studies::Criterion& criterion : studies::criteria(cell.assembly())) {
    const bool same = studies::part_judged(criterion, cell.assembly()) == gives.part &&
                      studies::check_name(criterion.kind) == gives.check;
    if (same) most = std::fmax(most, cell.ratio_at(criterion, gives.multiple));
  }
  return most;
}

}  // namespace

TEST_CASE("what is said to give has about come to what it holds", "[studies]") {
  // An order is interpolated from the load and one multiple of it: beyond that what bends with the
  // frame may come to less than half of what is told.
  constexpr double kAtLeast = 0.2;
  int n_compared = 0;
  for (const std::string file : {"front-axle-us.yaml", "front-axle-metric.yaml"}) {
    const parts::Design design = studies_tests::read_example(file);
    const std::vector<parts::DesignCase> cases = parts::design_cases(design);
    const std::vector<parts::StiffnessSet> sets = parts::stiffness_sets(design);
    for (const studies::FailureOrder& order : studies::check(design).failure_orders) {
      const studies::SetModel model(design, named(sets, order.set));
      const studies::Cell cell(model, named(cases, order.load_case));
      for (const studies::GivesAt& gives : order.order) {
        if (gives.check == "frame stability") continue;
        ++n_compared;
        INFO(file << ": " << order.load_case << "; " << order.set << ": " << gives.part << ", "
                  << gives.check << " at " << gives.multiple);
        CHECK(used(cell, gives) > kAtLeast);
      }
    }
  }
  CHECK(n_compared > 50);
}

}  // namespace failure_order_test
