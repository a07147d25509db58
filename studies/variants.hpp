#pragma once

#include "studies/answer.hpp"
#include "studies/watch.hpp"

namespace studies {

/// Runs every variant of a design whose base case is known already.
[[nodiscard]] Comparison compare_with(const parts::Design& design, const Figures& base,
                                      const Watch& watch);

}  // namespace studies
