// Curves of fatigue strength and Miner's sum.

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "checks/fatigue.hpp"
#include "tests/published/verification.hpp"

namespace en_fatigue_test {
using checks::cycles_at;
using checks::en_direct;
using checks::en_shear;
using checks::miner_sum;
using checks::range_at;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

constexpr double kMpa = 1.0e6;
constexpr double kAllFull = std::numeric_limits<double>::infinity();

/// One slope at every range.
checks::FatigueCurve straight(double category, double slope = 3.0) {
  return {.category = category * kMpa, .slope = slope};
}

}  // namespace

TEST_CASE("the curves of EN 1993-1-9 bend where the standard says", "[checks][fatigue]") {
  const Source source{"EN 1993-1-9:2005, 7.1 (fatigue strength curves)",
                      Basis::formula_from_memory};
  verify(source, "range at 5e6 over the category", "0.737", range_at(en_direct(1.0), 5.0e6));
  verify(source, "cut-off over the range at 5e6", "0.549",
         range_at(en_direct(1.0), 1.0e8) / range_at(en_direct(1.0), 5.0e6));
  verify(source, "cut-off over the category", "0.405", range_at(en_direct(1.0), 1.0e8));
  verify(source, "cut-off over the category, shear", "0.457", range_at(en_shear(1.0), 1.0e8));
}

TEST_CASE("three blocks of ranges on category 71 by Miner's rule", "[checks][fatigue]") {
  const Source source{
      "EN 1993-1-9:2005, 7.1 and annex A (category 71; 1e5 at 90, 1e6 at 45, 1e7 at "
      "25 MPa)",
      Basis::formula_from_memory};
  const checks::FatigueCurve curve = en_direct(71.0 * kMpa);
  verify(source, "cycles at 90 MPa", "9.819e5", cycles_at(curve, 90.0 * kMpa));
  verify(source, "cycles at 45 MPa", "1.062e7", cycles_at(curve, 45.0 * kMpa));
  const auto block = [&](double range, double cycles) {
    return miner_sum(curve, {range * kMpa, cycles, kAllFull});
  };
  verify(source, "damage", "0.196", block(90.0, 1.0e5) + block(45.0, 1.0e6) + block(25.0, 1.0e7));
  CHECK(block(25.0, 1.0e7) == 0.0);
}

TEST_CASE("category 90 at 60 MPa on one slope", "[checks][fatigue]") {
  const Source source{
      "an engineering reference page on S-N curves and Miner's rule (worked example, category 90)",
      Basis::read};
  verify(source, "cycles at 60 MPa", "6.75e6", cycles_at(straight(90.0), 60.0 * kMpa));
  verify(source, "damage of 1e6 cycles", "0.1481",
         miner_sum(straight(90.0), {60.0 * kMpa, 1.0e6, kAllFull}));
}

// S_eq / Smax = Gamma(1 + m/n)^(1/m) / (ln H0)^(1/n), from the damage of the spectrum.
TEST_CASE("a Weibull spectrum does as much as one range in closed form", "[checks][fatigue]") {
  const Source source{"Weibull spectrum of ranges, as in offshore rules (1e6 cycles)",
                      Basis::formula_from_memory};
  const auto equal = [](double shape, double slope) {
    const double damage = miner_sum(straight(1.0, slope), {1.0 * kMpa, 1.0e6, shape});
    return std::pow(2.0e6 * damage / 1.0e6, 1.0 / slope);
  };
  verify(source, "n = 1, m = 3", "0.132", equal(1.0, 3.0));
  verify(source, "n = 1, m = 5", "0.189", equal(1.0, 5.0), within(0.006));
  verify(source, "n = 2, m = 3", "0.296", equal(2.0, 3.0), within(0.006));
  verify(source, "n = 2, m = 5", "0.342", equal(2.0, 5.0), within(0.006));
}

TEST_CASE("a bracket's root weld over a million cycles of mixed size", "[checks][fatigue]") {
  const Source source{
      "bracket of two plates 6 x 100 mm under 15 kN at 250 mm, both ways, fillets of "
      "6 mm; straight line of 1e6 sizes, m = 3, no cut-off",
      Basis::common_practice};
  const auto damage = [](double category, double range) {
    return miner_sum(straight(category), {range * kMpa, 1.0e6, 1.0});
  };
  verify(source, "toe, category 63, 375 MPa", "0.240", damage(63.0, 2.0 * 187.5), within(0.005));
  verify(source, "root, category 36, 265.8 MPa", "0.458", damage(36.0, 2.0 * 132.9), within(0.005));
  verify(source, "toe with a brace, 97.0 MPa", "0.0041", damage(63.0, 0.2586 * 375.0),
         within(0.015));
}

}  // namespace en_fatigue_test
