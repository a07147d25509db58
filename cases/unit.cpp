#include "cases/unit.hpp"

#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

constexpr Powers kLength{.length = 1};
constexpr Powers kMass{.mass = 1};
constexpr Powers kForce{.length = 1, .mass = 1, .time = -2};
constexpr Powers kStress{.length = -1, .mass = 1, .time = -2};
constexpr Powers kAngle{.angle = 1};
constexpr Powers kTemperature{.temperature = 1};
constexpr Powers kTime{.time = 1};
constexpr Powers kSpeed{.length = 1, .time = -1};
constexpr Powers kAcceleration{.length = 1, .time = -2};

struct SimpleUnit {
  std::string_view name;
  double factor;
  Powers powers;
  bool any_case = false;  ///< inch-pound words only: `mPa` must not pass for `MPa`
};

constexpr std::array kUnits{
    SimpleUnit{"in", base::kInch, kLength, true},
    SimpleUnit{"inch", base::kInch, kLength, true},
    SimpleUnit{"inches", base::kInch, kLength, true},
    SimpleUnit{"\"", base::kInch, kLength},
    SimpleUnit{"ft", 0.3048, kLength, true},
    SimpleUnit{"foot", 0.3048, kLength, true},
    SimpleUnit{"feet", 0.3048, kLength, true},
    SimpleUnit{"'", 0.3048, kLength},
    SimpleUnit{"mm", base::kMillimeter, kLength},
    SimpleUnit{"cm", 0.01, kLength},
    SimpleUnit{"m", 1.0, kLength},
    SimpleUnit{"lb", base::kPoundMass, kMass, true},
    SimpleUnit{"lbs", base::kPoundMass, kMass, true},
    SimpleUnit{"pound", base::kPoundMass, kMass, true},
    SimpleUnit{"pounds", base::kPoundMass, kMass, true},
    SimpleUnit{"lbf", base::kPoundForce, kForce, true},
    SimpleUnit{"kip", 1000.0 * base::kPoundForce, kForce, true},
    SimpleUnit{"kips", 1000.0 * base::kPoundForce, kForce, true},
    SimpleUnit{"N", 1.0, kForce},
    SimpleUnit{"kN", base::kKilonewton, kForce},
    SimpleUnit{"kg", 1.0, kMass},
    SimpleUnit{"t", 1000.0, kMass},
    SimpleUnit{"psi", base::kPsi, kStress, true},
    SimpleUnit{"ksi", base::kKsi, kStress, true},
    SimpleUnit{"Pa", 1.0, kStress},
    SimpleUnit{"MPa", base::kMegapascal, kStress},
    SimpleUnit{"GPa", 1.0e9, kStress},
    SimpleUnit{"deg", base::kDegree, kAngle, true},
    SimpleUnit{"degree", base::kDegree, kAngle, true},
    SimpleUnit{"degrees", base::kDegree, kAngle, true},
    SimpleUnit{"rad", 1.0, kAngle},
    SimpleUnit{"K", 1.0, kTemperature},
    SimpleUnit{"degC", 1.0, kTemperature},
    SimpleUnit{"degF", 5.0 / 9.0, kTemperature},
    SimpleUnit{"s", 1.0, kTime},
    SimpleUnit{"mph", 5280.0 * 0.3048 / 3600.0, kSpeed, true},
    SimpleUnit{"g", base::kGravity, kAcceleration},
};

struct DimensionWords {
  Powers powers;
  std::string_view name;
  std::string_view units;
};

/// In the order of parts::Dimension.
constexpr std::array kDimensions{
    DimensionWords{{}, "a ratio", "a bare number or %"},
    DimensionWords{kLength, "a length", "in or mm"},
    DimensionWords{kForce, "a force", "lb or kN"},
    DimensionWords{kStress, "a stress", "ksi or MPa"},
    DimensionWords{{.length = -3, .mass = 1}, "a density", "lb/in^3 or kg/m^3"},
    DimensionWords{kAngle, "an angle", "deg or rad"},
    DimensionWords{{.mass = 1, .time = -2}, "a stiffness (force per length)", "lb/in or kN/mm"},
    DimensionWords{{.length = 2, .mass = 1, .time = -2, .angle = -1},
                   "a stiffness about an axis (moment per angle)",
                   "ft-lb/deg or kN m/rad"},
    DimensionWords{{.length = 2, .mass = 1, .time = -2}, "a moment", "ft-lb or N m"},
    DimensionWords{{.mass = 1, .time = -2}, "a force per length", "lb/in or N/mm"},
    DimensionWords{{.length = 2}, "an area", "in^2 or mm^2"},
    DimensionWords{{.length = 3}, "a section modulus", "in^3 or mm^3"},
    DimensionWords{{.length = 4}, "a second moment of area", "in^4 or mm^4"},
    DimensionWords{kTemperature, "a difference of temperature", "degF or K"},
    DimensionWords{{.temperature = -1}, "an expansion per temperature", "/degF or /K"},
    DimensionWords{kSpeed, "a speed", "ft/s or m/s"},
    DimensionWords{kAcceleration, "an acceleration", "g or m/s^2"},
};

