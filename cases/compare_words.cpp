#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/patch.hpp"
#include "cases/phrase.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Design;
using parts::Patch;
using parts::Variant;

constexpr std::array<std::string_view, 9> kLeftOut = {"brace",       "bracket",  "frame",
                                                      "arm",         "axle",     "lateral_link",
                                                      "limit_strap", "steering", "vehicle"};

/// "no brace" -> the part left out.
std::optional<Patch> part_left_out(const std::string& words) {
  if (words.rfind("no ", 0) != 0) return std::nullopt;
  std::string part = squeeze(words.substr(3));
  std::replace(part.begin(), part.end(), ' ', '_');
  if (std::find(kLeftOut.begin(), kLeftOut.end(), part) != kLeftOut.end()) return Patch{part, ""};
  const std::vector<std::string> known(kLeftOut.begin(), kLeftOut.end());
  throw InputError("", "there is no part " + quoted(part) + did_you_mean(part, known));
}

/// "2 in bend", "2 in bend, forward" -> "2 in off straight, forward", as the key itself says it.
std::optional<std::string> bend(const std::string& words) {
  if (words == "straight" || words == "no bend") return "none";
  if (words.find(" off straight") != std::string::npos) return words;
  const std::size_t at = words.find(" bend");
  const bool whole_word = at != std::string::npos &&
                          (at + 5 == words.size() || words[at + 5] == ',' || words[at + 5] == ' ');
  if (!whole_word) return std::nullopt;
  std::string toward = squeeze(words.substr(at + 5));
  if (!toward.empty() && toward[0] != ',') toward.insert(0, ", ");
  return words.substr(0, at) + " off straight" + toward;
}

/// A new bend takes the place of the points the link bends at; a straight link has no radius.
std::vector<Patch> bend_patches(const Design& design, const std::string& value) {
  std::vector<Patch> all = {{"lateral_link.bend", value}};
  if (!design.lateral_link) return all;
  if (!design.lateral_link->through.empty()) all.push_back({"lateral_link.through", "none"});
  const bool has_radius = !std::isnan(design.lateral_link->bend_radius);
  if (value == "none" && has_radius) all.push_back({"lateral_link.bend_radius", "none"});
  return all;
}

/// "6 in drop" -> "6 in"; nothing for other words.
std::optional<std::string> drop(const std::string& words) {
  const std::string end = " drop";
  const bool ends = words.size() > end.size() && number_at_start(words) &&
                    words.compare(words.size() - end.size(), end.size(), end) == 0;
  return ends ? std::optional<std::string>(words.substr(0, words.size() - end.size()))
              : std::nullopt;
}

std::vector<Patch> patches_from(const Design& design, const std::string& words);

/// "6 in drop, no brace": what stands between the commas, one after the other.
std::vector<Patch> patches_of_drop(const Design& design, const std::string& words) {
  const std::size_t comma = words.find(',');
  std::vector<Patch> all = patches_from(design, squeeze(words.substr(0, comma)));
  for (Patch& more : patches_from(design, squeeze(words.substr(comma + 1)))) {
    all.push_back(std::move(more));
  }
  return all;
}

std::vector<Patch> patches_from(const Design& design, const std::string& words) {
  const std::string small = lower(words);
  if (small == "as drawn" || small == "braced") return {};
  if (const auto value = drop(small)) return {{"bracket.drop", *value}};
  const std::size_t comma = small.find(',');
  if (comma != std::string::npos && drop(squeeze(small.substr(0, comma)))) {
    return patches_of_drop(design, words);
  }
  if (const auto value = bend(small)) return bend_patches(design, *value);
  if (const auto patch = part_left_out(small)) return {*patch};
  if (number_at_start(words)) {
    if (design.lateral_link) return {{"lateral_link.tube", words}};
    throw InputError("", fmt::format("the case has no lateral link for {}; say which part, e.g. "
                                     "`members.NAME.section = {}`",
                                     quoted(words), words));
  }
  throw InputError("", quoted(words) +
                           " is not understood; would do: `no brace`, `straight`, `2 in "
                           "bend`, `6 in drop`, `1-1/2 in solid bar`, `bracket.drop = 7 in`");
}

/// Alternatives that share what stands before the first number and after the last one:
/// "1-1/2 x 0.120 or 0.250 in DOM".
std::vector<std::string> sharing(const std::vector<std::string>& pieces) {
  const std::string& first = pieces.front();
  const std::string& last = pieces.back();
  const std::string head = first.substr(0, number_at_end(first));
  const auto number = number_at_start(last);
  if (head.size() == first.size() || !number) return pieces;
  const std::string tail = last.substr(number->length);
  std::vector<std::string> all = {first + tail};
  for (std::size_t i = 1; i + 1 < pieces.size(); ++i) all.push_back(head + pieces[i] + tail);
  all.push_back(head + last);
  return all;
}

using ToVariant = Variant (*)(const Design& design, const std::string& path,
                              const std::string& words);

Variant from_words(const Design& design, const std::string&, const std::string& words) {
  return {words, patches_from(design, words)};
}

Variant from_value(const Design&, const std::string& path, const std::string& value) {
  const bool out = names_a_part(path) && leaves_out(value);
  return {fmt::format("{} = {}", path, value), {{path, out ? "" : value}}};
}

std::vector<Variant> tried(const Design& design, const std::string& path,
                           const std::vector<std::string>& alternatives, ToVariant to_variant) {
  std::vector<Variant> all;
  for (const std::string& alternative : alternatives) {
    all.push_back(to_variant(design, path, alternative));
    (void)apply(design, all.back());
  }
  return all;
}

/// Each alternative stands alone, or they share their ends; the way that can be applied is meant.
std::vector<Variant> alternatives(const Design& design, const std::string& path,
                                  const std::string& words, ToVariant to_variant) {
  const std::vector<std::string> pieces = split(words, " or ");
  const std::vector<std::string> shared = sharing(pieces);
  if (shared == pieces) return tried(design, path, pieces, to_variant);
  try {
    return tried(design, path, pieces, to_variant);
  } catch (const InputError&) {
    return tried(design, path, shared, to_variant);
  }
}

/// "2 or 4 in drop, braced and unbraced": each as it is, and without the brace.
std::optional<std::vector<Variant>> braced_and_not(const Design& design, const std::string& words) {
  const std::string end = ", braced and unbraced";
  const std::string small = lower(words);
  if (small.size() <= end.size() || small.substr(small.size() - end.size()) != end) {
    return std::nullopt;
  }
  std::vector<Variant> all;
  for (Variant& braced :
       alternatives(design, {}, words.substr(0, words.size() - end.size()), from_words)) {
    Variant bare{braced.name + ", no brace", braced.patches};
    bare.patches.push_back({"brace", ""});
    (void)apply(design, bare);
    all.push_back(std::move(braced));
    all.push_back(std::move(bare));
  }
  return all;
}

}  // namespace

std::vector<Variant> variants_from_words(const Design& design, std::string_view raw) {
  const std::string words = squeeze(raw);
  const std::size_t equals = words.find('=');
  if (auto both = braced_and_not(design, words)) return *std::move(both);
  if (equals == std::string::npos) return alternatives(design, {}, words, from_words);
  const std::string path(trim(std::string_view(words).substr(0, equals)));
  const std::string value(trim(std::string_view(words).substr(equals + 1)));
  if (path.empty() || value.empty()) {
    throw InputError(path, quoted(words) + " is not `path = value`, e.g. `bracket.drop = 7 in`");
  }
  return alternatives(design, path, value, from_value);
}

}  // namespace cases
