#include "cases/frame_rules.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "cases/quantity.hpp"

namespace cases {
namespace {

using parts::Design;
using Problems = std::vector<base::InputError>;

std::string shown_length(double si, bool inches) {
  return shown_quantity(si, parts::Dimension::length, inches);
}

/// The first place that stands twice in a list; unset when none does.  [m]
double given_twice(std::vector<double> places) {
  constexpr double kSamePlace = 1.0e-6;  // [m]
  std::sort(places.begin(), places.end());
  const auto twice = std::adjacent_find(places.begin(), places.end(), [](double a, double b) {
    return std::abs(a - b) < kSamePlace;
  });
  return twice == places.end() ? base::kUnset : *twice;
}

/// A cross member far beyond the last place that holds the rails hangs on their free ends.
void add_beyond_holds(Problems& out, const Design& design) {
  constexpr double kFarBeyond = 1.5;  // [m]
  const parts::Frame& frame = *design.frame;
  if (frame.held_at.size() < 2) return;
  const auto [rear, front] = std::minmax_element(frame.held_at.begin(), frame.held_at.end());
  for (const double at : frame.cross_members_at) {
    const double beyond = std::max(at - *front, *rear - at);
    if (!(beyond > kFarBeyond)) continue;
    out.emplace_back(
        "frame.cross_members_at",
        fmt::format("{} lies {} beyond the last place that holds the rails; give that "
                    "end a place in `held_at`, or leave it out",
                    shown_length(at, design.inches), shown_length(beyond, design.inches)));
    return;
  }
}

/// Where along a truck a place of its rails may be, from the bracket's bolt.  [m]
bool is_on_truck(const Design& design, double at) {
  constexpr double kAhead = 3.0;
  constexpr double kBehind = 8.0;
  constexpr double kBehindRearAxle = 3.0;
  const double wheelbase = design.vehicle ? design.vehicle->wheelbase : base::kUnset;
  const double behind = std::isnan(wheelbase) ? kBehind : wheelbase + kBehindRearAxle;
  return at <= kAhead && at >= -behind;
}

/// Cross members on both sides of the bracket, and rails that stay where they are.
void add_places(Problems& out, const Design& design) {
  const parts::Frame& frame = *design.frame;
  for (const auto& [key, places] : {std::pair{"frame.cross_members_at", &frame.cross_members_at},
                                    std::pair{"frame.held_at", &frame.held_at}}) {
    const double twice = given_twice(*places);
    if (!std::isnan(twice)) {
      out.emplace_back(key, shown_length(twice, design.inches) + " is given twice");
    }
    const auto far = std::find_if(places->begin(), places->end(),
                                  [&](double at) { return !is_on_truck(design, at); });
    if (far != places->end()) {
      out.emplace_back(key, shown_length(*far, design.inches) +
                                " from the bracket is off the truck; is the unit right?");
    }
  }
  add_beyond_holds(out, design);
  const auto any = [](const std::vector<double>& places, double sign) {
    return std::any_of(places.begin(), places.end(), [&](double at) { return sign * at > 1e-6; });
  };
  if (!any(frame.cross_members_at, 1.0) || !any(frame.cross_members_at, -1.0)) {
    out.emplace_back("frame.cross_members_at",
                     "the bracket hangs between two cross members: give one ahead of it and one "
                     "behind, e.g. [20, -30 in]");
  }
  if (frame.held_at.empty()) {
    out.emplace_back("frame.held_at",
                     "nothing holds the rails: give a place or more, e.g. [40, -60 in]");
  } else if (frame.held == parts::RailHold::pinned && frame.held_at.size() < 2) {
    out.emplace_back(
        "frame.held_at",
        "rails that are pinned need two places, e.g. [40, -60 in]; or `held: clamped`");
  }
  if (frame.rails_apart < 0.3 || frame.rails_apart > 2.0) {
    out.emplace_back(
        "frame.rails_apart",
        fmt::format("{} is not believable here (from {} to {}); is the unit right?",
                    shown_length(frame.rails_apart, design.inches),
                    shown_length(0.3, design.inches), shown_length(2.0, design.inches)));
  }
}

/// What the frame itself says must not be said again.
void add_said_twice(Problems& out, const parts::Bracket& b) {
  const auto clash = [&](const char* key, bool given) {
    if (!given) return;
    out.emplace_back(key, "`frame:` says how the rail gives; leave out one of the two");
  };
  clash("bracket.rail_stiffness", !std::isnan(b.rail_stiffness));
  clash("bracket.cross_member_ahead", !std::isnan(b.cross_member_ahead));
  clash("bracket.cross_member_behind", !std::isnan(b.cross_member_behind));
  clash("bracket.cross_member", !b.cross_member.material.id.empty());
}

/// A brace of given length ends on the opposite rail, or near it.
void add_brace_end(Problems& out, const Design& design) {
  constexpr double kNear = 0.025;  // [m]
  const parts::Rail& rail = design.bracket->rail;
  const auto [across, up] = parts::brace_end_off(design);
  const bool meets =
      std::abs(across) < 0.5 * rail.width + kNear && std::abs(up) < 0.5 * rail.height + kNear;
  if (meets) return;
  out.emplace_back(
      "brace.length",
      fmt::format("with this length and slope it ends {} {} the opposite rail's center line and {} "
                  "{} it; leave out both, and it ends on that rail's inner face",
                  shown_length(std::abs(across), design.inches),
                  across < 0.0 ? "short of" : "beyond", shown_length(std::abs(up), design.inches),
                  up < 0.0 ? "below" : "above"));
}

void add_arm_cross_member(Problems& out, const Design& design) {
  if (design.frame->arm_cross_member.material.id.empty()) return;
  if (!design.arm) {
    out.emplace_back("frame.arm_cross_member", "there is no arm to carry: add `arm:`");
    return;
  }
  if (design.lateral_link->frame_bolt.empty()) return;
  const double joint = parts::point_of(design, design.arm->frame)[0];
  const double bolt = parts::point_of(design, design.lateral_link->frame_bolt)[0];
  for (const double at : design.frame->cross_members_at) {
    if (!(std::abs(joint - bolt - at) < 1e-6)) continue;
    out.emplace_back("frame.cross_members_at",
                     fmt::format("at {} is `arm_cross_member`, by the arms' frame joints; leave "
                                 "that place out here",
                                 shown_length(at, design.inches)));
  }
}

}  // namespace

Problems frame_clashes(const Design& design) {
  Problems out;
  if (!design.frame || !design.bracket || !design.lateral_link) return out;
  add_places(out, design);
  add_said_twice(out, *design.bracket);
  if (design.brace && !std::isnan(design.brace->length) && !std::isnan(design.brace->slope)) {
    add_brace_end(out, design);
  }
  add_arm_cross_member(out, design);
  return out;
}

}  // namespace cases
