#pragma once

#include "sections/area_props.hpp"
#include "sections/material.hpp"

namespace parts {

/// How many beams a straight, prismatic bar is modeled as. A beam's own second order is that of a
/// cubic deflection: between pins two of them buckle at a load too high by 0.75 %, and by about the
/// fourth power of k l of that in general, with k = sqrt(P / E I) and l the beam's length. So many
/// that k l stays under 1.3 up to the bar's squash load; four buckle within 0.3 % of the right load
/// where an end may turn, eight however the ends are held. More than one have a node in the middle,
/// where a load may stand.
/// @param length  of the bar  [m]
/// @param held  neither of its ends turns in a joint
/// @return 1, 2, 4 or 8; 4 or 8 where the steel's yield strength is not known
[[nodiscard]] int beams_of_straight(const sections::AreaProps& section,
                                    const sections::Material& steel, double length, bool held);

}  // namespace parts
