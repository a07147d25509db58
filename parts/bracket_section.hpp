#pragma once

#include "parts/bracket.hpp"
#include "sections/shape.hpp"

namespace parts {

/// Depth of the plates across the truck.  [m]
/// @param up  from the bolt  [m]
[[nodiscard]] double plate_depth(const Bracket& bracket, double up);

/// Level cut through the plates: z to the left of the truck, y forward, from the middle between the
/// plates and of their depth. Two plates that nothing ties between their ends are a TwinPlate; a
/// folded channel, its back on the outer side, and plates tied by a back or face plate are lines of
/// thin walls, folds as six chords each.
/// @param inward_y  toward the other rail: -1 or +1
[[nodiscard]] sections::Shape bracket_section(const Bracket& bracket, double up, double inward_y);

}  // namespace parts
