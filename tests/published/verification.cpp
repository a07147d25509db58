#include "tests/published/verification.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <sstream>

#include <catch2/catch.hpp>

namespace published {
namespace {

/// A share up to which computed and published value are the same but for rounding.
constexpr double kRounding = 1.0e-5;

std::string_view words(Basis basis) {
  switch (basis) {
    case Basis::read:
      return "read";
    case Basis::from_memory:
      return "from memory";
    case Basis::formula_from_memory:
      return "formula from memory";
    case Basis::common_practice:
      return "common practice, no source";
    case Basis::general_finite_elements:
      break;
  }
  return "general finite elements";
}

/// Half a unit of the last digit of "2.07" or "7.07e6".
double half_digit(const std::string& number) {
  const std::size_t e = number.find('e');
  const std::string digits = number.substr(0, e);
  const std::size_t point = digits.find('.');
  const double decimals =
      point == std::string::npos ? 0.0 : static_cast<double>(digits.size() - point - 1);
  const double power = e == std::string::npos ? 0.0 : std::stod(number.substr(e + 1));
  return 0.5 * std::pow(10.0, power - decimals);
}

std::string words(Tolerance tolerance) {
  std::ostringstream out;
  switch (tolerance.kind) {
    case Tolerance::Kind::as_printed:
      return "last digit";
    case Tolerance::Kind::relative:
      if (tolerance.value <= kRounding) return "rounding";
      out << std::setprecision(3) << 100.0 * tolerance.value << " %";
      break;
    case Tolerance::Kind::absolute:
      out << std::setprecision(3) << tolerance.value;
      break;
  }
  return out.str();
}

double distance(Tolerance tolerance, const std::string& number) {
  switch (tolerance.kind) {
    case Tolerance::Kind::as_printed:
      return half_digit(number) * (1.0 + 1e-9);
    case Tolerance::Kind::relative:
      return tolerance.value * std::abs(std::stod(number));
    case Tolerance::Kind::absolute:
      break;
  }
  return tolerance.value;
}

}  // namespace

void verify(const Source& source, std::string_view quantity, std::string_view printed,
            double computed, Tolerance tolerance, std::string_view test_file) {
  const std::string number(printed.substr(0, printed.find(' ')));
  INFO(source.name << ": " << quantity << " = " << printed);
  CHECK_THAT(computed, Catch::Matchers::WithinAbs(std::stod(number), distance(tolerance, number)));
  if (const char* rows = std::getenv("LINKMARGIN_VERIFICATION_ROWS")) {
    std::ofstream out(rows, std::ios::app);
    out << test_file.substr(test_file.rfind('/') + 1) << '\t' << source.name << '\t' << quantity
        << '\t' << printed << '\t' << std::setprecision(17) << computed << '\t' << words(tolerance)
        << '\t' << words(source.basis) << '\n';
    REQUIRE(out.good());
  }
}

}  // namespace published
