#pragma once

#include <array>
#include <vector>

#include "sections/shape.hpp"

namespace report {

/// A convex polygon in a section's y and z, turning from y toward z.  [m]
using Outline = std::vector<std::array<double, 2>>;

/// What is drawn of a section: its outside, to scale, about its centroid; a round one as a polygon,
/// one known by its numbers alone as a round bar of its area.
[[nodiscard]] std::vector<Outline> outlines(const sections::Shape& shape);

}  // namespace report
