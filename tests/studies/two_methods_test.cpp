// Second order at ride height beside large displacements: the larger counts. Invented numbers.
#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include <catch2/catch.hpp>

#include "studies/cell.hpp"
#include "studies/criterion.hpp"
#include "tests/loads/read_design.hpp"

namespace two_methods_test {
namespace {

/// Soft coils, so that a stop turns the arms far.
std::string soft() {
  return loads_tests::kVehicle + loads_tests::axle_on_balls("0.1");
}

double ratio(const studies::Criterion& criterion, const studies::SetModel& model,
             const studies::CaseSolution& solved) {
  return studies::demand_over_capacity(criterion, model.assembly(), solved.solution);
}

}  // namespace

TEST_CASE("of second order at ride height and the place reached the larger counts", "[studies]") {
  const loads_tests::SolvedDesign design(soft() + "load_cases: [hard corner, hard stop]\n");
  int n_at_ride = 0;
  int n_reached = 0;
  for (const parts::DesignCase& c : parts::design_cases(design.design)) {
    const studies::Cell cell(design.model, c);
    const studies::CaseSolution& kept = cell.kept(1.0);
    if (kept.method != fea::Method::large_displacement || !studies::carried(kept)) continue;
    REQUIRE(cell.second_order() != nullptr);
    if (!studies::carried(*cell.second_order())) continue;
    for (const studies::Criterion& criterion : studies::criteria(design.model.assembly())) {
      if (criterion.kind != studies::Criterion::Kind::yield) continue;
      const double reached = ratio(criterion, design.model, kept);
      const double at_ride = ratio(criterion, design.model, *cell.second_order());
      if (!std::isfinite(reached) || !std::isfinite(at_ride)) continue;
      const studies::Cell& most = cell.asking_most(criterion);
      CHECK((&most == &cell) == !(at_ride > reached));
      CHECK(most.ratio_kept(criterion, 1.0) >= std::max(reached, at_ride));
      n_at_ride += &most != &cell ? 1 : 0;
      n_reached += &most == &cell ? 1 : 0;
    }
  }
  CHECK(n_at_ride > 0);
  CHECK(n_reached > 0);
}

TEST_CASE("what the place reached asks is kept where its cell goes", "[studies]") {
  const loads_tests::SolvedDesign design(soft() + "load_cases: [hard corner, hard stop]\n");
  const parts::DesignCase stop = design.load_case("hard stop");
  int n_seen = 0;
  for (const studies::Criterion& criterion : studies::criteria(design.model.assembly())) {
    auto first = std::make_unique<studies::Cell>(design.model, stop);
    if (&first->asking_most(criterion) == first.get()) continue;
    const double reached = first->ratio_kept(criterion, 1.0);
    const studies::Cell moved = std::move(*first);
    first.reset();
    CHECK(moved.asking_most(criterion).ratio_reached(criterion) == reached);
    CHECK(std::isnan(moved.ratio_reached(criterion)));
    ++n_seen;
  }
  CHECK(n_seen > 0);
}

TEST_CASE("a posture has no second order beside it that counts", "[studies]") {
  const loads_tests::SolvedDesign design(
      soft() + "load_cases: [{name: crossed, heave: 10 mm, roll: 4 deg}]\n");
  const parts::DesignCase crossed = design.load_case("crossed");
  const studies::Cell cell(design.model, crossed);
  for (const studies::Criterion& criterion : studies::criteria(design.model.assembly())) {
    CHECK(&cell.asking_most(criterion) == &cell);
  }
}

}  // namespace two_methods_test
