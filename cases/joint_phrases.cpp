#include <algorithm>
#include <array>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "cases/phrase.hpp"
#include "cases/sizes.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Axis;
using parts::Bend;
using parts::BendToward;
using parts::BraceAt;
using parts::BushingGrade;
using parts::JointKind;
using parts::JointSpec;
using parts::LinkEnds;

constexpr std::array<std::string_view, 3> kAxisNames = {"x", "y", "z"};
constexpr std::array<std::string_view, 4> kTowardNames = {"up", "down", "forward", "rearward"};

/// Cuts " along y" off the end of a phrase.
std::optional<Axis> take_axis(std::string& text) {
  for (std::size_t i = 0; i < kAxisNames.size(); ++i) {
    const std::string end = " along " + std::string(kAxisNames[i]);
    if (text.size() > end.size() && text.substr(text.size() - end.size()) == end) {
      text.resize(text.size() - end.size());
      return static_cast<Axis>(i);
    }
  }
  return std::nullopt;
}

/// A joint in the format's own words, or by its name in the case.
std::optional<JointSpec> find_joint(std::string_view text, const parts::Design& names) {
  std::string words = lower(squeeze(text));
  const auto axis = take_axis(words);
  JointSpec joint;
  if (words == "welded" && !axis) return joint;
  if (words == "ball joint" || words == "rod end") {
    joint.kind = JointKind::ball;
  } else if (words == "pin") {
    joint.kind = JointKind::pin;
  } else if (words == "bushing" || words == "rubber bushing") {
    joint.kind = JointKind::bushing;
  } else if (words == "hard bushing") {
    joint.kind = JointKind::bushing;
    joint.grade = BushingGrade::hard;
  } else {
    for (const auto& given : names.joints) {
      if (axis || !same_words(given.name, text)) continue;
      return JointSpec{JointKind::bushing, BushingGrade::given, Axis::x, given.value.rates,
                       given.value.own_axes};
    }
    return std::nullopt;
  }
  joint.axis = axis.value_or(Axis::x);
  return joint;
}

std::vector<std::string> joint_candidates(const parts::Design& names) {
  std::vector<std::string> all = {"welded", "ball joint",     "rod end",
                                  "pin",    "rubber bushing", "hard bushing"};
  for (const auto& given : names.joints) all.push_back(given.name);
  return all;
}

/// @param usual  the axis that need not be said; none when every axis is
std::string joint_words(const JointSpec& joint, const parts::Design& names,
                        std::optional<Axis> usual) {
  std::string text;
  switch (joint.kind) {
    case JointKind::welded:
      return "welded";
    case JointKind::ball:
      text = "ball joint";
      break;
    case JointKind::pin:
      text = "pin";
      break;
    case JointKind::bushing:
      text = joint.grade == BushingGrade::hard ? "hard bushing" : "rubber bushing";
      break;
  }
  if (joint.kind == JointKind::bushing && joint.grade == BushingGrade::given) {
    const auto named =
        std::find_if(names.joints.begin(), names.joints.end(), [&](const auto& given) {
          return given.value.rates == joint.rates && given.value.own_axes == joint.own_axes;
        });
    INVARIANT(named != names.joints.end());  // given rates come from `joints:` alone
    return named->name;
  }
  if (joint.axis == usual) return text;
  return text + " along " + std::string(kAxisNames[static_cast<std::size_t>(joint.axis)]);
}

/// The first word of how a link's end is made, and whether it brings weld heat.
struct EndWord {
  std::string_view word;
  bool welded;
};
constexpr std::array kEndWords{EndWord{"weld-on ", true}, EndWord{"threaded ", true},
                               EndWord{"tapped ", false}, EndWord{"clamped ", false}};

}  // namespace

template <>
Phrase<JointSpec> read_phrase(std::string_view text, const parts::Design& names) {
  if (const auto joint = find_joint(text, names)) return {*joint};
  const std::string hint = did_you_mean(text, joint_candidates(names));
  throw InputError("", fmt::format("unknown joint {}{} Would do: welded, ball joint, pin along y, "
                                   "rubber bushing, hard bushing along y, or a name of `joints:`",
                                   quoted(text), hint.empty() ? "." : hint));
}

template <>
Phrase<LinkEnds> read_phrase(std::string_view raw, const parts::Design& names) {
  const std::string text = squeeze(raw);
  for (const EndWord& end : kEndWords) {
    if (lower(text).rfind(end.word, 0) != 0) continue;
    const auto joint = find_joint(text.substr(end.word.size()), names);
    if (joint && joint->kind != JointKind::welded) return {{*joint, end.welded}};
  }
  throw InputError("", fmt::format("{} is no kind of end; would do: weld-on bushing, weld-on hard "
                                   "bushing, weld-on ball joint, weld-on pin, threaded rod end, "
                                   "tapped rod end, or weld-on with a name of `joints:`",
                                   quoted(text)));
}

template <>
Phrase<Bend> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  const std::string small = lower(text);
  if (small == "none" || small == "straight") return {Bend{}};
  const Sizes sizes = read_sizes(text, example_phrase(Bend{}));
  const std::vector<std::string> pieces = split(lower(sizes.rest), ",");
  const bool off = sizes.si.size() == 1 && pieces[0] == "off straight";
  if (off && pieces.size() == 1) return {{sizes.si[0], BendToward::up}};
  for (std::size_t i = 0; off && pieces.size() == 2 && i < kTowardNames.size(); ++i) {
    if (pieces[1] == kTowardNames[i]) return {{sizes.si[0], static_cast<BendToward>(i)}};
  }
  throw InputError("", quoted(text) +
                           " is no bend; would do: `none`, `2 in off straight` (upward), "
                           "`2 in off straight, forward` (or down, rearward)");
}

template <>
Phrase<BraceAt> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  if (lower(text) == "at the bolt") return {BraceAt{0.0}};
  const Sizes sizes = read_sizes(text, "2 in above the bolt");
  if (sizes.si.size() == 1 && lower(sizes.rest) == "above the bolt") return {BraceAt{sizes.si[0]}};
  throw InputError("", quoted(text) +
                           " does not say where; would do: `at the bolt` or `2 in above "
                           "the bolt`");
}

std::string write_phrase(const JointSpec& joint, const parts::Design& names) {
  // Parts differ in the axis that is usual for them, but a ball joint has none.
  const bool ball = joint.kind == JointKind::ball;
  return joint_words(joint, names, ball ? std::optional<Axis>(Axis::x) : std::nullopt);
}

std::string write_phrase(const LinkEnds& ends, const parts::Design& names) {
  const bool ball = ends.joint.kind == JointKind::ball;
  return (ends.welded ? "weld-on "
          : ball      ? "tapped "
                      : "clamped ") +
         joint_words(ends.joint, names, Axis::x);
}

std::string write_phrase(const Bend& bend, const parts::Design& names) {
  if (bend.off_straight == 0.0) return "none";
  const std::string text = write_sizes({bend.off_straight}, names.inches) + " off straight";
  if (bend.toward == BendToward::up) return text;
  return text + ", " + std::string(kTowardNames[static_cast<std::size_t>(bend.toward)]);
}

std::string write_phrase(const BraceAt& at, const parts::Design& names) {
  if (at.above_bolt == 0.0) return "at the bolt";
  return write_sizes({at.above_bolt}, names.inches) + " above the bolt";
}

}  // namespace cases
