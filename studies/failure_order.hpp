#pragma once

#include <vector>

#include "studies/answer.hpp"
#include "studies/cell.hpp"

namespace studies {

/// Real bars and tubes are stronger than their certificate: their yield strength is taken as this
/// many times its minimum. The idea of capacity design; 1.25 is gamma_ov of EN 1998-1 6.2(3), from
/// memory.
inline constexpr double kOverstrength = 1.25;

/// What gives in one solved load case, first to last: bars and tubes with kOverstrength, all else
/// at its nominal capacity. Between the multiples solved so far the limits are interpolated, as a
/// beam-column's: good to a few percent. It ends where the frame itself gives way.
/// @param critical  critical factors of the cell, ascending; those of a tipping axle too
[[nodiscard]] FailureOrder failure_order(const Cell& cell,
                                         const std::vector<CriticalFactor>& critical);

/// Of the orders of one load case in all its stiffness sets, the one that tells most: where
/// something breaks earliest beside the tubes; where nothing does, where something gives earliest.
[[nodiscard]] const FailureOrder& most_telling(const std::vector<FailureOrder>& of_one_case);

}  // namespace studies
