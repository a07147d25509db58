#include "report/posture_text.hpp"

#include <cmath>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/units_shown.hpp"

namespace report {
namespace {

using checks::Measure;

/// "axle 20.1 mm down to 34.2 mm up, 3.1 mm sideways, rolled 4.0 deg"
std::string place_words(const studies::PostureExtremes& p, bool inches) {
  const auto height = [&](double heave) {
    return fmt::format("{} {}", shown(std::abs(heave), Measure::length, inches),
                       heave < 0.0 ? "down" : "up");
  };
  std::string words = "axle " + height(p.lowest);
  if (height(p.highest) != height(p.lowest)) words += " to " + height(p.highest);
  words += fmt::format(", {} sideways, rolled {}", shown(p.sideways, Measure::length, inches),
                       shown(p.roll, Measure::angle, inches));
  if (p.ground_moment > 0.0) {
    words += fmt::format(" by {} of the ground", shown(p.ground_moment, Measure::moment, inches));
  }
  return words;
}

std::string joint_words(const studies::JointAngles& joint, bool inches) {
  std::string words = fmt::format("{}, {}:", part_words(joint.part), joint.where);
  if (!joint.ball) words += fmt::format(" twist {},", shown(joint.twist, Measure::angle, inches));
  words += fmt::format(" tilt {}", shown(joint.tilt, Measure::angle, inches));
  if (!std::isnan(joint.most_tilt)) {
    words += fmt::format(" of {}", shown(joint.most_tilt, Measure::angle, inches));
  }
  if (joint.give > 0.0)
    words += fmt::format(", gives {}", shown(joint.give, Measure::length, inches));
  return words;
}

bool has_bushing(const std::vector<studies::PostureExtremes>& postures) {
  for (const studies::PostureExtremes& p : postures) {
    for (const studies::JointAngles& joint : p.joints) {
      if (!joint.ball) return true;
    }
  }
  return false;
}

}  // namespace

std::string squeezed_words(const std::vector<studies::PostureExtremes>& postures, bool inches) {
  const studies::JointAngles* most = nullptr;
  for (const studies::PostureExtremes& p : postures) {
    for (const studies::JointAngles& joint : p.joints) {
      if (joint.give > studies::kBushingThickness && (most == nullptr || joint.give > most->give)) {
        most = &joint;
      }
    }
  }
  if (most == nullptr) return {};
  return fmt::format(
      "bushing of {}, {}: its rate lets it give {} across its bolt, more than rubber is thick ({}; "
      "proposal, no source): it would come up solid, which is not counted; a hard bushing gives "
      "less",
      part_words(most->part), most->where, shown(most->give, Measure::length, inches),
      shown(studies::kBushingThickness, Measure::length, inches));
}

std::vector<std::string> posture_words(const std::vector<studies::PostureExtremes>& postures,
                                       bool inches) {
  std::vector<std::string> out;
  for (const studies::PostureExtremes& p : postures) {
    std::string words = p.posture + ": " + place_words(p, inches);
    for (const studies::StopForce& stop : p.stops) {
      words += fmt::format("; {} {}", stop.name, shown(stop.force, Measure::force, inches));
    }
    for (const studies::JointAngles& joint : p.joints) words += "; " + joint_words(joint, inches);
    out.push_back(std::move(words));
  }
  if (has_bushing(postures)) {
    out.emplace_back(
        "rubber bushings last where they tilt up to 2 to 5 deg, rarely 10, and twist about their "
        "bolt up to 15 to 25 deg each way (common practice, no source)");
  }
  if (std::string squeezed = squeezed_words(postures, inches); !squeezed.empty()) {
    out.push_back(std::move(squeezed));
  }
  if (!out.empty()) out.emplace_back("clearances are not checked in any of them");
  return out;
}

}  // namespace report
