#pragma once

#include <vector>

#include "base/input_error.hpp"
#include "parts/design.hpp"

namespace cases {

/// Sizes and weights that no truck's front suspension has: a slip in a unit, a digit or a comma
/// would otherwise give an answer that looks right. The bounds are wide on purpose (common
/// practice, no source).
/// @return one problem a value, with its key; nothing for a frame of plain members
[[nodiscard]] std::vector<base::InputError> unbelievable_values(const parts::Design& design);

}  // namespace cases
