#pragma once

#include "parts/bolt_spec.hpp"
#include "parts/field.hpp"
#include "parts/tab_spec.hpp"

namespace parts {

/// Limit straps, one on each side, and what else ends the axle's drop. All drops are of the axle,
/// from ride height.
struct LimitStrap {
  double slack = base::kUnset;          ///< drop at which the straps come tight  [m]
  double rate = base::kUnset;           ///< of one strap  [N/m]
  double spacing = base::kUnset;        ///< strap to strap; unset = as the coils  [m]
  double breaking_load = base::kUnset;  ///< rated, of one strap  [N]
  double free_travel = base::kUnset;    ///< drop at which something but the straps ends it  [m]
  double damper_travel = base::kUnset;  ///< drop at which the dampers are at full length  [m]
  double spring_travel = base::kUnset;  ///< drop at which a coil leaves its seat  [m]
  double joint_travel = base::kUnset;   ///< drop at which a joint is at the end of its angle  [m]
  double brake_hose_travel = base::kUnset;  ///< drop at which a brake hose is tight  [m]
  BoltSpec bolt;                            ///< at each end; without a name = not given
  TabSpec tabs;                             ///< at each end; without a steel = not given
  bool operator==(const LimitStrap&) const = default;
};

/// Straps are set this much short of the free travel, because they stretch; common practice, no
/// source.  [m]
inline constexpr double kStrapShorter = base::kInch;

template <class Visitor>
void fields(Visitor& v, LimitStrap& s) {
  using enum Dimension;
  using enum Presence;
  v.quantity(
      {"slack", optional, "drop of the axle until the straps are tight",
       "1 in short of the free travel, as far as it is given: straps stretch; common practice, "
       "no source; else not compared, and `vehicle.droop_speed` is needed"},
      s.slack, positive(length));
  v.quantity({"rate", optional, "one strap, force over stretch", "its strength is not decided"},
             s.rate, positive(stiffness));
  v.quantity({"spacing", optional, "strap to strap, across the truck", "as the coils"}, s.spacing,
             positive(length));
  v.quantity({"breaking_load", optional, "rated breaking load of one strap",
              "its strength is not decided"},
             s.breaking_load, positive(force));
  v.phrase({"bolt", optional, "bolt at each end of a strap", "it is not checked"}, s.bolt);
  v.phrase({"tabs", optional, "tabs at each end of a strap, that its bolt goes through",
            "they are not checked"},
           s.tabs);
  v.quantity({"free_travel", optional, "drop until something but the straps ends it",
              "the least of the four below"},
             s.free_travel, positive(length));
  v.quantity(
      {"damper_travel", optional, "drop until the dampers are at full length", "not compared"},
      s.damper_travel, positive(length));
  v.quantity({"spring_travel", optional, "drop until a coil leaves its seat",
              "static load over rate: a coil that is not held in its seat"},
             s.spring_travel, positive(length));
  v.quantity(
      {"joint_travel", optional, "drop until a joint is at the end of its angle", "not compared"},
      s.joint_travel, positive(length));
  v.quantity({"brake_hose_travel", optional, "drop until a brake hose is tight", "not compared"},
             s.brake_hose_travel, positive(length));
}

struct Design;

/// Drop at which a coil carries nothing: its static load over its rate; unset = not known.  [m]
[[nodiscard]] double coil_unloads_at(const Design& design);

/// Drop at which something but the straps ends the axle's drop: as given, else the least of what is
/// given and of the coil's; unset where nothing is given.  [m]
[[nodiscard]] double free_travel_of(const Design& design);

/// Drop at which the straps come tight: as given, else kStrapShorter short of the free travel;
/// unset where that is not known, or no longer than that.  [m]
[[nodiscard]] double slack_of(const Design& design);

}  // namespace parts
