#pragma once

#include <vector>

#include "studies/answer.hpp"
#include "studies/cell.hpp"

namespace studies {

/// Real bars and tubes are stronger than their certificate: their yield strength is taken as this
/// many times its minimum. The idea of capacity design; 1.25 is gamma_ov of EN 1998-1 6.2(3), from
/// memory.
inline constexpr double kOverstrength = 1.25;

[[nodiscard]] parts::Assembly with_overstrength(const parts::Assembly& nominal);

/// What gives in one load case, first to last: bars and tubes with kOverstrength, all else at its
/// nominal capacity. From the load itself and a second multiple of it the limits are interpolated,
/// as a beam-column's: good to a few percent near these two; beyond them a demand grows as the
/// square of the load at most. It ends where the frame itself gives way.
/// @param strong    the cell's assembly, with_overstrength
/// @param critical  critical factors of the cell, ascending; those of a tipping axle too
/// @param second    1 = in proportion to the load itself
[[nodiscard]] FailureOrder failure_order(const Cell& cell, const parts::Assembly& strong,
                                         const std::vector<CriticalFactor>& critical,
                                         double second = 1.0);

/// Of the orders of one load case in its stiffness sets: where something breaks earliest beside the
/// tubes tells most; where nothing does, where something gives earliest.
[[nodiscard]] bool tells_less(const FailureOrder& a, const FailureOrder& b);

/// Where to look a second time: where the first thing gives, not too far off.
[[nodiscard]] double second_multiple(const FailureOrder& order);

}  // namespace studies
