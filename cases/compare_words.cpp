#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/patch.hpp"
#include "cases/phrase.hpp"
#include "cases/words.hpp"
#include "sections/area_props.hpp"
#include "sections/stock.hpp"

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

/// A round size as words for the link: "1.5 in solid bar", "38 x 4 mm DOM".
std::string stick_words(const sections::Shape& shape, bool inches) {
  const double unit = inches ? base::kInch : base::kMillimeter;
  const char* name = inches ? "in" : "mm";
  if (const auto* bar = std::get_if<sections::RoundBar>(&shape)) {
    return fmt::format("{:.4g} {} solid bar", bar->diameter / unit, name);
  }
  const auto& tube = std::get<sections::RoundTube>(shape);
  return fmt::format("{:.4g} x {:.4g} {} DOM", tube.outside / unit, tube.wall / unit, name);
}

/// The tube in stock that comes nearest to a bar by `apart`; none where no size will do.
template <class Apart>
std::optional<sections::Shape> nearest_tube(bool inches, Apart apart) {
  std::optional<sections::Shape> nearest;
  double least = std::numeric_limits<double>::infinity();
  for (const sections::StockItem& item : sections::round_stock(inches)) {
    const auto* tube = std::get_if<sections::RoundTube>(&item.shape);
    if (tube == nullptr) continue;
    const double here = apart(*tube);
    if (!(here < least)) continue;
    least = here;
    nearest = item.shape;
  }
  return nearest;
}

/// The bars beside a tube (equal outside, equal mass), or the tubes beside a bar: the thickest wall
/// of its outside, and of those that are wider the one nearest in mass.
std::vector<Variant> bar_and_tube(const Design& design) {
  if (!design.lateral_link) throw InputError("", "the case has no lateral link of bar or tube");
  const sections::Shape& now = design.lateral_link->stick.shape;
  std::vector<Variant> all;
  const auto add = [&](const char* what, const sections::Shape& shape) {
    const std::string words = stick_words(shape, design.inches);
    all.push_back({fmt::format("{}, {}", words, what), {{"lateral_link.tube", words}}});
  };
  if (const auto* tube = std::get_if<sections::RoundTube>(&now)) {
    const double inside = tube->outside - 2.0 * tube->wall;
    add("equal diameter", sections::RoundBar{tube->outside});
    add("equal mass",
        sections::RoundBar{std::sqrt(tube->outside * tube->outside - inside * inside)});
  } else if (const auto* bar = std::get_if<sections::RoundBar>(&now)) {
    const double area = sections::area_props(now).area;
    const double unusable = std::numeric_limits<double>::infinity();
    const auto equal = nearest_tube(design.inches, [&](const sections::RoundTube& t) {
      return std::abs(t.outside - bar->diameter) < 1.0e-5 ? -t.wall : unusable;
    });
    const auto as_heavy = nearest_tube(design.inches, [&](const sections::RoundTube& t) {
      return t.outside > bar->diameter ? std::abs(sections::area_props(t).area - area) : unusable;
    });
    if (equal) add("equal diameter", *equal);
    if (as_heavy) add("equal mass", *as_heavy);
  } else {
    throw InputError("", "the lateral link is neither a round bar nor a round tube");
  }
  return all;
}

/// A bent link straight; a straight one bent by 2 in or 50 mm.
std::vector<Variant> straight_and_bent(const Design& design) {
  if (!design.lateral_link) throw InputError("", "the case has no lateral link to bend");
  const parts::LateralLink& link = *design.lateral_link;
  const bool bent = link.bend.off_straight > 0.0 || !link.through.empty();
  const std::string bend = design.inches ? "2 in" : "50 mm";
  return {bent ? Variant{"straight", bend_patches(design, "none")}
               : Variant{bend + " bend", bend_patches(design, bend + " off straight")}};
}

/// As drawn and one step of 2 in or 50 mm to either side, each without the brace too.
std::vector<Variant> every_drop(const Design& design) {
  if (!design.bracket) throw InputError("", "the case has no bracket that drops");
  const double unit = design.inches ? base::kInch : base::kMillimeter;
  const double step = design.inches ? 2.0 : 50.0;
  const double now = design.bracket->drop / unit;
  std::vector<Variant> all;
  for (const double drop : {now - step, now, now + step}) {
    if (!(drop > 0.0)) continue;
    const std::string words = fmt::format("{:.4g} {}", drop, design.inches ? "in" : "mm");
    const Variant braced = {words + " drop", {{"bracket.drop", words}}};
    if (drop == now) {
      if (design.brace) all.push_back({"no brace", {{"brace", ""}}});
      continue;
    }
    all.push_back(braced);
    if (!design.brace) continue;
    all.push_back({braced.name + ", no brace", {braced.patches.front(), {"brace", ""}}});
  }
  return all;
}

/// What a few words stand for that depend on the design; nothing for other words.
std::optional<std::vector<Variant>> ready_made(const Design& design, const std::string& words) {
  const std::string small = lower(words);
  if (small == "braced and unbraced") {
    if (!design.brace) throw InputError("", "the case has no brace to compare with");
    return std::vector<Variant>{{"no brace", {{"brace", ""}}}};
  }
  if (small == "bar and tube" || small == "tube and bar") return bar_and_tube(design);
  if (small == "straight and bent") return straight_and_bent(design);
  if (small == "every drop") return every_drop(design);
  return std::nullopt;
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

/// "5, 7, 9 in" -> "5 or 7 or 9 in" where a number stands: a phrase may hold commas of its own.
std::string with_or(const Design& design, const std::string& path, std::string_view value) {
  std::string out(value);
  if (out.find(',') == std::string::npos) return out;
  try {
    (void)number_at(design, path);
  } catch (const InputError&) {
    return out;
  }
  return join(split(out, ","), " or ");
}

}  // namespace

std::vector<Variant> usual_variants(const Design& design) {
  std::vector<Variant> all;
  for (const char* words :
       {"braced and unbraced", "bar and tube", "straight and bent", "every drop"}) {
    try {
      std::vector<Variant> ready = *ready_made(design, words);
      for (Variant& variant : ready) {
        const bool seen = std::any_of(all.begin(), all.end(), [&](const Variant& known) {
          return known.patches == variant.patches;
        });
        (void)apply(design, variant);
        if (!seen) all.push_back(std::move(variant));
      }
    } catch (const InputError&) {
      continue;  // the design has not what that compares
    }
  }
  return all;
}

std::vector<Variant> variants_from_words(const Design& design, std::string_view raw) {
  const std::string words = squeeze(raw);
  const std::size_t equals = words.find('=');
  if (auto ready = ready_made(design, words)) return *std::move(ready);
  if (auto both = braced_and_not(design, words)) return *std::move(both);
  if (equals == std::string::npos) return alternatives(design, {}, words, from_words);
  const std::string path(trim(std::string_view(words).substr(0, equals)));
  const std::string value = with_or(design, path, trim(std::string_view(words).substr(equals + 1)));
  if (path.empty() || value.empty()) {
    throw InputError(path, quoted(words) + " is not `path = value`, e.g. `bracket.drop = 7 in`");
  }
  return alternatives(design, path, value, from_value);
}

}  // namespace cases
