#include "checks/fatigue.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace fatigue_test {
using checks::FatigueBlock;
using checks::FatigueInput;

namespace {

constexpr double kMpa = 1.0e6;
constexpr double kAllFull = std::numeric_limits<double>::infinity();

FatigueInput input(double range, double shear = 0.0) {
  return {.detail = checks::fillet_root(),
          .shear_detail = checks::fillet_root_shear(),
          .blocks = {{.what = "hard corner, left to right",
                      .range = range * kMpa,
                      .shear = shear * kMpa,
                      .cycles = 1.0e6,
                      .shape = 1.0}}};
}

double damage(double range, double shear = 0.0) {
  return checks::damage(input(range, shear));
}

}  // namespace

TEST_CASE("a larger range never does less damage, and twice the cycles do twice",
          "[checks][fatigue]") {
  double before = 0.0;
  for (double range = 5.0; range < 500.0; range *= 1.1) {
    CHECK(damage(range) >= before);
    before = damage(range);
  }
  FatigueInput twice = input(200.0);
  twice.blocks.push_back(twice.blocks[0]);
  CHECK(checks::damage(twice) == Approx(2.0 * damage(200.0)));
}

TEST_CASE("a range below the cut-off does no damage, just above it some", "[checks][fatigue]") {
  const double cut_off = checks::range_at(checks::fillet_root().curve, 1.0e8) / kMpa;
  CHECK(damage(0.98 * cut_off) == 0.0);
  CHECK(damage(1.02 * cut_off) > 0.0);
  CHECK(std::isinf(checks::cycles_at(checks::fillet_root().curve, 0.0)));
}

TEST_CASE("shear along the root adds its own damage", "[checks][fatigue]") {
  CHECK(damage(200.0, 150.0) == Approx(damage(200.0) + damage(0.0, 150.0)));
  CHECK(damage(0.0, 150.0) > 0.0);
}

TEST_CASE("a spectrum does less than its largest range all the time, a fuller one more",
          "[checks][fatigue]") {
  const checks::FatigueCurve curve = checks::plate_toe().curve;
  const auto sum = [&](double shape) {
    return checks::miner_sum(curve, {200.0 * kMpa, 1.0e6, shape});
  };
  CHECK(sum(1.0) < sum(2.0));
  CHECK(sum(2.0) < sum(kAllFull));
  CHECK(sum(kAllFull) == Approx(1.0e6 / (2.0e6 * std::pow(63.0 / 200.0, 3))));
}

TEST_CASE("a spectrum's damage is that of its cycles one size after the other",
          "[checks][fatigue]") {
  // Straight over the logarithm: n(S) = cycles^(1 - S / largest) exceed S, so that Miner's integral
  // is that of cycles^v log(cycles) / N(largest (1 - v)) over v from 0 to 1.
  for (const checks::FatigueCurve& curve :
       {checks::fillet_root().curve, checks::plate_toe().curve, checks::bolt_shank().curve}) {
    constexpr int kFine = 100000;
    double sum = 0.0;
    for (int i = 0; i < kFine; ++i) {
      const double v = (i + 0.5) / kFine;
      sum += std::pow(1.0e6, v) * std::log(1.0e6) /
             checks::cycles_at(curve, 200.0 * kMpa * (1.0 - v)) / kFine;
    }
    // 400 steps across a cut-off.
    CHECK(checks::miner_sum(curve, {200.0 * kMpa, 1.0e6, 1.0}) == Approx(sum).epsilon(3e-3));
  }
}

TEST_CASE("the lines of a life give its damage", "[checks][fatigue]") {
  checks::Finding finding;
  finding.lines = checks::damage_lines(input(200.0, 150.0));
  CHECK(worked::equations_that_hold(finding) == 2);
  double shown = 0.0;
  for (const checks::WorkedLine& line : finding.lines) {
    const std::vector<double> sides = worked::sides(line);
    if (!sides.empty()) shown += sides.back();
  }
  CHECK(shown == Approx(damage(200.0, 150.0)));
}

TEST_CASE("a thicker bolt than 30 mm has a lower category", "[checks][fatigue]") {
  // EN 1993-1-9:2005 table 8.1 detail 14: (30 / 36)^0.25 = 0.9554, formula from memory.
  CHECK(checks::bolt_thread(0.036).curve.category == Approx(0.9554 * 50.0 * kMpa).epsilon(1e-4));
  CHECK(checks::bolt_thread(0.016).curve.category == Approx(50.0 * kMpa));
}

}  // namespace fatigue_test
