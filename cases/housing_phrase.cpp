#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Housing;
using parts::HousingTube;

[[noreturn]] void refuse_housing(std::string_view tube, std::string_view why) {
  throw InputError(
      "", fmt::format("{} {}; e.g. {}", quoted(tube), why, quoted(example_phrase(Housing{}))));
}

/// The text without a comma at its end.
std::string without_comma(std::string_view text) {
  const std::string_view trimmed = trim(text);
  const bool comma = !trimmed.empty() && trimmed.back() == ',';
  return squeeze(trimmed.substr(0, trimmed.size() - (comma ? 1 : 0)));
}

}  // namespace

template <>
Phrase<Housing> read_phrase(std::string_view raw, const parts::Design& names) {
  Phrase<Housing> out;
  const std::vector<std::string> pieces = split(squeeze(raw), " then ");
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const bool last = i + 1 == pieces.size();
    std::string text = without_comma(pieces[i]);
    HousingTube tube;
    const std::size_t to = lower(text).rfind(" to ");
    if (last && to != std::string::npos) {
      refuse_housing(text,
                     "is the last tube, which ends at the right arm: leave out where it ends");
    }
    if (!last) {
      if (to == std::string::npos) {
        refuse_housing(text, "does not say where it ends, left of the truck's middle +");
      }
      tube.to = read_quantity(text.substr(to + 4), parts::Dimension::length).si;
      text.resize(to);
    }
    Phrase<parts::Stick> stick = read_phrase<parts::Stick>(text, names);
    tube.stick = std::move(stick.value);
    out.value.tubes.push_back(std::move(tube));
    out.assumed.insert(out.assumed.end(), stick.assumed.begin(), stick.assumed.end());
  }
  return out;
}

std::string write_phrase(const Housing& housing, const parts::Design& names) {
  std::vector<std::string> pieces;
  for (const HousingTube& tube : housing.tubes) {
    pieces.push_back(write_phrase(tube.stick, names));
    if (&tube == &housing.tubes.back()) break;
    pieces.back() += " to " + write_quantity(tube.to, parts::Dimension::length, names.inches);
  }
  return join(pieces, ", then ");
}

}  // namespace cases
