#pragma once

#include <vector>

#include "base/input_error.hpp"
#include "parts/design.hpp"

namespace cases {

/// Values of `frame:`, or of a part on it, that clash.
[[nodiscard]] std::vector<base::InputError> frame_clashes(const parts::Design& design);

}  // namespace cases