const DimensionWords& words_for(parts::Dimension dimension) {
  const auto index = static_cast<std::size_t>(dimension);
  INVARIANT(index < kDimensions.size());
  return kDimensions[index];
}

const SimpleUnit* find_unit(std::string_view name) {
  for (const SimpleUnit& unit : kUnits) {
    if (unit.name == name) return &unit;
  }
  const std::string small = lower(name);
  for (const SimpleUnit& unit : kUnits) {
    if (unit.any_case && unit.name == small) return &unit;
  }
  return nullptr;
}

const SimpleUnit& known_unit(std::string_view name) {
  if (const SimpleUnit* unit = find_unit(name)) return *unit;
  const std::string word = lower(name);
  if (word == "ga" || word == "gauge" || word == "gage") {
    throw base::InputError("",
                           "a gauge number is no thickness (gauges of tube, sheet and wire "
                           "differ); write the thickness");
  }
  throw base::InputError("", "unknown unit " + quoted(name) + did_you_mean(name, unit_names()));
}

/// Multiplies `unit` by one word of a compound: "in", "in^4", "mm4".
void multiply(Unit& unit, std::string_view word, int sign) {
  std::string_view name = word;
  int power = 1;
  if (name.size() > 1 && is_digit(name.back())) {
    power = name.back() - '0';
    name.remove_suffix(1);
    if (name.back() == '^') name.remove_suffix(1);
  }
  const SimpleUnit& simple = known_unit(name);
  const bool is_mass = simple.powers == kMass;
  const double weight = is_mass ? simple.factor * base::kGravity : simple.factor;
  for (int i = 0; i < power; ++i) {
    unit.factor = sign > 0 ? unit.factor * simple.factor : unit.factor / simple.factor;
    unit.as_weight = sign > 0 ? unit.as_weight * weight : unit.as_weight / weight;
  }
  const int p = sign * power;
  unit.powers.length += p * simple.powers.length;
  unit.powers.mass += p * simple.powers.mass;
  unit.powers.time += p * simple.powers.time;
  unit.powers.angle += p * simple.powers.angle;
  unit.powers.temperature += p * simple.powers.temperature;
  if (is_mass) unit.mass = std::string(simple.name);
}

void multiply_all(Unit& unit, std::string_view words, int sign) {
  std::string word;
  bool any = false;
  for (std::size_t i = 0; i <= words.size(); ++i) {
    const char c = i < words.size() ? words[i] : ' ';
    if (c != ' ' && c != '*' && c != '-' && c != '.') {
      word += c;
    } else if (!word.empty()) {
      multiply(unit, word, sign);
      word.clear();
      any = true;
    }
  }
  if (!any) throw base::InputError("", "a unit is missing beside `/`");
}

}  // namespace

std::vector<std::string> unit_names() {
  std::vector<std::string> names;
  for (const SimpleUnit& unit : kUnits) names.emplace_back(unit.name);
  return names;
}

Unit read_unit(std::string_view text) {
  Unit unit;
  const std::vector<std::string> sides = split(text, "/");
  if (sides.size() > 2) {
    throw base::InputError("", "the unit " + quoted(text) + " has more than one `/`");
  }
  if (sides.size() == 1 || !sides[0].empty()) multiply_all(unit, sides[0], 1);
  if (sides.size() == 2) multiply_all(unit, sides[1], -1);
  return unit;
}

Powers powers_of(parts::Dimension dimension) {
  return words_for(dimension).powers;
}

bool is_weight_for(const Powers& powers, parts::Dimension dimension) {
  Powers weight = powers;
  weight.length += 1;
  weight.time -= 2;
  return powers.mass == 1 && weight == powers_of(dimension);
}

std::string_view dimension_name(parts::Dimension dimension) {
  return words_for(dimension).name;
}

std::string_view powers_name(const Powers& powers) {
  if (powers == kMass) return "a mass or force";
  if (powers == Powers{.length = 3}) return "a volume or section modulus";
  if (powers == Powers{.length = -1, .mass = 1}) return "a stiffness (force per length)";
  if (powers == Powers{.length = 1, .mass = 1}) return "a moment";
  for (const DimensionWords& d : kDimensions) {
    if (d.powers == powers) return d.name;
  }
  return "another kind of quantity";
}

std::string_view example_units(parts::Dimension dimension) {
  return words_for(dimension).units;
}

}  // namespace cases
