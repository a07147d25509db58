#pragma once

#include "checks/finding.hpp"
#include "sections/bolt.hpp"

namespace checks {

/// What the check of a joint that friction is to hold needs.
struct BoltSlipInput {
  sections::BoltThread thread;
  sections::BoltGrade grade;
  int planes = 2;        ///< faces that would slip
  double shear = 0.0;    ///< across the bolt, all planes together  [N]
  double tension = 0.0;  ///< along the bolt, away from the clamped faces  [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / demand
};

/// Bolt tension of a joint that may come apart again: 0.75 Sp At.  [N]
/// Source: Shigley, Mechanical Engineering Design, 9th ed., eq. 8-31, from memory.
[[nodiscard]] double reusable_preload(const sections::BoltThread& thread,
                                      const sections::BoltGrade& grade);

/// Force at which clamped faces slip: planes x friction x preload.  [N]
/// Source: AISC 360-22 J3.9 with D_u = h_f = 1, from memory.
[[nodiscard]] double slip_resistance(int planes, double friction, double preload);

/// Slip of clamped faces under preload: V / (planes x 0.20 Fi) + T / Fi, up to 1; Fi = 0.75 Sp At,
/// 0.20 of mill or painted faces (common practice, no source).
/// Limits: tightened to that preload, which a torque wrench meets within a quarter; no rubber,
/// paint stack or tube wall in the grip.
/// Source: as `slip_resistance` and `reusable_preload`.
[[nodiscard]] Finding bolt_slip(const BoltSlipInput& input);

}  // namespace checks
