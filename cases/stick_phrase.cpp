#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/shape_numbers.hpp"
#include "cases/sizes.hpp"
#include "cases/steel.hpp"
#include "cases/trade_words.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Assumption;
using parts::Stick;

constexpr std::string_view kTubeExample = "1-1/2 x 0.250 in DOM";
constexpr std::string_view kBarExample = "1-1/2 in solid bar";

bool has_word(std::string_view form, std::string_view word) {
  const std::vector<std::string> words = words_of(form);
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_solid(std::string_view form) {
  return has_word(form, "solid") || has_word(form, "bar") || has_word(form, "plate");
}

/// Half of a length in the unit it was written in: "0.75 in".
std::string half_of(double si, std::string_view found) {
  const bool inches =
      found.find("mm") == std::string_view::npos && found.find("cm") == std::string_view::npos;
  return write_quantity(0.5 * si, parts::Dimension::length, inches);
}

void require_hollow(const Sizes& sizes, std::size_t outside, std::string_view what,
                    std::string_view solid) {
  if (sizes.si.back() < 0.5 * sizes.si[outside]) return;
  throw InputError(
      "", fmt::format("a wall of {} is not under half of {} ({}); give a wall under {}, or {}",
                      sizes.found.back(), what, sizes.found[outside],
                      half_of(sizes.si[outside], sizes.found[outside]), solid));
}

sections::Shape round_bar(const Sizes& sizes, const std::string& form, std::string_view text) {
  if (is_solid(form) && !has_word(form, "flat") && !has_word(form, "square")) {
    return sections::RoundBar{sizes.si[0]};
  }
  throw InputError("", fmt::format("{} gives one size; a tube needs outside x wall, e.g. {}; a "
                                   "round bar says so, e.g. {}",
                                   quoted(text), quoted(kTubeExample), quoted(kBarExample)));
}

sections::Shape of_two_sizes(const Sizes& sizes, const std::string& form, std::string_view text) {
  if (has_word(form, "flat")) return sections::FlatBar{sizes.si[0], sizes.si[1]};
  if (is_solid(form) || has_word(form, "square") || has_word(form, "rectangular")) {
    throw InputError(
        "", fmt::format("{} gives two sizes, outside x wall of a round tube, yet it "
                        "says {}; e.g. {}, {} or `2 x 1/4 in flat bar A36`",
                        quoted(text), quoted(form), quoted(kTubeExample), quoted(kBarExample)));
  }
  require_hollow(sizes, 0, "the outside diameter",
                 fmt::format("a bar, `{} solid bar`", sizes.found[0]));
  return sections::RoundTube{sizes.si[0], sizes.si[1]};
}

/// Outside corner radius where none is given.
/// Source: EN 10219-2 (2006), annex B, for calculated properties (from memory).
double usual_corner(double depth, double width, double wall) {
  const double radius = wall <= 0.006 ? 2.0 * wall : wall <= 0.010 ? 2.5 * wall : 3.0 * wall;
  return std::min(radius, 0.5 * std::min(depth, width));
}

/// Takes "boxed with 1/4 in plate" out of the words after the sizes of a channel.
/// @return the thickness of the plate; nothing when none is named  [m]
std::optional<double> take_boxing(std::string& rest) {
  const std::string words = " boxed with ";
  const std::size_t at = (" " + lower(rest)).find(words);
  if (at == std::string::npos) return std::nullopt;
  const std::string example = "6 x 3 x 3/16 in channel boxed with 1/4 in plate A36";
  const Sizes plate = read_sizes(rest.substr(at + words.size() - 1), example);
  const std::vector<std::string> after = words_of(plate.rest);
  if (plate.si.size() != 1 || after.empty() || lower(after[0]).rfind("plate", 0) != 0) {
    throw InputError("", fmt::format("{} does not say of which plate, e.g. `{}`",
                                     quoted(squeeze(rest)), example));
  }
  rest = squeeze(rest.substr(0, at) + " " + plate.rest.substr(after[0].size()));
  return plate.si[0];
}

/// A channel or an angle, when the words say so.
std::optional<sections::Shape> of_walls(const Sizes& sizes, const std::string& form,
                                        std::optional<double> plate) {
  const double a = sizes.si[0];
  const double b = sizes.si[1];
  const double t = sizes.si[2];
  if (has_word(form, "angle")) return sections::Angle{.depth = a, .width = b, .wall = t};
  if (!has_word(form, "channel")) return std::nullopt;
  if (!plate) return sections::Channel{.depth = a, .width = b, .web = t, .flange = t};
  return sections::BoxedChannel{.depth = a, .width = b, .web = t, .flange = t, .plate = *plate};
}

sections::Shape of_three_sizes(const Sizes& sizes, const std::string& form, std::string_view text,
                               double corner) {
  if (is_solid(form)) {
    throw InputError("", fmt::format("{} gives three sizes, depth x width x wall of a rectangular "
                                     "tube, yet it says {}; e.g. `3 x 2 x 0.125 in A500C_rect`",
                                     quoted(text), quoted(form)));
  }
  const std::size_t smaller = sizes.si[0] < sizes.si[1] ? 0 : 1;
  require_hollow(sizes, smaller, "the smaller side", "a flat bar, `2 x 1/4 in flat bar A36`");
  return sections::RectangularTube{sizes.si[0], sizes.si[1], sizes.si[2], corner};
}

/// Takes "0.25 in corners" off the front of the words after the sizes.
/// @return the radius; nothing when none is given  [m]
std::optional<double> take_corner(std::string& rest) {
  const Sizes corner = read_sizes(rest, "2 x 3 x 0.125 in, 0.25 in corners, A500C_rect");
  const std::vector<std::string> words = words_of(corner.rest);
  if (corner.si.size() != 1 || words.empty()) return std::nullopt;
  const std::string word = lower(words[0].substr(0, words[0].find(',')));
  if (word != "corner" && word != "corners") return std::nullopt;
  rest = squeeze(corner.rest.substr(word.size()));
  if (!rest.empty() && rest[0] == ',') rest = squeeze(rest.substr(1));
  return corner.si[0];
}

/// The stick of a steel by its name, which is listed where it leaves the condition to us.
Phrase<Stick> with_condition(Stick stick, std::string_view steel, const parts::Design& names) {
  stick.material = known_steel(steel, names);
  return {std::move(stick), condition_assumed(steel, names)};
}

Phrase<Stick> with_steel(const sections::Shape& shape, const FormAndSteel& words,
                         std::string_view text, const parts::Design& names) {
  if (!words.steel.empty()) return with_condition({shape, {}}, words.steel, names);
  if (!std::holds_alternative<sections::RoundBar>(shape)) {
    throw InputError("", fmt::format("{} does not name its steel; e.g. DOM for a tube, A500C_rect "
                                     "for a rectangular one, A36 for a flat bar",
                                     quoted(text)));
  }
  const auto usual = sections::find_material("1018_CD");
  INVARIANT(usual.has_value());
  return {{shape, *usual},
          {Assumption{"steel", "1018_CD",
                      "a bar whose steel is not named; common practice, no source"}}};
}

/// The section whose name starts the text, the longest one.
const parts::Named<sections::Shape>* leading_section(std::string_view text,
                                                     const parts::Design& names) {
  const parts::Named<sections::Shape>* best = nullptr;
  const std::string small = lower(text) + " ";
  for (const auto& section : names.sections) {
    if (small.rfind(lower(section.name) + " ", 0) != 0) continue;
    if (best == nullptr || section.name.size() > best->name.size()) best = &section;
  }
  return best;
}

Phrase<Stick> read_named(std::string_view text, const parts::Design& names) {
  const parts::Named<sections::Shape>* section = leading_section(text, names);
  if (section == nullptr) {
    std::vector<std::string> candidates;
    for (const auto& s : names.sections) candidates.push_back(s.name);
    const std::string first = std::string(text.substr(0, text.find(' ')));
    std::string hint = did_you_mean(first, candidates);
    if (hint.empty()) hint = shape_meant(text);
    throw InputError("", fmt::format("{} is neither sizes, e.g. {}, nor a name of `sections:`{}",
                                     quoted(text), quoted(kTubeExample), hint));
  }
  const std::string_view steel = trim(text.substr(section->name.size()));
  if (steel.empty()) {
    throw InputError(
        "", fmt::format("{} does not name its steel; e.g. `{} A36`", quoted(text), section->name));
  }
  return with_condition({section->value, {}}, steel, names);
}

Phrase<Stick> read_in_full(const std::string& text, const parts::Design& names) {
  Sizes sizes = read_sizes(text, kTubeExample);
  if (sizes.si.empty()) return read_named(text, names);
  const bool three = sizes.si.size() == 3;
  const auto corner = three ? take_corner(sizes.rest) : std::nullopt;
  const auto plate = three ? take_boxing(sizes.rest) : std::nullopt;
  const FormAndSteel words = form_and_steel(sizes.rest, names);
  if (sizes.si.size() == 1)
    return with_steel(round_bar(sizes, words.form, text), words, text, names);
  if (sizes.si.size() == 2) {
    return with_steel(of_two_sizes(sizes, words.form, text), words, text, names);
  }
  if (sizes.si.size() > 3) {
    throw InputError("", fmt::format("{} gives {} sizes; a round tube has two, a rectangular one, "
                                     "a channel and an angle three",
                                     quoted(text), sizes.si.size()));
  }
  const double usual = usual_corner(sizes.si[0], sizes.si[1], sizes.si[2]);
  const std::optional<sections::Shape> walls = of_walls(sizes, words.form, plate);
  const sections::Shape shape =
      walls ? *walls : of_three_sizes(sizes, words.form, text, corner.value_or(usual));
  try {
    sections::require_valid(shape);
  } catch (const InputError& error) {
    throw InputError("", error.where().key + " of " + quoted(text) + ": " + error.problem());
  }
  Phrase<Stick> phrase = with_steel(shape, words, text, names);
  if (!corner && !walls) {
    phrase.assumed.push_back(
        {"corner", shown_quantity(usual, parts::Dimension::length, names.inches),
         "outside corner radius of 2 walls (2.5 over 6 mm, 3 over 10 mm); EN 10219-2 annex B, "
         "from memory"});
  }
  return phrase;
}

}  // namespace

