#include "report/units_shown.hpp"

#include <limits>

#include <catch2/catch.hpp>

namespace units_shown_test {
using checks::Measure;
using report::multiple;
using report::number;
using report::percent;
using report::shown;
using report::shown_range;
using report::shown_worked;

namespace {
constexpr double kInfinite = std::numeric_limits<double>::infinity();
}

TEST_CASE("numbers have three digits, commas at the thousands and no exponent", "[report]") {
  CHECK(number(0.0) == "0");
  CHECK(number(1.2345) == "1.23");
  CHECK(number(12.0) == "12.0");
  CHECK(number(0.012345) == "0.0123");
  CHECK(number(1234.5) == "1,230");
  CHECK(number(-1234567.0) == "-1,230,000");
  CHECK(number(999.6) == "1,000");
  CHECK(number(9.999) == "10.0");
}

TEST_CASE("a number that is not known is said in words", "[report]") {
  CHECK(number(base::kUnset) == "not known");
  CHECK(number(kInfinite) == "no limit");
  CHECK(shown(base::kUnset, Measure::stress, true) == "not known");
  CHECK(shown_worked({}, false) == "not known");
  CHECK(percent(base::kUnset) == "not known");
  CHECK(multiple(base::kUnset) == "not known");
  CHECK(report::shown_mass(base::kUnset, true) == "not known");
  CHECK(shown_range({}, Measure::moment, true) == "not known");
}

TEST_CASE("quantities are in the units of the case", "[report]") {
  CHECK(shown(0.0254, Measure::length, true) == "1.00 in");
  CHECK(shown(0.0254, Measure::length, false) == "25.4 mm");
  CHECK(shown(250.0e6, Measure::stress, false) == "250 MPa");
  CHECK(shown(36.0 * base::kKsi, Measure::stress, true) == "36.0 ksi");
  CHECK(shown(5500.0 * base::kPoundForce, Measure::force, true) == "5,500 lbf");
  CHECK(shown(15000.0 * base::kPoundForce, Measure::force, true) == "15.0 kip");
  CHECK(shown(15000.0, Measure::force, false) == "15.0 kN");
  CHECK(shown(1200.0, Measure::moment, false) == "1,200 N m");
  CHECK(report::shown_mass(base::kPoundMass, true) == "1.00 lb");
  CHECK(report::shown_mass(20.0, false) == "20.0 kg");
}

TEST_CASE("one foot-pound of moment is 1.355818 N m, one pound a foot 1.488164 kg/m", "[report]") {
  // NIST SP 811 (2008), appendix B.8, from memory.
  CHECK(shown(1355.818, Measure::moment, true) == "1,000 ft-lbf");
  CHECK(report::shown_mass_per_length(1.488164, true) == "1.00 lb/ft");
}

TEST_CASE("a range has one unit, and one number when both ends read the same", "[report]") {
  const double ft_lbf = 12.0 * base::kInch * base::kPoundForce;
  CHECK(shown_range({1230.0 * ft_lbf, 4100.0 * ft_lbf}, Measure::moment, true) ==
        "1,230-4,100 ft-lbf");
  CHECK(shown_range({1000.0, 1000.4}, Measure::moment, false) == "1,000 N m");
  CHECK(shown_range({-5.0, 3.0}, Measure::moment, false) == "-5.00 to 3.00 N m");
}

TEST_CASE("a utilization near the limit is told from 100 %", "[report]") {
  CHECK(percent(0.932) == "93 %");
  CHECK(percent(1.0) == "100 %");
  CHECK(percent(1.0004) == "100.04 %");
  CHECK(percent(0.99996) == "99.996 %");
  CHECK(percent(1.00000004) == "just over 100 %");
  CHECK(percent(12.34) == "1,234 %");
  CHECK(percent(0.0) == "0 %");
}

TEST_CASE("a multiple far from any limit is not given to a digit", "[report]") {
  CHECK(multiple(1.274) == "1.27");
  CHECK(multiple(250.0) == "over 100");
  CHECK(multiple(kInfinite) == "over 100");
}

TEST_CASE("worked lines use units that multiply without conversion", "[report]") {
  CHECK(shown_worked({1000.0 * base::kPoundForce, Measure::force}, true) == "1.000 kip");
  CHECK(shown_worked({36.0 * base::kKsi, Measure::stress}, true) == "36.00 ksi");
  CHECK(shown_worked({412.0, Measure::moment}, false) == "412000 N mm");
  CHECK(shown_worked({12400.0, Measure::force}, false) == "12400 N");
  CHECK(shown_worked({44513.0e-12, Measure::second_moment}, false) == "44513 mm^4");
  CHECK(shown_worked({1e-20, Measure::force}, false) == "0 N");
}

TEST_CASE("a worked line can be recomputed from what is printed", "[report]") {
  const checks::WorkedLine line{"sigma = N / A + N^2",
                                "{0} / {1} + {0}^2 - {2}^2 = {3}",
                                {{12400.0, Measure::force},
                                 {279.6e-6, Measure::area},
                                 {3.0, Measure::ratio},
                                 {44.349e6, Measure::stress}}};
  CHECK(report::numbers_of(line, false) ==
        "12400 N / 279.6 mm^2 + (12400 N)^2 - 3.000^2 = 44.35 MPa");
  CHECK(12400.0 / 279.6 == Approx(44.35).epsilon(1e-3));
}

}  // namespace units_shown_test
