#pragma once

#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "sections/area_props.hpp"
#include "sections/shape.hpp"

namespace checks {

/// A straight stretch of a member in bending.
struct BendingInput {
  sections::Shape shape;
  double elastic = base::kUnset;  ///< E  [Pa]
  double yield = base::kUnset;    ///< Fy  [Pa]
  double length = base::kUnset;   ///< between what holds it sideways and against twist, Lb  [m]
};

/// Largest moment about one principal axis.
struct NominalMoment {
  double value = base::kUnset;         ///< Mn; unset = outside the method  [N m]
  std::string reason = {};             ///< why it is outside
  std::vector<WorkedLine> lines = {};  ///< how Mn comes about
};

struct BendingStrength {
  NominalMoment y;  ///< about the principal y axis
  NominalMoment z;
};

/// Nominal moments about the principal axes, the moment taken as even all along (Cb = 1):
/// - round tubes, F8: plastic, or less for a thin wall; D/t under 0.45 E/Fy
/// - rectangular tubes, F7: plastic, or less for thin walls or long spans; webs up to
///   5.70 sqrt(E/Fy)
/// - round bars, flat bars and twin plates (each plate by itself), F11
/// - angles, F10.3: first yield at most, or less for thin legs; twisting sideways is left out
/// - boxed channels and other closed walls: first yield where no wall is slender
/// - sections given by their numbers: first yield
/// Outside the method: channels and open lines of walls.
/// Source: AISC 360-22 F7, F8, F10 and F11, from memory.
[[nodiscard]] BendingStrength bending_strength(const BendingInput& input);

}  // namespace checks
