#pragma once

#include <vector>

#include "base/input_error.hpp"
#include "parts/design.hpp"

namespace cases {

/// Points of an axle's parts that cannot be where they are said to be: under the ground, outside of
/// the wheels, on the wrong side of the truck.
[[nodiscard]] std::vector<base::InputError> misplaced_points(const parts::Design& design);

}  // namespace cases
