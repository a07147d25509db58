// A short and a crooked column of Mott.

#include <cmath>

#include <catch2/catch.hpp>

#include "base/units.hpp"
#include "checks/column_strength.hpp"
#include "tests/published/verification.hpp"

namespace mott_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within;

TEST_CASE("Mott's short rectangular column follows Johnson", "[checks][column]") {
  const Source source{
      "Mott, Machine Elements in Mechanical Design, 4th ed., example 6-2 (12 x 18 mm, "
      "280 mm, K = 0.8; less sure)",
      Basis::from_memory};
  const double slenderness = 0.8 * 0.280 / (0.012 / std::sqrt(12.0));
  verify(source, "KL/r", "64.7", slenderness);
  verify(source, "column constant", "119", checks::johnson_limit(207e9, 290e6));
  verify(source, "critical load", "53.3 kN",
         checks::johnson_load(207e9, 290e6, 0.012 * 0.018, slenderness) / 1000.0);
}

// The page rounds A to 0.442 and r to 0.188, which moves the answers by up to 0.35 %.
TEST_CASE("Mott's crooked column may carry 1077 lb", "[checks][column]") {
  const Source source{
      "Mott, Machine Elements in Mechanical Design, 4th ed., sec. 6-11 (0.75 in "
      "round, 32 in long, 0.125 in crooked)",
      Basis::read};
  const double area = base::kPi / 4.0 * 0.75 * 0.75;
  const double inertia = base::kPi / 64.0 * std::pow(0.75, 4);
  const double euler = checks::euler_load(30e6, inertia, 32.0);
  const double first_yield = checks::crooked_column(
      {.area = area, .modulus = inertia / 0.375, .yield = 42e3, .euler = euler, .bow = 0.125});
  verify(source, "critical load when straight", "4476 lb", euler, within(4e-3));
  verify(source, "allowable load, factor 3", "1077 lb", first_yield / 3.0, within(2e-3));
}

}  // namespace mott_test
