#include "cases/sizes.hpp"

#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/quantity.hpp"
#include "cases/unit.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;

/// The unit of length at the start of a text; empty when there is none.
std::string_view length_at_start(std::string_view text) {
  if (!text.empty() && text[0] == '"') return text.substr(0, 1);
  std::size_t end = 0;
  while (end < text.size() && is_letter(text[end])) ++end;
  const std::string_view word = text.substr(0, end);
  for (const char* unit : {"in", "inch", "inches", "ft", "foot", "feet", "mm", "cm", "m"}) {
    if (lower(word) == unit) return text.substr(0, end + (text.substr(end, 1) == "." ? 1 : 0));
  }
  return {};
}

/// The length of " x " at the start of a text that goes on with a number; 0 when there is none.
std::size_t times_at_start(std::string_view text) {
  const std::string_view cross = "\xC3\x97";  // the multiplication sign
  std::string_view rest = trim(text);
  if (rest.substr(0, cross.size()) == cross) {
    rest.remove_prefix(cross.size());
  } else if (!rest.empty() && (rest[0] == 'x' || rest[0] == 'X')) {
    rest.remove_prefix(1);
  } else {
    return 0;
  }
  rest = trim(rest);
  return number_at_start(rest) ? text.size() - rest.size() : 0;
}

struct Found {
  std::string number;
  double value = 0.0;
  std::string unit;
};

Sizes with_units(std::vector<Found> found, std::string_view rest, std::string_view text,
                 std::string_view example) {
  Sizes sizes;
  for (std::size_t i = found.size(); i-- > 1;) {
    if (found[i - 1].unit.empty()) found[i - 1].unit = found[i].unit;
  }
  for (const Found& f : found) {
    if (f.unit.empty()) {
      throw InputError("", fmt::format("{} in {} has no unit of length; e.g. {}",
                                       quoted(found.back().number), quoted(text), quoted(example)));
    }
    const std::string shown = f.number + (f.unit == "\"" ? "" : " ") + f.unit;
    const double si = read_quantity(shown, parts::Dimension::length).si;
    if (!(si > 0.0)) {
      throw InputError(
          "", fmt::format("{} in {} is not over 0; e.g. {}", shown, quoted(text), quoted(example)));
    }
    sizes.si.push_back(si);
    sizes.found.push_back(shown);
  }
  sizes.rest = squeeze(rest);
  if (!sizes.rest.empty() && sizes.rest[0] == ',') sizes.rest = squeeze(sizes.rest.substr(1));
  return sizes;
}

}  // namespace

Sizes read_sizes(std::string_view text, std::string_view example) {
  const std::string squeezed = squeeze(text);
  std::string_view rest = squeezed;
  std::vector<Found> found;
  while (const auto number = number_at_start(rest)) {
    Found next{std::string(rest.substr(0, number->length)), number->value, {}};
    rest = trim(rest.substr(number->length));
    const std::string_view unit = length_at_start(rest);
    next.unit = std::string(unit);
    rest = trim(rest.substr(unit.size()));
    found.push_back(std::move(next));
    const std::size_t times = times_at_start(rest);
    if (times == 0) break;
    rest.remove_prefix(times);
  }
  if (found.empty()) return {{}, {}, squeezed};
  return with_units(std::move(found), rest, squeezed, example);
}

std::string write_sizes(const std::vector<double>& si, bool inches) {
  std::vector<std::string> sizes;
  std::string unit;
  bool one_unit = true;
  for (const double value : si) {
    sizes.push_back(write_quantity(value, parts::Dimension::length, inches));
    const std::string own = sizes.back().substr(sizes.back().find(' '));
    one_unit = one_unit && (unit.empty() || own == unit);
    unit = own;
  }
  if (one_unit) {
    for (std::string& size : sizes) size.resize(size.size() - unit.size());
  }
  return join(sizes, " x ") + (one_unit ? unit : "");
}

}  // namespace cases
