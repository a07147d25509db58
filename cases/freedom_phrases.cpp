#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Coupling;
using parts::Freed;
using parts::Held;
using parts::Toward;

constexpr std::array<std::string_view, 6> kFreedoms = {"x", "y", "z", "rx", "ry", "rz"};

std::optional<int> freedom_of(const std::string& word) {
  const auto found = std::find(kFreedoms.begin(), kFreedoms.end(), word);
  if (found == kFreedoms.end()) return std::nullopt;
  return static_cast<int>(found - kFreedoms.begin());
}

/// The freedoms that a text names; nothing when one of its words is none.
std::optional<std::array<bool, 6>> freedoms_in(std::string text) {
  for (char& c : text) c = c == ',' ? ' ' : c;
  std::array<bool, 6> found = {false, false, false, false, false, false};
  for (const std::string& word : words_of(text)) {
    const std::optional<int> freedom = freedom_of(word);
    if (!freedom) return std::nullopt;
    found[static_cast<std::size_t>(*freedom)] = true;
  }
  return found;
}

std::string words_for(const std::array<bool, 6>& freedoms) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < kFreedoms.size(); ++i) {
    if (freedoms[i]) words.emplace_back(kFreedoms[i]);
  }
  return join(words, " ");
}

/// Three numbers between commas or spaces, not all 0; nothing when the text is no such thing.
std::optional<std::array<double, 3>> three_numbers(std::string text) {
  for (char& c : text) c = c == ',' ? ' ' : c;
  const std::vector<std::string> words = words_of(text);
  if (words.size() != 3) return std::nullopt;
  std::array<double, 3> out{};
  for (std::size_t i = 0; i < 3; ++i) {
    const std::optional<NumberStart> number = number_at_start(words[i]);
    if (!number || number->length != words[i].size() || !std::isfinite(number->value)) {
      return std::nullopt;
    }
    out[i] = number->value;
  }
  if (!(std::hypot(out[0], out[1], out[2]) > 0.0)) return std::nullopt;
  return out;
}

bool is_point(const std::string& name, const parts::Design& names) {
  return std::any_of(names.points.begin(), names.points.end(),
                     [&](const auto& point) { return point.name == name; });
}

parts::Dimension dimension_of(const Coupling::Term& term) {
  if (term.column < 3) return parts::Dimension::stiffness;
  return term.row < 3 ? parts::Dimension::force : parts::Dimension::rotational_stiffness;
}

/// One "x ry -40 kN".
Coupling::Term term_of(const std::string& text) {
  const std::vector<std::string> words = words_of(text);
  const std::optional<int> one = words.size() > 2 ? freedom_of(lower(words[0])) : std::nullopt;
  const std::optional<int> other = words.size() > 2 ? freedom_of(lower(words[1])) : std::nullopt;
  if (!one || !other) {
    throw InputError("", quoted(text) +
                             " does not link two of x y z rx ry rz; would do: "
                             "`x ry -40 kN`, several between commas");
  }
  if (*one == *other) {
    throw InputError("", quoted(text) + " links " + words[0] +
                             " to itself; its own rate has a key of its own, such as along_x");
  }
  Coupling::Term term{std::min(*one, *other), std::max(*one, *other), 0.0};
  std::string value;
  for (std::size_t i = 2; i < words.size(); ++i) value += (i == 2 ? "" : " ") + words[i];
  term.value = read_quantity(value, dimension_of(term)).si;
  return term;
}

}  // namespace

template <>
Phrase<Held> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = lower(squeeze(raw));
  if (text == "all") return {Held{}};
  const auto freedoms = freedoms_in(text);
  if (freedoms) return {Held{*freedoms}};
  throw InputError("", quoted(raw) +
                           " does not say what is held; would do: `all`, or some of `x "
                           "y z rx ry rz`");
}

template <>
Phrase<Freed> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = lower(squeeze(raw));
  if (text == "none") return {Freed{}};
  const auto freedoms = freedoms_in(text);
  if (freedoms) return {Freed{*freedoms}};
  throw InputError("", quoted(raw) +
                           " does not say what is let go; would do: `none`, or some of `x y z rx "
                           "ry rz`, x along the member");
}

template <>
Phrase<Toward> read_phrase(std::string_view raw, const parts::Design& names) {
  const std::string text = squeeze(raw);
  const std::string small = lower(text);
  Toward toward;
  if (small == "up") return {toward};
  if (const std::optional<int> freedom = freedom_of(small); freedom && *freedom < 3) {
    toward.kind = Toward::Kind::axis;
    toward.axis = static_cast<parts::Axis>(*freedom);
    return {toward};
  }
  if (small.rfind("point ", 0) == 0) {
    toward.kind = Toward::Kind::point;
    toward.point = text.substr(6);
    if (is_point(toward.point, names)) return {toward};
    std::vector<std::string> known;
    for (const auto& point : names.points) known.push_back(point.name);
    const std::string hint = did_you_mean(toward.point, known);
    throw InputError("", "there is no point " + quoted(toward.point) +
                             (hint.empty() ? "; add it under `points:`" : hint));
  }
  if (const auto numbers = three_numbers(text)) {
    toward.kind = Toward::Kind::vector;
    toward.vector = *numbers;
    return {toward};
  }
  throw InputError("", quoted(text) +
                           " is no direction; would do: up, x, y, z, `point` and the "
                           "name of a point, or three numbers such as `0, 0.6, 0.8`");
}

template <>
Phrase<Coupling> read_phrase(std::string_view raw, const parts::Design&) {
  Coupling coupled;
  for (const std::string& text : split(squeeze(raw), ",")) {
    const Coupling::Term term = term_of(text);
    for (const Coupling::Term& other : coupled.terms) {
      if (other.row != term.row || other.column != term.column) continue;
      throw InputError("", quoted(text) + " links two directions that are linked already");
    }
    coupled.terms.push_back(term);
  }
  return {coupled};
}

std::string write_phrase(const Held& held, const parts::Design&) {
  const bool all =
      std::find(held.freedoms.begin(), held.freedoms.end(), false) == held.freedoms.end();
  return all ? "all" : words_for(held.freedoms);
}

std::string write_phrase(const Freed& freed, const parts::Design&) {
  return freed == Freed{} ? "none" : words_for(freed.freedoms);
}

std::string write_phrase(const Toward& toward, const parts::Design&) {
  switch (toward.kind) {
    case Toward::Kind::usual:
      return "up";
    case Toward::Kind::axis:
      return std::string(kFreedoms[static_cast<std::size_t>(toward.axis)]);
    case Toward::Kind::point:
      return "point " + toward.point;
    case Toward::Kind::vector:
      break;
  }
  return fmt::format("{}, {}, {}", toward.vector[0], toward.vector[1], toward.vector[2]);
}

std::string write_phrase(const Coupling& coupled, const parts::Design& names) {
  std::vector<std::string> terms;
  for (const Coupling::Term& term : coupled.terms) {
    terms.push_back(fmt::format("{} {} {}", kFreedoms[static_cast<std::size_t>(term.row)],
                                kFreedoms[static_cast<std::size_t>(term.column)],
                                write_quantity(term.value, dimension_of(term), names.inches)));
  }
  return join(terms, ", ");
}

}  // namespace cases
