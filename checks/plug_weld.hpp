#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// Rosettes around a tube: round holes in its wall, welded full onto an insert inside.
struct RosetteInput {
  int count = 0;
  double hole = base::kUnset;            ///< diameter  [m]
  double outside = base::kUnset;         ///< of the tube  [m]
  double wall = base::kUnset;            ///< of the tube  [m]
  double filler_tensile = base::kUnset;  ///< F_EXX  [Pa]
  double axial = 0.0;                    ///< pull or push  [N]
  double across = 0.0;                   ///< [N]
  double torque = 0.0;                   ///< [N m]
  double bending = 0.0;                  ///< [N m]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / demand
};

/// Smallest and largest hole of a plug weld in a part of a thickness: t + 8 mm (5/16 in); 3 mm more
/// or 2.25 t, whichever is larger.  [m]
/// Source: AISC 360 J2.3b (read in a restatement).
struct PlugHole {
  double least;
  double most;
};
[[nodiscard]] PlugHole plug_hole(double thickness);

/// Area of a plug weld in shear times 0.60 F_EXX.  [N]
/// Source: AISC 360-22 J2.3a and table J2.5, from memory.
[[nodiscard]] double plug_strength(double hole, double filler_tensile);

/// Shear of the worst of several rosettes, evenly around the tube in one ring: along it
/// N / n + 2 M / (n r), around it T / (n r) + 2 V / n (an even ring of pins; statics). They count
/// alone: a fillet beside them is checked as if it were alone too.
/// @return undecided for a hole outside `plug_hole`, or of over a third of the tube's diameter
///         (proposal)
/// Limits: shear alone, no pull off the insert; the tube between the holes is another check
/// (tube_net_section.hpp).
/// Source: AISC 360-22 J2.3, from memory.
[[nodiscard]] Finding rosettes(const RosetteInput& input);

}  // namespace checks
