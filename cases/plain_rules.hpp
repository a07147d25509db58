#pragma once

#include <vector>

#include "base/input_error.hpp"
#include "parts/design.hpp"

namespace cases {

/// What members, springs, rigid sets and given loads must obey together, each with the key to
/// blame.
[[nodiscard]] std::vector<base::InputError> plain_clashes(const parts::Design& design);

}  // namespace cases
