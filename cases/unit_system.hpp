#pragma once

#include "cases/document.hpp"

namespace cases {

/// Whether a case file speaks inches more often than millimeters or meters.
[[nodiscard]] bool uses_inches(const Value& root);

}  // namespace cases
