#pragma once

#include <string>
#include <vector>

#include "parts/assembly.hpp"

namespace studies {

/// Every default and modeling choice behind an answer: what the reader filled in, what the model
/// takes for granted, and which strength was used where.
[[nodiscard]] std::vector<parts::Assumption> all_assumptions(const parts::Design& design,
                                                             const parts::Assembly& assembly);

/// Load cases and effects that an answer for this design leaves out, in words.
[[nodiscard]] std::vector<std::string> left_out(const parts::Design& design);

}  // namespace studies
