#pragma once

#include <vector>

#include "checks/weld_group.hpp"

namespace checks {

/// The fillet around a round bar or tube whose end is cut to fit a round part that it stands square
/// on (a fishmouth), as chords. The axis of the bar is x, that of the part it stands on is z; the
/// origin is where the bar would end on a flat tangent to that part.
/// Each chord has the throat leg x cos(psi / 2) of the angle psi between the two surfaces there,
/// and counts only where psi is up to 135 degrees: beside a part hardly thicker than the bar the
/// sides are no fillet. Lines are given a leg that has that throat. Source: throat AISC and AWS
/// D1.1, skewed fillets, limits from memory; outline geometry.
/// @param radius  of the bar or tube outside  [m]
/// @param around  radius of the part it stands on, at least `radius`  [m]
[[nodiscard]] std::vector<WeldLine> saddle_weld(double radius, double around, double leg);

/// Length of the whole outline of that cut, fillet or not.  [m]
[[nodiscard]] double saddle_length(double radius, double around);

/// Factor on the throat stress of a round bar's weld on a round part, which the part's wall loads
/// unevenly: 1.5, unless the throat is at least 1.1 of the wall, which then gives first.
/// Source: AWS D1.1:2015 9.6.1.3(4), read in a paper on hollow sections that cites it; 1.1:
/// proposal.
/// @param wall  of the tube, or the radius of a bar  [m]
[[nodiscard]] double uneven_saddle(double leg, double wall);

}  // namespace checks
