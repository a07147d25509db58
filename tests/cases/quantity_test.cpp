#include "cases/quantity.hpp"

#include <array>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "tests/cases/case_texts.hpp"

namespace quantity_test {
using case_texts::thrown;
using Catch::Matchers::WithinRel;
using parts::Dimension;

namespace {

struct Row {
  const char* text;
  Dimension dimension;
  double si;
};

std::string refused(const char* text, Dimension dimension) {
  return thrown([&] { (void)cases::read_quantity(text, dimension); });
}

}  // namespace

// Factors: NIST SP 811 (2008), appendix B.8 (exact by definition, from memory): 1 in = 0.0254 m,
// 1 lb = 0.45359237 kg, g = 9.80665 m/s^2; hence 1 lbf = 4.4482216152605 N.
TEST_CASE("quantities read to SI by the exact factors", "[cases][quantity]") {
  const double lbf = 4.4482216152605;
  const std::array rows = {
      Row{"2 in", Dimension::length, 0.0508},
      Row{"1/4 in", Dimension::length, 0.00635},
      Row{"1-1/4 in", Dimension::length, 0.03175},
      Row{"1 1/4 in.", Dimension::length, 0.03175},
      Row{"34\"", Dimension::length, 0.8636},
      Row{"-4 in", Dimension::length, -0.1016},
      Row{"-1-1/2 inches", Dimension::length, -0.0381},
      Row{".5in", Dimension::length, 0.0127},
      Row{"2 ft", Dimension::length, 0.6096},
      Row{"50.8 mm", Dimension::length, 0.0508},
      Row{"5.08e1 mm", Dimension::length, 0.0508},
      Row{"5.08 cm", Dimension::length, 0.0508},
      Row{"1.2 m", Dimension::length, 1.2},
      Row{"2900 lbf", Dimension::force, 2900 * lbf},
      Row{"3 kip", Dimension::force, 3000 * lbf},
      Row{"12 kN", Dimension::force, 12000.0},
      Row{"5500 lb", Dimension::force, 5500 * lbf},
      Row{"1450 kg", Dimension::force, 1450 * 9.80665},
      Row{"1.45 t", Dimension::force, 1450 * 9.80665},
      Row{"60 ksi", Dimension::stress, 60000 * lbf / (0.0254 * 0.0254)},
      Row{"60000 psi", Dimension::stress, 60000 * lbf / (0.0254 * 0.0254)},
      Row{"350 MPa", Dimension::stress, 350e6},
      Row{"200 GPa", Dimension::stress, 200e9},
      Row{"200 N/mm2", Dimension::stress, 200e6},
      Row{"30 deg", Dimension::angle, 0.52359877559829887},
      Row{"0.5 rad", Dimension::angle, 0.5},
      Row{"35 N/mm", Dimension::stiffness, 35000.0},
      Row{"20 kN/mm", Dimension::stiffness, 20e6},
      Row{"250 lb/in", Dimension::stiffness, 250 * lbf / 0.0254},
      Row{"15 kN m/rad", Dimension::rotational_stiffness, 15000.0},
      Row{"2 N*m/deg", Dimension::rotational_stiffness, 114.59155902616465},
      Row{"12 kip in", Dimension::moment, 12000 * lbf * 0.0254},
      Row{"80 ft-lbf", Dimension::moment, 80 * lbf * 0.3048},
      Row{"80 ft lb", Dimension::moment, 80 * lbf * 0.3048},
      Row{"80 N.m", Dimension::moment, 80.0},
      Row{"0.25 in^4", Dimension::second_moment, 0.25 * std::pow(0.0254, 4)},
      Row{"5400 mm3", Dimension::section_modulus, 5400e-9},
      Row{"1.2 in^2", Dimension::area, 1.2 * 0.0254 * 0.0254},
      Row{"7850 kg/m^3", Dimension::mass_density, 7850.0},
      Row{"0.284 lb/in^3", Dimension::mass_density, 0.284 * 0.45359237 / std::pow(0.0254, 3)},
      Row{"0.9", Dimension::ratio, 0.9},
      Row{"90 %", Dimension::ratio, 0.9},
  };
  for (const Row& row : rows) {
    INFO(row.text);
    CHECK_THAT(cases::read_quantity(row.text, row.dimension).si, WithinRel(row.si, 1e-14));
  }
}

TEST_CASE("a weight in pounds or kilograms where a force is due is noted", "[cases][quantity]") {
  CHECK(cases::read_quantity("5500 lb", Dimension::force).weight_unit == "lb");
  CHECK(cases::read_quantity("1450 kg", Dimension::force).weight_unit == "kg");
  CHECK(cases::read_quantity("250 lb/in", Dimension::stiffness).weight_unit == "lb");
  CHECK(cases::read_quantity("5500 lbf", Dimension::force).weight_unit.empty());
  CHECK(cases::read_quantity("0.284 lb/in^3", Dimension::mass_density).weight_unit.empty());
}

TEST_CASE("a quantity that cannot be read says what was found and what would do",
          "[cases][quantity]") {
  CHECK(refused("2", Dimension::length) == "2 has no unit; a length needs one, e.g. in or mm");
  CHECK(refused("2 lb", Dimension::length) ==
        "2 lb is a mass or force; a length is needed, e.g. in or mm");
  CHECK(refused("2 in", Dimension::force) == "2 in is a length; a force is needed, e.g. lb or kN");
  CHECK(refused("12 kN m", Dimension::rotational_stiffness) ==
        "12 kN m is a moment; a stiffness about an axis (moment per angle) is needed, e.g. "
        "ft-lb/deg or kN m/rad");
  CHECK(refused("2 inchs", Dimension::length) ==
        "unknown unit `inchs`; did you mean `inch`? A length is needed, e.g. in or mm");
  CHECK(refused("2 furlongs", Dimension::length).find("unknown unit `furlongs`") == 0);
  CHECK(refused("3 mPa", Dimension::stress) ==
        "unknown unit `mPa`; did you mean `MPa`? A stress is needed, e.g. ksi or MPa");
  CHECK(refused("2 N/mm/mm", Dimension::stress) ==
        "the unit `N/mm/mm` has more than one `/`; a stress is needed, e.g. ksi or MPa");
  CHECK(refused("two in", Dimension::length) ==
        "`two in` does not start with a number; a length is needed, e.g. 9 in or 230 mm");
  CHECK(refused("5,500 lb", Dimension::force) ==
        "`5,500 lb` has a comma: write 5500 without it (5.500 with a point is a thousand times "
        "less)");
  CHECK(refused("9,5 in", Dimension::length) == "`9,5 in` has a comma: write 9.5 with a point");
  CHECK(refused("6, 8 in", Dimension::length).find("joined by `or`") != std::string::npos);
  CHECK(refused("11 ga", Dimension::length).find("a gauge number is no thickness") == 0);
  CHECK(refused("37X12.50R17", Dimension::length) ==
        "`37X12.50R17` is more than one size; one length is needed, e.g. 37 in");
  CHECK(refused("0.9 in", Dimension::ratio) ==
        "`0.9 in` is not a ratio; a bare number or % is needed, e.g. 0.9");
}

TEST_CASE("feet and inches make one length", "[cases][quantity]") {
  for (const char* text : {"2 ft 10 in", "2 feet 10 in", "2' 10\"", "2'10\""}) {
    INFO(text);
    CHECK(cases::read_quantity(text, Dimension::length).si == Approx(34.0 * 0.0254).epsilon(1e-14));
  }
  CHECK(cases::read_quantity("-1 ft 6-1/2 in", Dimension::length).si ==
        Approx(-18.5 * 0.0254).epsilon(1e-14));
  CHECK(refused("2 ft 10 lb", Dimension::length).find("a length is needed") != std::string::npos);
}

TEST_CASE("a number that is not finite is refused", "[cases][quantity]") {
  for (const char* text :
       {".nan", "nan in", ".inf in", "-.inf in", "Infinity in", "1e400 in", "1/0 in", "0/0 in"}) {
    CHECK(refused(text, Dimension::length) == "`" + std::string(text) + "` is not a finite number");
  }
}

TEST_CASE("a value outside its limits is refused with the limit", "[cases][quantity]") {
  const auto refused_by = [](const char* text, const parts::Quantity& limits) {
    const double si = cases::read_quantity(text, limits.dimension).si;
    return thrown([&] { cases::require_within(si, text, limits, true); });
  };
  CHECK(refused_by("0 in", parts::positive(Dimension::length)) == "0 in is not over 0");
  CHECK(refused_by("-2 in", parts::positive(Dimension::length)) == "-2 in is not over 0");
  CHECK(refused_by("0 in", parts::not_negative(Dimension::length)) == "nothing");
  CHECK(refused_by("3", {.dimension = Dimension::ratio, .at_most = 2.0}) ==
        "3 is over the most that is allowed, 2");
}

TEST_CASE("a written quantity reads back to the same bits", "[cases][quantity]") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> mantissa(1.0, 10.0);
  std::uniform_int_distribution<int> exponent(-12, 12);
  for (int d = 0; d <= static_cast<int>(Dimension::second_moment); ++d) {
    const auto dimension = static_cast<Dimension>(d);
    for (int i = 0; i < 200; ++i) {
      const double si =
          (i % 2 == 0 ? 1.0 : -1.0) * mantissa(random) * std::pow(10, exponent(random));
      for (const bool inches : {true, false}) {
        const std::string text = cases::write_quantity(si, dimension, inches);
        INFO(text);
        CHECK(cases::read_quantity(text, dimension).si == si);
      }
    }
  }
}

TEST_CASE("a written quantity is the one a shop would write", "[cases][quantity]") {
  const auto rewritten = [](const char* text, Dimension dimension, bool inches) {
    return cases::write_quantity(cases::read_quantity(text, dimension).si, dimension, inches);
  };
  CHECK(rewritten("1-1/2 in", Dimension::length, true) == "1.5 in");
  CHECK(rewritten("50 mm", Dimension::length, true) == "50 mm");
  CHECK(rewritten("127 mm", Dimension::length, false) == "127 mm");
  CHECK(rewritten("4800 lb", Dimension::force, true) == "4800 lbf");
  CHECK(rewritten("60 ksi", Dimension::stress, true) == "60 ksi");
  CHECK(rewritten("80 ft-lb", Dimension::moment, true) == "80 ft-lbf");
  CHECK(rewritten("35 N/mm", Dimension::stiffness, false) == "35 N/mm");
  CHECK(rewritten("15 deg", Dimension::angle, true) == "15 deg");
  CHECK(rewritten("0 N", Dimension::force, false) == "0 N");
}

}  // namespace quantity_test
