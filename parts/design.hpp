#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "checks/required_factors.hpp"
#include "parts/arm.hpp"
#include "parts/axle.hpp"
#include "parts/bolted_group.hpp"
#include "parts/brace.hpp"
#include "parts/bracket.hpp"
#include "parts/custom_case.hpp"
#include "parts/duty_entry.hpp"
#include "parts/frame.hpp"
#include "parts/given_loads.hpp"
#include "parts/joint_spec.hpp"
#include "parts/lateral_link.hpp"
#include "parts/limit_strap.hpp"
#include "parts/plain.hpp"
#include "parts/side_weld.hpp"
#include "parts/steering.hpp"
#include "parts/vehicle_entry.hpp"
#include "sections/tolerance.hpp"

namespace parts {

template <class T>
struct Named {
  std::string name;
  T value;
  bool operator==(const Named&) const = default;
};

/// A default that was used, in words.
struct Assumption {
  std::string key;    ///< "vehicle.friction"
  std::string value;  ///< "0.9"
  std::string basis;
  bool operator==(const Assumption&) const = default;
};

/// One change to the base case: a path and the value it gets, or a part that is left out.
struct Patch {
  std::string path;  ///< "lateral_link.tube"; "brace" with an empty value leaves the part out
  std::string value;
  bool operator==(const Patch&) const = default;
};

struct Variant {
  std::string name;
  std::vector<Patch> patches;
  bool operator==(const Variant&) const = default;
};

/// Everything a case file says, in SI.
/// Axes ISO 8855: x forward, y left, z up; origin on the ground under the axle's center.
/// Its copies are made in design.cpp alone: in every file that hands one on they would take most of
/// the time to compile it.
struct Design {
  Design();
  Design(const Design& other);
  Design(Design&& other) noexcept;
  Design& operator=(const Design& other);
  Design& operator=(Design&& other) noexcept;
  ~Design();

  std::string title;
  bool inches = true;                                ///< the units of the case file, for output
  sections::Sizes sizes = sections::Sizes::nominal;  ///< of bars and tubes
  std::optional<VehicleEntry> vehicle;
  std::vector<Named<std::array<double, 3>>> points;  ///< [m]
  std::vector<Named<sections::Material>> materials;
  std::vector<Named<sections::Shape>> sections;
  std::vector<Named<GivenJoint>> joints;
  std::optional<LateralLink> lateral_link;
  std::optional<Bracket> bracket;
  std::optional<Brace> brace;
  std::optional<Frame> frame;
  std::optional<Arm> arm;
  std::optional<Axle> axle;
  std::optional<LimitStrap> limit_strap;
  std::optional<Steering> steering;
  std::vector<Named<Member>> members;
  std::vector<Named<PlainSupport>> supports;
  std::vector<Named<PlainSpring>> springs;
  std::vector<Named<RigidSet>> rigid;
  std::vector<Named<SideWeld>> side_welds;
  std::vector<Named<BoltedGroup>> bolt_groups;
  std::vector<Named<PlainForce>> forces;
  std::vector<Named<LineLoad>> line_loads;
  std::vector<Named<GivenStrain>> strains;
  std::vector<Named<Settlement>> settlements;
  std::vector<Named<SelfWeight>> self_weight;
  std::vector<std::string> load_cases;  ///< kinds of built-in cases; empty = default_load_cases
  std::vector<Named<CustomCase>> custom_cases;  ///< run besides those
  std::vector<Named<DutyEntry>> duty;           ///< "1", "2", ...; empty = loads::default_duty
  checks::FactorPreset factor_preset = checks::FactorPreset::usual;  ///< that `factors` began from
  checks::RequiredFactors factors;
  std::vector<Variant> variants;
  std::vector<Assumption> assumed;
};

/// The load case of each force, line load, strain, settlement and own weight, one by one.
[[nodiscard]] std::vector<GivenCase> given_cases(const Design& design);

/// Whether the case file itself gives any load.
[[nodiscard]] bool has_given_loads(const Design& design);

/// Whether link and brace are on one bolt, at the bracket.
[[nodiscard]] bool on_one_bolt(const Design& design);

/// The kinds of built-in cases of a design that names none: all of them with an axle; hard corner
/// and curb with a lateral link alone; none without a vehicle.
[[nodiscard]] std::vector<std::string> default_load_cases(const Design& design);

/// What the loads come from: the vehicle, the coils of its axle and its limit straps. The design
/// has a vehicle.
[[nodiscard]] loads::Vehicle vehicle_of(const Design& design);

/// A point of the case file; unset when there is none of that name.  [m]
[[nodiscard]] std::array<double, 3> point_of(const Design& design, const std::string& name);

}  // namespace parts
