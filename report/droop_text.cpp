#include "report/droop_text.hpp"

#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "parts/limit_strap.hpp"
#include "report/answer_words.hpp"
#include "report/units_shown.hpp"

namespace report {

namespace {

std::string in_order(const std::vector<studies::DroopEnd>& ends, bool inches) {
  std::string order;
  for (const studies::DroopEnd& end : ends) {
    order += fmt::format("{}{} at {}", order.empty() ? "" : ", ", end.what,
                         shown(end.drop, checks::Measure::length, inches));
  }
  return order;
}

double place_of(const std::vector<studies::DroopEnd>& ends, std::string_view what) {
  for (const studies::DroopEnd& end : ends) {
    if (end.what == what) return end.drop;
  }
  return base::kUnset;
}

/// What the equilibrium in droop reaches.
template <class Length>
std::string solved_words(const studies::Droop& droop, Length length) {
  std::string reached;
  for (const studies::DroopEnd& end : droop.ends) {
    if (end.drop > droop.hangs) break;
    reached += fmt::format("{}{}", reached.empty() ? "" : ", ", end.what);
  }
  std::string out =
      fmt::format("solved, hanging or as its straps catch it, the axle gets {} down: {}",
                  length(droop.hangs), reached.empty() ? "before any of these" : "past " + reached);
  if (!std::isnan(droop.joint_at_tilt)) {
    out += fmt::format("; {} would be at its tilt at {}", part_words(droop.joint),
                       length(droop.joint_at_tilt));
  }
  return out;
}

}  // namespace

std::vector<std::string> bump_words(const studies::Bump& bump, bool inches) {
  const auto length = [&](double meters) { return shown(meters, checks::Measure::length, inches); };
  std::vector<std::string> out = {in_order(bump.ends, inches)};
  const double damper = place_of(bump.ends, studies::kDamperShortest);
  if (damper <= bump.full) {
    out.emplace_back(
        "the damper would be the stop before the bump stop is crushed, and it is a point of "
        "attachment, not a stop: a shorter one, or a spacer under the bump stop (common practice, "
        "no source)");
  } else if (!std::isnan(damper) && std::isnan(bump.full)) {
    out.emplace_back(
        "how far the bump stop lets the axle up is not known (`bump_travel`, "
        "`vehicle.stop_crush`): "
        "the damper must be longer than that");
  }
  if (bump.solved > 0.0) {
    std::string past;
    for (const studies::DroopEnd& end : bump.ends) {
      if (end.drop > bump.solved) break;
      past += fmt::format("{}{}", past.empty() ? "" : ", ", end.what);
    }
    out.push_back(fmt::format("solved, the load cases bring the axle {} up: {}",
                              length(bump.solved),
                              past.empty() ? "before any of these" : "past " + past));
  }
  return out;
}

std::vector<std::string> droop_words(const studies::Droop& droop, bool inches) {
  const auto length = [&](double meters) { return shown(meters, checks::Measure::length, inches); };
  std::vector<std::string> out;
  if (!droop.ends.empty()) out.push_back(in_order(droop.ends, inches));
  if (!droop.ends.empty() && droop.ends.front().what == studies::kDamperEnds) {
    out.emplace_back(
        "the damper would be the stop, and it is a point of attachment, not a stop: something else "
        "must end the drop before it (common practice, no source)");
  }
  const bool has_strap = !std::isnan(droop.strap);
  if (has_strap && droop.strap >= droop.free_travel) {
    out.emplace_back("the strap comes tight too late: something else has ended the drop before it");
  }
  if (has_strap && droop.strap < droop.free_travel && droop.stretched > droop.free_travel) {
    out.push_back(
        fmt::format("caught by one strap, its stretch lets the axle down to {}, beyond the free "
                    "travel of {}",
                    length(droop.stretched), length(droop.free_travel)));
  }
  if (droop.advised > 0.0) {
    std::string words = fmt::format(
        "strap length: tight at {}, {} short of the free travel of {}, because straps "
        "stretch (common practice, no source)",
        length(droop.advised), length(parts::kStrapShorter), length(droop.free_travel));
    const double stretch = droop.stretched - droop.strap;
    if (stretch > parts::kStrapShorter && stretch < droop.free_travel) {
      words += fmt::format(
          "; one that catches the axle alone stretches {}: tight at {} it stays "
          "within the free travel",
          length(stretch), length(droop.free_travel - stretch));
    }
    out.push_back(std::move(words));
  }
  if (!std::isnan(droop.hangs)) out.push_back(solved_words(droop, length));
  return out;
}

std::string droop_sentence(const studies::Droop& droop, bool inches) {
  const auto length = [&](double meters) { return shown(meters, checks::Measure::length, inches); };
  if (droop.ends.empty()) return "";
  const studies::DroopEnd& first = droop.ends.front();
  std::string out = fmt::format("drop from ride height: {} at {}", first.what, length(first.drop));
  if (first.what == studies::kDamperEnds) out += ", which is no stop";
  const bool has_strap = !std::isnan(droop.strap);
  if (has_strap && droop.strap >= droop.free_travel) {
    out += "; the strap comes tight too late";
  } else if (has_strap && droop.stretched > droop.free_travel) {
    out += fmt::format("; one strap alone stretches to {}, past the free travel of {}",
                       length(droop.stretched), length(droop.free_travel));
  }
  if (!std::isnan(droop.hangs)) out += fmt::format("; solved, {} down", length(droop.hangs));
  return out;
}

std::string beyond_travel_words(const studies::BeyondTravel& beyond, bool inches) {
  using Kind = studies::BeyondTravel::Kind;
  if (beyond.kind == Kind::wheel_lifts) {
    const auto moment = [&](double si) { return shown(si, checks::Measure::moment, inches); };
    return fmt::format(
        "the ground rolls the axle by {} ({}), where {} from {} on: its own weight does not take "
        "it there",
        moment(beyond.reached), beyond.load_case, beyond.what, moment(beyond.ends));
  }
  const auto length = [&](double si) { return shown(si, checks::Measure::length, inches); };
  return fmt::format(
      "a corner of the axle goes {} {} ({}), past {} ({}): that ends its travel or breaks, and "
      "what the parts carry then is not judged",
      length(beyond.reached), beyond.kind == Kind::drop ? "down" : "up", beyond.load_case,
      length(beyond.ends), beyond.what);
}

}  // namespace report
