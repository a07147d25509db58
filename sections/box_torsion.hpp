#pragma once

#include "sections/shape.hpp"

namespace sections {

struct BoxTorsion {
  double constant = base::kUnset;  ///< It  [m^4]
  double modulus = base::kUnset;   ///< Ct = torque / largest shear stress  [m^3]
};

/// Torsion of a hollow rectangle with rounded corners: Bredt's closed wall plus the wall's own
/// torsion. Ct is for the outside face, so it is smaller than Bredt's mean through the wall.
/// Source: EN 10219-2 annex B (from memory; read in a restatement by engineers).
[[nodiscard]] BoxTorsion box_torsion(const RectangularTube& tube);

}  // namespace sections
