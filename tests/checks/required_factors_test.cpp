#include "checks/required_factors.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"

namespace required_factors_test {
using checks::Duty;
using checks::Item;
using checks::required;

// The project's own table; each entry's basis says what of it has a source.
TEST_CASE("the required factors are the table's", "[checks]") {
  const checks::RequiredFactors f;
  struct Row {
    Item item;
    Duty duty;
    double routine, abuse;
  };
  const Row rows[] = {
      {Item::yield, Duty::ordinary, 1.5, 1.0},
      {Item::yield, Duty::lateral_link, 1.5, 1.25},
      {Item::yield, Duty::steering, 1.5, 1.25},
      {Item::buckling, Duty::ordinary, 3.0, 1.5},
      {Item::buckling, Duty::lateral_link, 3.0, 2.0},
      {Item::buckling, Duty::steering, 3.5, 2.0},
      {Item::weld, Duty::ordinary, 2.0, 1.5},
      {Item::weld, Duty::steering, 2.0, 1.5},
      {Item::bolt, Duty::lateral_link, 2.0, 1.5},
      {Item::tab, Duty::ordinary, 2.0, 1.5},
      {Item::rail_wall, Duty::ordinary, 1.5, 1.25},
      {Item::rail_punching, Duty::ordinary, 1.58, 1.32},
      {Item::rail_crippling, Duty::ordinary, 2.0, 1.67},
      {Item::tipping, Duty::ordinary, 1.5, 1.1},
      {Item::reversing_joint, Duty::lateral_link, 5.0, 1.0},
      {Item::joint, Duty::ordinary, 3.0, 1.0},
  };
  for (const Row& row : rows) {
    CHECK(required(f, row.item, false, row.duty) == row.routine);
    CHECK(required(f, row.item, true, row.duty) == row.abuse);
  }
}

// 0.60 F_EXX / 2.00 = 0.30 F_EXX: AWS D1.1 static allowable of a fillet, from memory.
TEST_CASE("a routine weld may reach 0.30 of the filler's strength", "[checks]") {
  CHECK(0.60 / required(checks::RequiredFactors{}, Item::weld, false) == Approx(0.30));
}

TEST_CASE("every entry has its own key, points into the table and says its basis", "[checks]") {
  checks::RequiredFactors f;
  std::set<std::string> keys;
  std::set<double*> values;
  for (const checks::FactorEntry& entry : checks::factor_entries(f)) {
    keys.insert(entry.key);
    values.insert(entry.value);
    CHECK_FALSE(entry.basis.empty());
  }
  CHECK(keys.size() * sizeof(double) == sizeof(checks::RequiredFactors));
  CHECK(values.size() == keys.size());
  for (const checks::FactorEntry& entry : checks::factor_entries(f)) {
    if (entry.key == "weld_abuse") *entry.value = 1.7;
  }
  CHECK(required(f, Item::weld, true) == 1.7);
}

TEST_CASE("a required factor that is no number over zero is refused by its key", "[checks]") {
  checks::RequiredFactors f;
  CHECK_NOTHROW(checks::require_valid(f));
  f.tipping_abuse = 0.0;
  CHECK_THROWS_WITH(checks::require_valid(f), Catch::Contains("tipping_abuse: "));
}

// Omega of AISC 360-22 D2, E1, F1, J2.4, J3, D5, J10 and of 360-10 table K1.2, from memory.
TEST_CASE("the preset of AISC asks its Omega of every load", "[checks]") {
  const checks::RequiredFactors f = checks::factors_of(checks::FactorPreset::aisc_asd);
  struct Row {
    Item item;
    double omega;
  };
  const Row rows[] = {
      {Item::yield, 1.67},    {Item::buckling, 1.67},      {Item::weld, 2.0},
      {Item::bolt, 2.0},      {Item::slip, 1.5},           {Item::tab, 2.0},
      {Item::rail_wall, 1.5}, {Item::rail_punching, 1.58}, {Item::rail_crippling, 2.0}};
  for (const Row& row : rows) {
    for (const Duty duty : {Duty::ordinary, Duty::lateral_link, Duty::steering}) {
      CHECK(required(f, row.item, false, duty) == row.omega);
      CHECK(required(f, row.item, true, duty) == row.omega);
    }
  }
  // What it has no factor for stays as usual.
  CHECK(required(f, Item::tipping, true) == 1.1);
  CHECK(required(f, Item::reversing_joint, false) == 5.0);
}

// gamma_M of EN 1993-1-1 6.1 and EN 1993-1-8 2.2, gamma_F of EN 1990, all from memory. Where the
// nominal strength is AISC's: times what it may lie over EN's, worked out by hand (column E3 over
// curve c 1.27, bolt of class 10.9 with threads in the plane 1.15, 0.6 Fy over fy / sqrt(3) 1.04).
TEST_CASE("the preset of EN asks its partial factors", "[checks]") {
  const checks::RequiredFactors f = checks::factors_of(checks::FactorPreset::en);
  struct Row {
    Item item;
    double gamma;
  };
  const Row rows[] = {{Item::yield, 1.0},     {Item::buckling, 1.0 * 1.27},
                      {Item::weld, 1.25},     {Item::bolt, 1.25 * 1.16},
                      {Item::slip, 1.25},     {Item::tab, 1.25},
                      {Item::rail_wall, 1.0}, {Item::rail_punching, 1.0 * 1.04}};
  for (const Row& row : rows) {
    CHECK(required(f, row.item, false) == Approx(1.5 * row.gamma));
    CHECK(required(f, row.item, true, Duty::lateral_link) == Approx(row.gamma));
  }
  CHECK(required(f, Item::rail_crippling, false) == 2.0);
  // EN 1993-1-1 6.3.1, curve c (alpha 0.49), against AISC E3 at slendernesses of 0.2 to 3.
  double most = 0.0;
  for (double slender = 0.2; slender <= 3.0; slender += 0.05) {
    const double square = slender * slender;
    const double phi = 0.5 * (1.0 + 0.49 * (slender - 0.2) + square);
    const double curve_c = 1.0 / (phi + std::sqrt(phi * phi - square));
    const double e3 = square <= 2.25 ? std::pow(0.658, square) : 0.877 / square;
    most = std::max(most, e3 / curve_c);
  }
  CHECK(most < 1.27);
  CHECK(most > 1.26);
}

TEST_CASE("every entry of a preset says whose it is", "[checks]") {
  checks::RequiredFactors usual;
  const auto usual_entries = checks::factor_entries(usual);
  for (const auto& [preset, word] : {std::pair{checks::FactorPreset::aisc_asd, "Omega"},
                                     std::pair{checks::FactorPreset::en, "gamma_M"}}) {
    checks::RequiredFactors f = checks::factors_of(preset);
    const auto entries = checks::factor_entries(f, preset);
    REQUIRE(entries.size() == usual_entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const bool own = entries[i].basis.find(word) == 0;
      CHECK(own == (entries[i].basis != usual_entries[i].basis));
      if (!own) CHECK(*entries[i].value == *usual_entries[i].value);
    }
  }
}

}  // namespace required_factors_test
