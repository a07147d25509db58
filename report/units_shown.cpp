#include "report/units_shown.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "base/invariant.hpp"

namespace report {
namespace {

using checks::Measure;

constexpr double kFoot = 12.0 * base::kInch;
constexpr double kKip = 1000.0 * base::kPoundForce;
constexpr double kTenThousandPounds = 10.0 * kKip;

struct Unit {
  double in_si = 1.0;
  const char* name = "";
};

/// The unit in which the trade reads a quantity of this size.
Unit everyday_unit(Measure measure, bool inches, double si) {
  using base::kInch;
  switch (measure) {
    case Measure::ratio:
      return {1.0, ""};
    case Measure::stress:
      return inches ? Unit{base::kKsi, "ksi"} : Unit{base::kMegapascal, "MPa"};
    case Measure::force:
      if (!inches) return {base::kKilonewton, "kN"};
      return std::abs(si) < kTenThousandPounds ? Unit{base::kPoundForce, "lbf"} : Unit{kKip, "kip"};
    case Measure::moment:
      return inches ? Unit{kFoot * base::kPoundForce, "ft-lbf"} : Unit{1.0, "N m"};
    case Measure::length:
      return inches ? Unit{kInch, "in"} : Unit{base::kMillimeter, "mm"};
    case Measure::force_per_length:
      return inches ? Unit{base::kPoundForce / kInch, "lbf/in"} : Unit{1.0e3, "N/mm"};
    case Measure::angle:
      return {base::kDegree, "deg"};
    case Measure::area:
      return inches ? Unit{kInch * kInch, "in^2"} : Unit{1e-6, "mm^2"};
    case Measure::section_modulus:
      return inches ? Unit{kInch * kInch * kInch, "in^3"} : Unit{1e-9, "mm^3"};
    case Measure::second_moment:
      return inches ? Unit{kInch * kInch * kInch * kInch, "in^4"} : Unit{1e-12, "mm^4"};
  }
  return {};
}

/// Units of one consistent set, so that worked lines need no conversion.
Unit worked_unit(Measure measure, bool inches) {
  switch (measure) {
    case Measure::force:
      return inches ? Unit{kKip, "kip"} : Unit{1.0, "N"};
    case Measure::moment:
      return inches ? Unit{kKip * base::kInch, "kip-in"} : Unit{1e-3, "N mm"};
    case Measure::force_per_length:
      return inches ? Unit{kKip / base::kInch, "kip/in"} : Unit{1.0e3, "N/mm"};
    default:
      return everyday_unit(measure, inches, 0.0);
  }
}

std::string with_commas(std::string digits) {
  const std::size_t start = digits.find_first_of("0123456789");
  std::size_t at = std::min(digits.find('.'), digits.size());
  while (at > start + 3) {
    at -= 3;
    digits.insert(digits.begin() + static_cast<std::ptrdiff_t>(at), ',');
  }
  return digits;
}

/// Decimal exponent of the value once it is rounded to `significant` digits.
int exponent(double value, int significant) {
  const std::string text = fmt::format("{:.{}e}", std::abs(value), significant - 1);
  return std::stoi(text.substr(text.find('e') + 1));
}

std::string joined_unit(const std::string& digits, const Unit& unit) {
  return *unit.name == '\0' ? digits : digits + " " + unit.name;
}

bool known(double value) {
  return std::isfinite(value);
}

}  // namespace

std::string number(double value, int significant) {
  if (std::isnan(value)) return "not known";
  if (std::isinf(value)) return "no limit";
  if (value == 0.0) return "0";
  const int e = exponent(value, significant);
  if (e > 9 || e < -6) return fmt::format("{:.{}e}", value, significant - 1);
  const int decimals = significant - 1 - e;
  if (decimals >= 0) return with_commas(fmt::format("{:.{}f}", value, decimals));
  const double step = std::pow(10.0, -decimals);
  return with_commas(fmt::format("{:.0f}", std::round(value / step) * step));
}

std::string shown(double si, Measure measure, bool inches) {
  if (!known(si)) return number(si);
  const Unit unit = everyday_unit(measure, inches, si);
  return joined_unit(number(si / unit.in_si), unit);
}

std::string shown_range(const studies::Range& range, Measure measure, bool inches) {
  if (!known(range.low) || !known(range.high)) {
    return shown(known(range.low) ? range.low : range.high, measure, inches);
  }
  const Unit unit =
      everyday_unit(measure, inches, std::max(std::abs(range.low), std::abs(range.high)));
  const std::string low = number(range.low / unit.in_si);
  const std::string high = number(range.high / unit.in_si);
  if (low == high) return joined_unit(high, unit);
  return joined_unit(low + (range.low < 0.0 ? " to " : "-") + high, unit);
}

std::string shown_worked(const checks::Value& value, bool inches) {
  constexpr int kDigits = 4;
  constexpr double kNothing = 1e-9;  // in the unit shown: rounding, not a quantity
  if (!known(value.si)) return number(value.si);
  const Unit unit = worked_unit(value.measure, inches);
  const double v = value.si / unit.in_si;
  if (std::abs(v) < kNothing) return joined_unit("0", unit);
  const int e = exponent(v, kDigits);
  if (e > 9 || e < -4) return joined_unit(fmt::format("{:.{}e}", v, kDigits - 1), unit);
  return joined_unit(fmt::format("{:.{}f}", v, std::max(kDigits - 1 - e, 0)), unit);
}

std::string numbers_of(const checks::WorkedLine& line, bool inches) {
  std::string out;
  std::size_t at = 0;
  while (at < line.numbers.size()) {
    const std::size_t open = line.numbers.find('{', at);
    if (open == std::string::npos) break;
    const std::size_t close = line.numbers.find('}', open);
    INVARIANT(close != std::string::npos && close > open + 1);
    const auto index =
        static_cast<std::size_t>(std::stoul(line.numbers.substr(open + 1, close - open - 1)));
    INVARIANT(index < line.values.size());
    out += line.numbers.substr(at, open - at);
    at = close + 1;
    const std::string value = shown_worked(line.values[index], inches);
    // A power is of the number with its unit and its sign.
    const bool to_a_power = at < line.numbers.size() && line.numbers[at] == '^';
    const bool single = value.find_first_not_of("0123456789.") == std::string::npos;
    out += to_a_power && !single ? fmt::format("({})", value) : value;
  }
  return out + line.numbers.substr(at);
}

std::string shown_mass(double kilograms, bool inches) {
  if (!known(kilograms)) return number(kilograms);
  return inches ? number(kilograms / base::kPoundMass) + " lb" : number(kilograms) + " kg";
}

std::string shown_mass_per_length(double kg_per_meter, bool inches) {
  if (!known(kg_per_meter)) return number(kg_per_meter);
  return inches ? number(kg_per_meter * kFoot / base::kPoundMass) + " lb/ft"
                : number(kg_per_meter) + " kg/m";
}

std::string percent(double ratio) {
  if (!known(ratio)) return number(ratio);
  const double value = 100.0 * ratio;
  if (value == 0.0) return "0 %";
  constexpr double kSame = 1e-9;
  if (std::abs(value - 100.0) < kSame) return "100 %";
  // Near the limit as many decimals as tell it from 100 %; far from it whole percents do.
  for (int decimals = value < 9.95 ? 1 : 0; decimals < 6; ++decimals) {
    const std::string text = fmt::format("{:.{}f}", value, decimals);
    if (std::stod(text) != 100.0) return with_commas(text) + " %";
  }
  return value > 100.0 ? "just over 100 %" : "just under 100 %";
}

std::string multiple(double factor) {
  constexpr double kLargest = 100.0;
  if (std::isnan(factor)) return number(factor);
  return factor >= kLargest ? "over 100" : number(factor);
}

std::string ratio_range(const studies::Range& range) {
  if (!known(range.low) || !known(range.high)) return "not known";
  const std::string low = number(range.low);
  const std::string high = number(range.high);
  return low == high ? high : low + "-" + high;
}

}  // namespace report
