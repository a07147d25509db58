#pragma once

#include <string>

#include "checks/finding.hpp"
#include "sections/bolt.hpp"

namespace checks {

/// What the check of a threaded shank needs.
struct ThreadedShankInput {
  sections::BoltThread thread;
  double yield = base::kUnset;  ///< of the shank  [Pa]
  double axial = 0.0;           ///< pull or push  [N]
  double across = 0.0;          ///< at the joint's center, square to the shank  [N]
  double out = base::kUnset;    ///< from there to where the thread is held: the jam nut  [m]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / stress
};

/// First yield of a threaded shank in tension and bending: F / At + 32 V out / (pi d3^3), d3 at the
/// thread's root.
/// Limits: the jam nut is tight, yet what it clamps is not counted; its torque is not in it.
/// Source: Shigley, Mechanical Engineering Design, 9th ed., ch. 3 and 8, from memory; d3 of both
/// thread systems: proposal.
[[nodiscard]] Finding threaded_shank(const ThreadedShankInput& input);

/// What the check of a thread's engagement needs.
struct ThreadEngagementInput {
  sections::BoltThread thread;
  double engaged = base::kUnset;  ///< length of full thread, at the longest adjustment  [m]
  double tensile = base::kUnset;  ///< Fu of what is tapped  [Pa]
  std::string strength_basis = {};
  double axial = 0.0;  ///< [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / force
};

/// Engagement beyond this adds nothing: the first threads carry.  [diameters]
inline constexpr double kMostEngaged = 1.5;

/// Stripping of the tapped thread: 0.6 Fu As, As = pi d L (1/2 + (D - d2) / (sqrt(3) P)) of the
/// basic profile, a fifth less for the tolerances of class 2 and another fifth for a wall that
/// widens (from memory, a thin wall leaves 0.7 to 0.9; the shares are a proposal). Undecided with
/// under one diameter engaged (common practice, no source). Source: ASME B1.1, thread shear area
/// (read in a restatement).
[[nodiscard]] Finding thread_engagement(const ThreadEngagementInput& input);

}  // namespace checks
