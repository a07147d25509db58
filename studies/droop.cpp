#include "studies/droop.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "checks/caveat.hpp"
#include "checks/required_factors.hpp"
#include "checks/strap.hpp"
#include "loads/strap_catch.hpp"
#include "parts/design_cases.hpp"
#include "parts/length_words.hpp"
#include "studies/joint_criterion.hpp"

namespace studies {
namespace {

constexpr const char* kStrapCatch = "strap_catch";
constexpr const char* kJointEnds = "joint at the end of its angle";
constexpr const char* kHoseEnds = "brake hose tight";

std::optional<loads::StrapCatch> caught(const parts::Design& design) {
  if (!design.vehicle) return std::nullopt;
  try {
    return loads::caught_by_straps(parts::vehicle_of(design));
  } catch (const base::InputError&) {
    return std::nullopt;
  }
}

bool is_asked(const parts::Design& design) {
  const std::vector<std::string> kinds =
      design.load_cases.empty() ? parts::default_load_cases(design) : design.load_cases;
  return std::find(kinds.begin(), kinds.end(), kStrapCatch) != kinds.end();
}

}  // namespace

std::optional<Droop> droop_of(const parts::Design& design) {
  if (!design.limit_strap) return std::nullopt;
  const parts::LimitStrap& strap = *design.limit_strap;
  Droop out;
  const auto add = [&](const char* what, double drop) {
    if (!std::isnan(drop)) out.ends.push_back({what, drop});
  };
  add(kDamperEnds, strap.damper_travel);
  if (std::isnan(strap.spring_travel)) {
    add(kCoilCarriesNothing, parts::coil_unloads_at(design));
  } else {
    add(kCoilLeavesSeat, strap.spring_travel);
  }
  add(kJointEnds, strap.joint_travel);
  add(kHoseEnds, strap.brake_hose_travel);
  out.free_travel = strap.free_travel;
  if (std::isnan(out.free_travel)) {
    for (const DroopEnd& end : out.ends) out.free_travel = std::fmin(out.free_travel, end.drop);
  } else {
    add("free travel as given", strap.free_travel);
  }
  out.advised = out.free_travel - parts::kStrapShorter;
  out.strap = parts::slack_of(design);
  add(kStrapTight, out.strap);
  if (const auto catching = caught(design)) {
    out.stretched = out.strap + catching->alone / catching->rate;
  }
  std::stable_sort(out.ends.begin(), out.ends.end(),
                   [](const DroopEnd& a, const DroopEnd& b) { return a.drop < b.drop; });
  return out;
}

std::optional<Bump> bump_of(const parts::Design& design) {
  if (!design.axle) return std::nullopt;
  const parts::Axle& axle = *design.axle;
  Bump out;
  const auto add = [&](const char* what, double rise) {
    if (!std::isnan(rise)) out.ends.push_back({what, rise});
  };
  add(kDamperShortest, axle.damper_bump_travel);
  add("coil's turns touch", axle.coil_bump_travel);
  add(kJointEnds, axle.joint_bump_travel);
  if (out.ends.empty()) return std::nullopt;
  const double met = parts::stop_travel(axle);
  add(kBumpStopMet, met);
  if (design.vehicle) out.full = met + design.vehicle->stop_crush;
  add(kFullBump, out.full);
  std::stable_sort(out.ends.begin(), out.ends.end(),
                   [](const DroopEnd& a, const DroopEnd& b) { return a.drop < b.drop; });
  return out;
}

void take_solved(Bump& bump, const std::vector<PostureExtremes>& postures) {
  for (const PostureExtremes& posture : postures) {
    if (posture.highest > 0.0) bump.solved = std::fmax(bump.solved, posture.highest);
  }
}

void take_solved(Droop& droop, const std::vector<PostureExtremes>& postures) {
  const auto hanging =
      std::find_if(postures.begin(), postures.end(), [](const PostureExtremes& posture) {
        return posture.posture == loads::posture_word(loads::Posture::droop);
      });
  if (hanging == postures.end() || !(hanging->lowest < 0.0)) return;
  droop.hangs = -hanging->lowest;
  for (const JointAngles& joint : hanging->joints) {
    if (std::isnan(joint.most_tilt) || !(joint.tilt > 0.0)) continue;
    const double drop = droop.hangs * joint.most_tilt / joint.tilt;
    if (!std::isnan(droop.joint_at_tilt) && drop >= droop.joint_at_tilt) continue;
    droop.joint_at_tilt = drop;
    droop.joint = joint.part + ", " + joint.where;
  }
}

namespace {

/// The bolt and the tabs at the ends of the strap that catches the axle alone.
void add_ends_of_strap(std::vector<checks::Finding>& out, const parts::Design& design,
                       double caught_force) {
  const parts::LimitStrap& strap = *design.limit_strap;
  if (!strap.bolt.given()) return;
  const auto asked = [&](checks::Item item) {
    return Decided{checks::required(design.factors, item, true), base::kUnset};
  };
  const BoltForce force{caught_force, 0.0};
  const parts::StrapJoint joint = parts::strap_joint(design, {}, 0);
  checks::BoltInput bolt = bolt_input(joint.bolt, force);
  bolt.required = asked(checks::Item::bolt).required;
  out.push_back(checks::bolt_shear(bolt));
  if (!strap.tabs.given()) return;
  const auto add = [&](TabCheck check, checks::Item item) {
    out.push_back(tab_finding(check, joint.tabs, strap.bolt, force, asked(item)));
  };
  add(TabCheck::hole, checks::Item::tab);
  add(TabCheck::root, checks::Item::yield);
  if (strap.tabs.on_tube()) add(TabCheck::wall, checks::Item::tab);
  if (strap.tabs.weld.given()) add(TabCheck::weld, checks::Item::weld);
}

}  // namespace

namespace {

/// Of what is not made to stop an axle, the first thing that a strap's stretch takes it past.
std::string stopped_before(const Droop& droop, bool inches) {
  const auto first = std::find_if(droop.ends.begin(), droop.ends.end(), [](const DroopEnd& end) {
    return end.what == kDamperEnds || end.what == kJointEnds || end.what == kHoseEnds;
  });
  if (first == droop.ends.end() || !(droop.stretched > first->drop)) return "";
  return fmt::format(
      "{}its stretch would take the axle {} down, past {} ({}): that stops it before the strap "
      "has, and what it comes to there is not judged",
      checks::kCaveat, parts::length_words(droop.stretched, inches),
      parts::length_words(first->drop, inches), first->what);
}

}  // namespace

std::vector<checks::Finding> strap_findings(const parts::Design& design) {
  if (!design.limit_strap || !design.vehicle || !is_asked(design)) return {};
  std::vector<checks::Finding> all(1);
  all.reserve(8);
  checks::Finding& found = all.front();
  const double required = design.factors.strap_abuse;
  try {
    const loads::StrapCatch c = loads::caught_by_straps(parts::vehicle_of(design));
    found = checks::strap({.weight = c.weight,
                           .pushed = c.pushed,
                           .rate = c.rate,
                           .energy = c.weight / base::kGravity * c.speed * c.speed,
                           .force = c.alone,
                           .breaking_load = design.limit_strap->breaking_load,
                           .required = required});
    found.notes.push_back(fmt::format(
        "the axle falls at {} as the strap comes tight; two straps seldom share: each is judged as "
        "if alone (proposal, no source)",
        design.inches ? fmt::format("{:.2f} ft/s", c.speed / (12.0 * base::kInch))
                      : fmt::format("{:.2f} m/s", c.speed)));
    if (const std::string beware = stopped_before(*droop_of(design), design.inches);
        !beware.empty()) {
      found.notes.push_back(beware);
    }
    add_ends_of_strap(all, design, c.alone);
  } catch (const base::InputError& error) {
    found.check = "strap";
    found.measure = checks::Measure::force;
    found.required = required;
    checks::leave_undecided(found, error.problem());
  }
  for (checks::Finding& f : all) {
    f.part = "limit_strap";
    f.where = "one strap alone";
    f.load_case = "strap catch";
  }
  return all;
}

}  // namespace studies
