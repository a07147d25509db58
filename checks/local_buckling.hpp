#pragma once

#include <string>

#include "checks/finding.hpp"
#include "sections/shape.hpp"
#include "sections/stress.hpp"

namespace checks {

/// What the check of a thin-walled section needs.
struct LocalBucklingInput {
  sections::Shape shape;
  double elastic = base::kUnset;    ///< E  [Pa]
  double yield = base::kUnset;      ///< Fy at this place  [Pa]
  std::string strength_basis = {};  ///< where `yield` comes from
  double length = base::kUnset;     ///< of the member  [m]
  sections::Resultants resultants;  ///< at the load itself
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / demand
};

/// A section some wall of which may buckle before it yields: compression over Fy Ae and moments
/// over their nominal Mn add up to 1 at most. Tension takes nothing off.
/// @return undecided when the section is too thin for the methods and its stress counts
/// Limits: buckling of walls at one section; the member as a whole is the column's matter.
/// Source: AISC 360-22 E7 and F7, F8 or F10.3, from memory; added up in a straight line (proposal).
[[nodiscard]] Finding local_buckling(const LocalBucklingInput& input);

}  // namespace checks
