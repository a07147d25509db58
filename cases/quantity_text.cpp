#include <array>
#include <cmath>
#include <initializer_list>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "cases/number.hpp"
#include "cases/quantity.hpp"
#include "cases/unit.hpp"

namespace cases {
namespace {

using parts::Dimension;
using Names = std::array<std::string_view, 2>;

struct Customary {
  Names inch_pound;
  Names metric;
  std::string_view si;  ///< factor 1, so that every value can be written
  std::string_view inch_example;
  std::string_view metric_example;
};

/// In the order of parts::Dimension.
constexpr std::array kCustomary{
    Customary{{"", ""}, {"", ""}, "", "0.9", "0.9"},
    Customary{{"in", "in"}, {"mm", "mm"}, "m", "9 in", "230 mm"},
    Customary{{"lbf", "kip"}, {"N", "kN"}, "N", "5500 lb", "25 kN"},
    Customary{{"ksi", "psi"}, {"MPa", "GPa"}, "Pa", "60 ksi", "420 MPa"},
    Customary{
        {"lb/in^3", "lb/in^3"}, {"kg/m^3", "kg/m^3"}, "kg/m^3", "0.284 lb/in^3", "7850 kg/m^3"},
    Customary{{"deg", "deg"}, {"deg", "deg"}, "rad", "15 deg", "15 deg"},
    Customary{{"lbf/in", "kip/in"}, {"N/mm", "kN/mm"}, "N/m", "200 lb/in", "35 N/mm"},
    Customary{{"ft-lbf/deg", "in-lbf/deg"},
              {"kN m/rad", "N m/deg"},
              "N m/rad",
              "200 ft-lb/deg",
              "15 kN m/rad"},
    Customary{{"ft-lbf", "in-lbf"}, {"N m", "kN m"}, "N m", "80 ft-lb", "110 N m"},
    Customary{{"lbf/in", "kip/in"}, {"N/mm", "kN/mm"}, "N/m", "200 lb/in", "35 N/mm"},
    Customary{{"in^2", "in^2"}, {"mm^2", "mm^2"}, "m^2", "1.2 in^2", "770 mm^2"},
    Customary{{"in^3", "in^3"}, {"mm^3", "mm^3"}, "m^3", "0.33 in^3", "5400 mm^3"},
    Customary{{"in^4", "in^4"}, {"mm^4", "mm^4"}, "m^4", "0.25 in^4", "104000 mm^4"},
    Customary{{"degF", "degF"}, {"K", "K"}, "K", "70 degF", "40 K"},
    Customary{{"/degF", "/degF"}, {"/K", "/K"}, "/K", "6.5e-6 /degF", "12e-6 /K"},
    Customary{{"ft/s", "in/s"}, {"m/s", "mm/s"}, "m/s", "5 ft/s", "1.5 m/s"},
    Customary{{"g", "g"}, {"g", "m/s^2"}, "m/s^2", "0.9 g", "0.9 g"},
};

const Customary& customary(Dimension dimension) {
  const auto index = static_cast<std::size_t>(dimension);
  INVARIANT(index < kCustomary.size());
  return kCustomary[index];
}

/// The shortest decimal whose product with the unit is exactly `si`; empty when there is none.
std::string in_unit(double si, std::string_view unit) {
  const double factor = unit.empty() ? 1.0 : read_unit(unit).factor;
  for (int digits = 1; digits <= 17; ++digits) {
    const std::string number = decimal(si / factor, digits);
    if (number_at_start(number)->value * factor != si) continue;
    return unit.empty() ? number : number + " " + std::string(unit);
  }
  return {};
}

// Another unit must be worth it: "4800 lbf" rather than "4.8 kip", "50 mm" in an inch case rather
// than "1.968503937007874 in".
constexpr std::size_t kClearlyShorter = 4;

bool clearly_shorter(const std::string& text, const std::string& than) {
  return !text.empty() && (than.empty() || text.size() + kClearlyShorter <= than.size());
}

std::string in_either(double si, const Names& units) {
  const std::string first = in_unit(si, units[0]);
  const std::string second = in_unit(si, units[1]);
  return clearly_shorter(second, first) ? second : first;
}

}  // namespace

std::string write_quantity(double si, Dimension dimension, bool inches) {
  INVARIANT(std::isfinite(si));
  const Customary& units = customary(dimension);
  const std::string own = in_either(si, inches ? units.inch_pound : units.metric);
  const std::string other = in_either(si, inches ? units.metric : units.inch_pound);
  const std::string best = clearly_shorter(other, own) ? other : own;
  return best.empty() ? in_unit(si, units.si) : best;
}

std::string shown_quantity(double si, Dimension dimension, bool inches) {
  INVARIANT(std::isfinite(si));
  const Customary& units = customary(dimension);
  const Names& names = inches ? units.inch_pound : units.metric;
  const auto in = [si](std::string_view unit) {
    return unit.empty() ? si : si / read_unit(unit).factor;
  };
  const bool large = std::abs(in(names[0])) >= 1.0e4 && std::abs(in(names[1])) < 1.0e4;
  const std::string_view unit = names[large ? 1 : 0];
  return fmt::format("{:.4g}{}{}", in(unit), unit.empty() ? "" : " ", unit);
}

CustomaryUnit customary_unit(Dimension dimension, bool inches) {
  const Customary& units = customary(dimension);
  const std::string_view name = (inches ? units.inch_pound : units.metric)[0];
  return {name, name.empty() ? 1.0 : read_unit(name).factor};
}

std::string_view example_quantity(Dimension dimension, bool inches) {
  const Customary& units = customary(dimension);
  return inches ? units.inch_example : units.metric_example;
}

}  // namespace cases
