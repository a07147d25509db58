#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// What the check of plates at a bolt needs.
struct BoltHoleInput {
  double force = 0.0;               ///< in the plane of the plates, on all of them  [N]
  double bolt = base::kUnset;       ///< diameter  [m]
  double hole = base::kUnset;       ///< diameter  [m]
  double edge = base::kUnset;       ///< bolt's center to the nearest edge, over half the hole  [m]
  double thickness = base::kUnset;  ///< of one plate  [m]
  int plates = 2;
  double tensile = base::kUnset;    ///< Fu of the plates  [Pa]
  std::string strength_basis = {};  ///< where `tensile` comes from
  std::string unknown_force = {};   ///< why the force cannot be told; empty = it is known
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / force
};

/// Bearing of a bolt on plates (2.4 d t Fu each) and its tearing out at the nearest edge
/// (1.2 lc t Fu each, lc the clear distance), whichever is less.
/// A center nearer to the edge than 1.2 holes (EN 1993-1-8 table 3.3, from memory) is warned of.
/// @return undecided when the force cannot be told
/// Limits: one bolt; plates share alike; the hole may grow by 6 mm at most, as the code wants it.
/// Source: AISC 360-22 J3.11, from memory.
[[nodiscard]] Finding bolt_hole(const BoltHoleInput& input);

}  // namespace checks
