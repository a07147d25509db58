#pragma once

#include <vector>

#include "base/input_error.hpp"
#include "parts/design.hpp"

namespace cases {

/// Parts that lack another part they need. Holds for a design of which some fields did not read.
/// @return problems, each with the key it is about
[[nodiscard]] std::vector<base::InputError> missing_parts(const parts::Design& design);

/// Values that do not go together within a part or between two: what no single field can tell.
/// Unset numbers break no rule here.
[[nodiscard]] std::vector<base::InputError> clashing_values(const parts::Design& design);

/// Both, for a design that was read or changed as a whole.
[[nodiscard]] std::vector<base::InputError> broken_rules(const parts::Design& design);

}  // namespace cases
