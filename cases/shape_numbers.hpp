#pragma once

#include "parts/section_fields.hpp"

namespace cases {

/// The same kind of shape with the same numbers; unset numbers equal each other.
[[nodiscard]] bool same_shape(const sections::Shape& a, const sections::Shape& b);

}  // namespace cases
