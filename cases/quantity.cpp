#include "cases/quantity.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "cases/number.hpp"
#include "cases/unit.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Dimension;

/// ".nan", "-.inf", "infinity": numbers to YAML, none to us.
bool names_no_number(std::string_view text) {
  std::string word = lower(text.substr(0, text.find(' ')));
  while (!word.empty() && (word[0] == '-' || word[0] == '+' || word[0] == '.')) word.erase(0, 1);
  return word == "nan" || word == "inf" || word == "infinity";
}

[[noreturn]] void refuse_text(std::string_view text, Dimension dimension) {
  throw InputError(
      "", fmt::format("{} does not start with a number; {} is needed, e.g. {} or {}", quoted(text),
                      dimension_name(dimension), example_quantity(dimension, true),
                      example_quantity(dimension, false)));
}

[[noreturn]] void refuse_not_finite(std::string_view text) {
  throw InputError("", quoted(text) + " is not a finite number");
}

/// "9,5 in" may be meant as 9.5 or as 95: the message says how each is written.
[[noreturn]] void refuse_comma(const std::string& text, std::size_t comma) {
  std::size_t end = comma + 1;
  while (end < text.size() && is_digit(text[end])) ++end;
  const std::string before = text.substr(0, comma);
  const std::string after = text.substr(comma + 1, end - comma - 1);
  std::string hint = "give one value; several, in `compare`, are joined by `or`: 6 or 8 in";
  if (after.size() == 3) {
    hint = fmt::format("write {}{} without it ({}.{} with a point is a thousand times less)",
                       before, after, before, after);
  } else if (!after.empty()) {
    hint = fmt::format("write {}.{} with a point", before, after);
  }
  throw InputError("", quoted(text) + " has a comma: " + hint);
}

/// "2 ft 10 in" and "2' 10\"": the length after feet, empty when there are no feet with more
/// behind them.
std::string_view after_feet(std::string_view unit) {
  for (const std::string_view feet : {"feet", "foot", "ft", "'"}) {
    if (lower(unit.substr(0, feet.size())) != feet) continue;
    const std::string_view rest = trim(unit.substr(feet.size()));
    return !rest.empty() && is_digit(rest[0]) ? rest : std::string_view{};
  }
  return {};
}

double read_ratio(double number, std::string_view unit, std::string_view text) {
  if (unit.empty()) return number;
  if (unit == "%") return number / 100.0;
  throw InputError(
      "", fmt::format("{} is not a ratio; a bare number or % is needed, e.g. 0.9", quoted(text)));
}

Measured with_unit(double number, std::string_view unit_text, std::string_view text,
                   Dimension dimension) {
  Unit unit;
  try {
    unit = read_unit(unit_text);
  } catch (const InputError& error) {
    std::string needed = "; " + std::string(dimension_name(dimension));
    if (error.problem().back() == '?') needed = " A" + needed.substr(3);
    throw InputError("", fmt::format("{}{} is needed, e.g. {}", error.problem(), needed,
                                     example_units(dimension)));
  }
  if (unit.powers == powers_of(dimension)) return {number * unit.factor, {}};
  if (is_weight_for(unit.powers, dimension)) return {number * unit.as_weight, unit.mass};
  throw InputError(
      "", fmt::format("{} is {}; {} is needed, e.g. {}", squeeze(text), powers_name(unit.powers),
                      dimension_name(dimension), example_units(dimension)));
}

}  // namespace

Measured read_quantity(std::string_view raw, Dimension dimension) {
  const std::string text = squeeze(raw);
  if (names_no_number(text)) refuse_not_finite(text);
  const auto number = number_at_start(text);
  if (!number) refuse_text(text, dimension);
  if (!std::isfinite(number->value)) refuse_not_finite(text);
  const std::string_view unit = trim(std::string_view(text).substr(number->length));
  if (!unit.empty() && unit[0] == ',') refuse_comma(text, number->length);
  if (dimension == Dimension::ratio) return {read_ratio(number->value, unit, text), {}};
  if (unit.empty()) {
    throw InputError("", fmt::format("{} has no unit; {} needs one, e.g. {}", text,
                                     dimension_name(dimension), example_units(dimension)));
  }
  if (dimension == Dimension::length && (unit[0] == 'x' || unit[0] == 'X')) {
    throw InputError("", fmt::format("{} is more than one size; one length is needed, e.g. {} in",
                                     quoted(text), text.substr(0, number->length)));
  }
  if (dimension == Dimension::length && !after_feet(unit).empty()) {
    const double inches = read_quantity(after_feet(unit), dimension).si;
    constexpr double kFoot = 12.0 * base::kInch;
    return {number->value * kFoot + (text[0] == '-' ? -inches : inches), {}};
  }
  const Measured measured = with_unit(number->value, unit, text, dimension);
  if (!std::isfinite(measured.si)) refuse_not_finite(text);
  return measured;
}

void require_within(double si, std::string_view text, const parts::Quantity& limits, bool inches) {
  const auto refuse = [&](std::string_view relation, double limit) {
    const std::string shown = limit == 0.0 ? "0" : write_quantity(limit, limits.dimension, inches);
    throw InputError("", fmt::format("{} is {} {}", squeeze(text), relation, shown));
  };
  if (!(si > limits.above)) refuse("not over", limits.above);
  if (!(si >= limits.at_least)) refuse("under the least that is allowed,", limits.at_least);
  if (!(si <= limits.at_most)) refuse("over the most that is allowed,", limits.at_most);
}

}  // namespace cases
