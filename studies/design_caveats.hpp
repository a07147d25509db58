#pragma once

#include <string>
#include <vector>

#include "parts/design.hpp"

namespace studies {

/// What a design as it is put together says to beware of, under whatever load: "brace: it ends 10.9
/// in below the bottom of a rail level with this one; ...".
/// @param than  another design: what it says too is left out
[[nodiscard]] std::vector<std::string> more_caveats(const parts::Design& design,
                                                    const parts::Design& than);

}  // namespace studies
