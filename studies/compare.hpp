#pragma once

#include "studies/answer.hpp"
#include "studies/spread.hpp"
#include "studies/watch.hpp"

namespace studies {

/// The base case and its variants (design.variants), side by side.
/// When `watch` stops it, the variants that are not done are named.
/// @throws base::InputError as check(), for the base case; Stopped when not even that is done
[[nodiscard]] Comparison compare(const parts::Design& design, const Watch& watch = {},
                                 const Spread& spread = {});

}  // namespace studies
