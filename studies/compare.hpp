#pragma once

#include "studies/answer.hpp"
#include "studies/spread.hpp"
#include "studies/watch.hpp"

namespace studies {

/// The base case and its variants (design.variants), side by side.
/// @throws base::InputError as check(), for the base case
[[nodiscard]] Comparison compare(const parts::Design& design, const Watch& watch = {},
                                 const Spread& spread = {});

}  // namespace studies
