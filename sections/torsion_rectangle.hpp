#pragma once

#include "base/units.hpp"

namespace sections {

/// St. Venant torsion of a solid rectangle with sharp corners.
/// `at` is a place on a side: 0 its middle, +1 and -1 its corners. Stresses are for a torque of
/// one and act along the side, within 0.1 % (0.4 % close to a corner).
/// Source: Timoshenko & Goodier, Theory of Elasticity, 3rd ed., art. 109 (from memory).
struct RectangleTorsion {
  double longer = base::kUnset;    ///< long side  [m]
  double shorter = base::kUnset;   ///< short side  [m]
  double constant = base::kUnset;  ///< J  [m^4]

  [[nodiscard]] double on_long_side(double at) const;   ///< shear stress / torque  [1/m^3]
  [[nodiscard]] double on_short_side(double at) const;  ///< shear stress / torque  [1/m^3]
};

/// @param side, other  the sides of the rectangle, in any order, > 0  [m]
[[nodiscard]] RectangleTorsion rectangle_torsion(double side, double other);

}  // namespace sections