template <>
Phrase<Stick> read_phrase(std::string_view raw, const parts::Design& names) {
  const InFull meant = in_full(raw);
  Phrase<Stick> phrase = read_in_full(meant.text, names);
  phrase.assumed.insert(phrase.assumed.begin(), meant.assumed.begin(), meant.assumed.end());
  return phrase;
}

std::string write_phrase(const Stick& stick, const parts::Design& names) {
  const std::string& steel = stick.material.id;
  if (const auto* s = std::get_if<sections::RoundBar>(&stick.shape)) {
    return write_sizes({s->diameter}, names.inches) + " round bar " + steel;
  }
  if (const auto* s = std::get_if<sections::RoundTube>(&stick.shape)) {
    return write_sizes({s->outside, s->wall}, names.inches) + " " + steel;
  }
  if (const auto* s = std::get_if<sections::FlatBar>(&stick.shape)) {
    return write_sizes({s->depth, s->width}, names.inches) + " flat bar " + steel;
  }
  if (const auto* s = std::get_if<sections::RectangularTube>(&stick.shape)) {
    return write_sizes({s->depth, s->width, s->wall}, names.inches) + ", " +
           write_sizes({s->corner}, names.inches) + " corners, " + steel;
  }
  if (const auto* s = std::get_if<sections::Angle>(&stick.shape)) {
    return write_sizes({s->depth, s->width, s->wall}, names.inches) + " angle " + steel;
  }
  const auto* channel = std::get_if<sections::Channel>(&stick.shape);
  if (channel != nullptr && channel->web == channel->flange) {
    return write_sizes({channel->depth, channel->width, channel->web}, names.inches) + " channel " +
           steel;
  }
  const auto* boxed = std::get_if<sections::BoxedChannel>(&stick.shape);
  if (boxed != nullptr && boxed->web == boxed->flange) {
    return write_sizes({boxed->depth, boxed->width, boxed->web}, names.inches) +
           " channel boxed with " + write_sizes({boxed->plate}, names.inches) + " plate " + steel;
  }
  const auto named =
      std::find_if(names.sections.begin(), names.sections.end(),
                   [&](const auto& section) { return same_shape(section.value, stick.shape); });
  INVARIANT(named != names.sections.end());  // the other shapes come from `sections:` alone
  return named->name + " " + steel;
}

}  // namespace cases
