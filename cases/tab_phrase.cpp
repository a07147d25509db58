#include <cmath>
#include <optional>
#include <variant>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/sizes.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::TabSpec;

[[noreturn]] void refuse_tabs(std::string_view text, std::string_view why) {
  throw InputError(
      "", fmt::format("{} {}; e.g. {}", quoted(text), why, quoted(example_phrase(TabSpec{}))));
}

/// The number of a piece such as "edge 1 in", over 0 (a share: not under it).
std::optional<double> number_after(std::string_view word, const std::string& piece,
                                   parts::Dimension dimension) {
  if (lower(piece).rfind(std::string(word) + " ", 0) != 0) return std::nullopt;
  const double value = read_quantity(piece.substr(word.size() + 1), dimension).si;
  const bool share = dimension == parts::Dimension::ratio;
  if (!(value > 0.0) && !(share && value == 0.0)) {
    throw InputError("", fmt::format("{} is not over 0", quoted(piece)));
  }
  return value;
}

/// Takes one piece after the first. @return whether it says anything known
bool take_piece(TabSpec& tabs, const std::string& piece, const parts::Design& names) {
  using parts::Dimension;
  if (const auto edge = number_after("edge", piece, Dimension::length)) {
    tabs.edge = *edge;
  } else if (const auto height = number_after("height", piece, Dimension::length)) {
    tabs.height = *height;
  } else if (const auto width = number_after("width", piece, Dimension::length)) {
    tabs.width = *width;
  } else if (const auto off = number_after("off", piece, Dimension::length)) {
    tabs.off = *off;
  } else if (const auto gap = number_after("gap", piece, Dimension::length)) {
    tabs.gap = *gap;
  } else if (lower(piece).rfind("on ", 0) == 0) {
    tabs.on = read_phrase<parts::Stick>(piece.substr(3), names).value;
  } else if (lower(piece) == "across the tube" || lower(piece) == "along the tube") {
    tabs.across = lower(piece) == "across the tube";
  } else if (const auto side = number_after("side force", piece, Dimension::ratio)) {
    tabs.side_force = *side;
  } else if (lower(piece).find("fillet") != std::string::npos ||
             lower(piece).find("groove") != std::string::npos) {
    tabs.weld = read_phrase<parts::FilletWeld>(piece, names).value;
  } else {
    return false;
  }
  return true;
}

/// What tabs stand on is a round tube, along it or across.
void require_tube(const TabSpec& tabs, const std::string& text) {
  const bool way = lower(text).find("along the tube") != std::string::npos ||
                   lower(text).find("across the tube") != std::string::npos;
  if (!tabs.on_tube()) {
    if (way) refuse_tabs(text, "does not say what tube the tabs are on");
    return;
  }
  if (!std::holds_alternative<sections::RoundTube>(tabs.on.shape)) {
    refuse_tabs(text, "says that the tabs are on something that is no round tube; leave it out");
  }
  if (!way)
    refuse_tabs(text, "does not say whether the tabs stand `along the tube` or `across the tube`");
}

}  // namespace

template <>
Phrase<TabSpec> read_phrase(std::string_view raw, const parts::Design& names) {
  const std::string text = squeeze(raw);
  const std::vector<std::string> pieces = split(text, ",");
  Phrase<parts::Plates> plates = read_phrase<parts::Plates>(pieces[0], names);
  TabSpec tabs;
  tabs.plates = plates.value;
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    if (take_piece(tabs, pieces[i], names)) continue;
    refuse_tabs(text, fmt::format("has {}, which is none of: edge, height, width, off, gap, side "
                                  "force, on a tube, along or across the tube, "
                                  "a fillet or groove",
                                  quoted(pieces[i])));
  }
  if (std::isnan(tabs.edge)) {
    refuse_tabs(text, "does not say how far the nearest edge is from the bolt's center");
  }
  if (std::isnan(tabs.height)) {
    refuse_tabs(text, "does not say how far the weld is from the bolt's center");
  }
  require_tube(tabs, text);
  if (!std::isnan(tabs.gap) && tabs.plates.count == 1) {
    refuse_tabs(text, "says how far apart its tabs are; that goes with two");
  }
  if (!std::isnan(tabs.off) && tabs.plates.count > 1) {
    refuse_tabs(text, "says how far off the force is; that goes with one tab");
  }
  return {tabs, plates.assumed};
}

std::string write_phrase(const TabSpec& tabs, const parts::Design& names) {
  if (!tabs.given()) return {};
  const auto length = [&](std::string_view word, double si) {
    return std::isnan(si) ? std::string()
                          : fmt::format(", {} {}", word, write_sizes({si}, names.inches));
  };
  std::string text = write_phrase(tabs.plates, names) + length("edge", tabs.edge) +
                     length("height", tabs.height) + length("width", tabs.width) +
                     length("off", tabs.off) + length("gap", tabs.gap);
  if (tabs.on_tube()) {
    text += fmt::format(", on {}, {} the tube", write_phrase(tabs.on, names),
                        tabs.across ? "across" : "along");
  }
  if (tabs.weld.given()) {
    text += fmt::format(", {} {}", weld_size_words(tabs.weld, names),
                        tabs.weld.both_sides ? "both sides" : "one side");
    if (tabs.weld.directional) text += " directional strength";
  }
  return text + ", side force " +
         write_quantity(tabs.side_force, parts::Dimension::ratio, names.inches);
}

}  // namespace cases
