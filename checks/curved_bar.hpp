#pragma once

#include <optional>

#include "sections/shape.hpp"

namespace checks {

/// Below this a bend is taken as straight. The value is a proposal.
inline constexpr double kCurvedBarCounts = 1.03;

/// Bending stress at the inner fiber of a bend over M / S of the straight bar, M about the
/// centroid: Winkler's curved bar, rn = A / int(dA / r).
/// @param radius  of the center line  [m]
/// @return 1 or more; nothing outside the method: radius not over the depth, or a section whose
///         integral is not offered (twin plates, by numbers) with a radius under 13 depths
/// A rectangular section is taken as bent the way that raises the stress more.
/// Source: Shigley, Mechanical Engineering Design, 9th ed., eq. 3-63 to 3-65 and Table 3-4 (from
/// memory; 3-63 read); hollow sections by their difference.
[[nodiscard]] std::optional<double> curved_bar_factor(const sections::Shape& shape, double radius);

}  // namespace checks
