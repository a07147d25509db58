#include "parts/design_cases.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/input_error.hpp"
#include "loads/accelerated.hpp"
#include "loads/case_library.hpp"
#include "parts/arm_twist.hpp"

namespace parts {
namespace {

using loads::LoadCase;
using loads::Need;
using loads::Role;

/// Finds a number of the vehicle by its key: a visitor for `fields`.
struct NumberOfVehicle {
  std::string_view key;
  double found = base::kUnset;

  void quantity(const FieldInfo& info, double& value, const Quantity&) {
    if (info.key == key) found = value;
  }
  void flag(const FieldInfo&, bool&) {}
};

/// Whether a message about the vehicle is about a number that is not given.
bool is_missing_number(const Design& design, const base::InputError& error) {
  const std::string& key = error.where().key;
  if (key.rfind("limit_strap.", 0) == 0) return true;
  if (key.rfind("vehicle.", 0) != 0) return false;
  VehicleEntry entry = *design.vehicle;
  NumberOfVehicle number{std::string_view(key).substr(8)};
  fields(number, entry);
  return std::isnan(number.found);
}

bool has_arm_on(const Design& design, Role role) {
  if (!design.arm) return false;
  if (design.arm->mirror) return true;
  return arm_is_left(design) == (role == Role::left_arm_midspan);
}

/// Why a design cannot be solved for a need; empty = it can.
std::string unmet(const Design& design, Need need) {
  switch (need) {
    case Need::axle:
      return design.axle ? "" : "needs `axle:`";
    case Need::lateral_link:
      return design.lateral_link ? "" : "needs `lateral_link:`";
    case Need::arms:
      return design.arm ? "" : "needs `arm:`";
    case Need::bump_stops:
      return design.axle && !std::isnan(design.axle->stop_rate)
                 ? ""
                 : "needs axle.bump_travel and axle.stop_rate";
    case Need::steering:
      return design.steering ? "" : "needs `steering:`";
    case Need::straps:
      break;
  }
  return design.limit_strap ? "" : "needs `limit_strap:`";
}

bool has_straps(const Design& design) {
  return !std::isnan(slack_of(design)) && !std::isnan(design.limit_strap->rate);
}

/// What a kind of case asks of a design, whatever the vehicle's numbers.
std::string unmet(const Design& design, const std::vector<Need>& needs, loads::Posture posture) {
  for (const Need need : needs) {
    std::string reason = unmet(design, need);
    if (!reason.empty()) return reason;
  }
  if (posture == loads::Posture::droop && !has_straps(design)) {
    return "its posture is droop: needs limit_strap.slack and limit_strap.rate, on which the axle "
           "hangs";
  }
  // A case in bump starts at ride height, and moves as far as coils and stops let it.
  if (posture == loads::Posture::bump && !design.axle) {
    return "its posture is bump: needs `axle:` with its coils";
  }
  return {};
}

std::string unmet(const Design& design, const LoadCase& load_case) {
  for (const loads::Push& push : load_case.pushes) {
    const bool arm = push.role == Role::left_arm_midspan || push.role == Role::right_arm_midspan;
    if (arm && !has_arm_on(design, push.role)) return "there is no arm on that side";
  }
  return unmet(design, load_case.needs, load_case.posture);
}

/// The bolt forces that cross-up leads to, where the arms are stiff on two bolts.
void add_twist(std::vector<LoadCase>& built, const Design& design) {
  const auto twist = arm_twist(design);
  if (!twist) return;
  for (LoadCase& c : built) {
    c.figures = {
        {"twist in each arm, axle taken as stiff", twist->moment, loads::Figure::Kind::moment},
        {"on each of its two axle bolts", twist->bolt_couple, loads::Figure::Kind::force},
        {"each bushing gives", twist->travel, loads::Figure::Kind::length},
        {"up or down at the frame joint", twist->pivot, loads::Figure::Kind::force}};
  }
}

KindOutcome outcome_of(const Design& design, const std::string& kind, bool named, bool asked) {
  KindOutcome out{.kind = kind, .asked = asked};
  try {
    out.built = loads::built_in_cases(vehicle_of(design), {kind});
  } catch (const base::InputError& error) {
    const loads::CaseInfo& info = loads::case_info(kind);
    out.reason = unmet(design, info.needs, info.posture);
    // Numbers that clash are never passed over in a case that is asked for, missing ones not in one
    // that the file names; but a case that cannot run anyway need not have its numbers.
    const bool can_run = out.reason.empty();
    if (can_run) out.reason = error.problem();
    if (asked && !is_missing_number(design, error)) throw;
    if (named && can_run) throw;
    return out;
  }
  if (kind == "full_cross_up") add_twist(out.built, design);
  for (const LoadCase& c : out.built) {
    const std::string reason = unmet(design, c);
    if (reason.empty()) {
      out.run.push_back(c);
    } else if (out.reason.empty()) {
      out.reason = reason;
    }
  }
  if (!out.run.empty()) out.reason.clear();
  return out;
}

std::string why_not_asked(const Design& design) {
  if (!design.load_cases.empty()) return "not asked for by `load_cases:`";
  return design.lateral_link ? "not in the default set without `axle:`"
                             : "not in the default set without `lateral_link:`";
}

/// How a case gets to its posture, for its basis.
std::string posture_basis(const LoadCase& c) {
  switch (c.posture) {
    case loads::Posture::ride:
      return {};
    case loads::Posture::bump:
      return c.place.given()
                 ? "; posture bump, at least on the stops, farther as coils and stops let it"
                 : "; posture bump, as far from ride height as coils and stops let it";
    case loads::Posture::droop:
      return "; posture droop, the axle hangs on its straps; coils push, and do not pull";
    case loads::Posture::crossed:
      return "; posture crossed, the ground rolls the axle as far as given";
    case loads::Posture::imposed:
      break;
  }
  return "; the ground holds the axle at the heave and roll given";
}

DesignCase from(const LoadCase& c) {
  return {.name = c.name,
          .abuse = c.severity == loads::Severity::abuse,
          .basis = c.basis + posture_basis(c),
          .pushes = c.pushes,
          .forces = {},
          .posture = c.posture,
          .place = c.place};
}

/// Where a case of the file's own stands.
void set_place(LoadCase& out, const Design& design, const CustomCase& c) {
  out.posture = c.posture;
  out.place = {.heave = c.heave, .roll = c.roll};
  switch (c.posture) {
    case loads::Posture::ride:
    case loads::Posture::imposed:
      if (out.place.given()) out.posture = loads::Posture::imposed;
      break;
    case loads::Posture::bump:
      out.place.heave = stop_travel(*design.axle);
      break;
    case loads::Posture::droop:
      out.place.heave = -slack_of(design);
      break;
    case loads::Posture::crossed:
      if (std::isnan(c.roll)) out.place.roll = design.vehicle->articulation;
  }
}

LoadCase wheel_case(const Design& design, const Named<CustomCase>& named) {
  const CustomCase& c = named.value;
  LoadCase out{.id = named.name, .name = named.name};
  set_place(out, design, c);
  if (!is_given(c.left_wheel) && !is_given(c.right_wheel)) {
    out.basis = "posture given in the case file, wheels at rest";
    if (out.posture == loads::Posture::droop) {
      out.pushes = {{Role::left_contact, {0.0, 0.0, 0.0}}, {Role::right_contact, {0.0, 0.0, 0.0}}};
      out.basis = "posture given in the case file, wheels off the ground";
    } else {
      out.pushes = loads::static_pushes(vehicle_of(design));
    }
    return out;
  }
  if (is_given(c.left_wheel)) {
    out.pushes.push_back({c.at_hub ? Role::left_hub : Role::left_contact, c.left_wheel});
  }
  if (is_given(c.right_wheel)) {
    out.pushes.push_back({c.at_hub ? Role::right_hub : Role::right_contact, c.right_wheel});
  }
  out.basis = c.at_hub ? "wheel forces at the hubs, given in the case file"
                       : "wheel forces at the ground, given in the case file";
  return out;
}

/// Without an axle only what goes sideways reaches the link.
bool loads_nothing(const Design& design, const LoadCase& c) {
  return !design.axle && std::all_of(c.pushes.begin(), c.pushes.end(),
                                     [](const loads::Push& p) { return p.force[1] == 0.0; });
}

/// Puts everything of one kind that the case file gives into the load case it names.
template <class T>
void gather(std::vector<DesignCase>& cases, const std::vector<Named<T>>& all,
            std::vector<Named<T>> DesignCase::*kind) {
  for (const Named<T>& one : all) {
    const GivenCase& given = one.value.given;
    auto found = std::find_if(cases.begin(), cases.end(),
                              [&](const DesignCase& c) { return c.name == given.load_case; });
    if (found == cases.end()) {
      cases.push_back({.name = given.load_case,
                       .abuse = !given.routine,
                       .basis = "loads given in the case file",
                       .pushes = {},
                       .forces = {}});
      found = cases.end() - 1;
    }
    ((*found).*kind).push_back(one);
    found->abuse = found->abuse && !given.routine;
  }
}

/// The custom cases that are a force on a point.
std::vector<Named<PlainForce>> custom_forces(const Design& design) {
  const auto or_zero = [](const std::array<double, 3>& v) {
    return is_given(v) ? v : std::array<double, 3>{0.0, 0.0, 0.0};
  };
  std::vector<Named<PlainForce>> out;
  for (const Named<CustomCase>& named : design.custom_cases) {
    const CustomCase& c = named.value;
    if (c.at.empty()) continue;
    PlainForce force;
    force.at = c.at;
    force.force = or_zero(c.force);
    force.moment = or_zero(c.moment);
    force.given = {named.name, c.routine};
    out.push_back({named.name, force});
  }
  return out;
}

}  // namespace

std::vector<KindOutcome> kind_outcomes(const Design& design) {
  std::vector<KindOutcome> out;
  if (!design.vehicle) return out;
  const bool named = !design.load_cases.empty();
  const std::vector<std::string> wanted = named ? design.load_cases : default_load_cases(design);
  for (const std::string& kind : loads::case_names()) {
    const bool asked = std::find(wanted.begin(), wanted.end(), kind) != wanted.end();
    out.push_back(outcome_of(design, kind, named && asked, asked));
    if (!asked) out.back().reason = why_not_asked(design);
  }
  return out;
}

std::vector<LoadCase> custom_axle_cases(const Design& design) {
  std::vector<LoadCase> out;
  for (const Named<CustomCase>& named : design.custom_cases) {
    const CustomCase& custom = named.value;
    if (!custom.at.empty()) continue;
    LoadCase c = wheel_case(design, named);
    if (is_given(custom.acceleration)) {
      std::array<double, 3> in_g = custom.acceleration;
      for (double& a : in_g) a /= base::kGravity;
      c = loads::accelerated(vehicle_of(design), named.name,
                             "load_cases." + named.name + ".acceleration", in_g);
    }
    c.severity = custom.routine ? loads::Severity::routine : loads::Severity::abuse;
    if (loads_nothing(design, c)) {
      throw base::InputError("load_cases." + named.name,
                             "without `axle:` only a force across the truck loads the link, and "
                             "this case has none");
    }
    out.push_back(c);
    if (!custom.both_sides) continue;
    out.push_back(loads::mirrored(c));
    out.back().name = named.name + ", mirrored";
    out.back().id = out.back().name;
  }
  return out;
}

std::vector<DesignCase> design_cases(const Design& design) {
  std::vector<DesignCase> cases;
  const std::vector<KindOutcome> outcomes = kind_outcomes(design);
  const std::vector<std::string> order =
      design.load_cases.empty() ? default_load_cases(design) : design.load_cases;
  for (const std::string& kind : order) {
    for (const KindOutcome& outcome : outcomes) {
      if (outcome.kind != kind) continue;
      for (const LoadCase& c : outcome.run) cases.push_back(from(c));
    }
  }
  for (const LoadCase& c : custom_axle_cases(design)) cases.push_back(from(c));
  gather(cases, custom_forces(design), &DesignCase::forces);
  gather(cases, design.forces, &DesignCase::forces);
  gather(cases, design.line_loads, &DesignCase::line_loads);
  gather(cases, design.strains, &DesignCase::strains);
  gather(cases, design.settlements, &DesignCase::settlements);
  gather(cases, design.self_weight, &DesignCase::self_weight);
  return cases;
}

std::vector<CaseNotRun> cases_not_run(const Design& design) {
  std::vector<CaseNotRun> out;
  for (const KindOutcome& outcome : kind_outcomes(design)) {
    if (!outcome.reason.empty()) out.push_back({loads::case_words(outcome.kind), outcome.reason});
  }
  return out;
}

}  // namespace parts
