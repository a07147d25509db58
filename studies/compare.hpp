#pragma once

#include <string>

#include "studies/answer.hpp"
#include "studies/share.hpp"
#include "studies/spread.hpp"
#include "studies/watch.hpp"

namespace studies {

/// What comes out of one design of a comparison.
struct Compared {
  Figures figures = {};
  std::string failure = {};  ///< why it could not be run; empty = it was
};

/// The base case and its variants (design.variants), side by side.
/// When `watch` stops it, the variants that are not done are named.
/// @throws base::InputError as check(), for the base case; Stopped when not even that is done
/// @param share  of its pieces the first is the base case, then come the variants
[[nodiscard]] Comparison compare(const parts::Design& design, const Watch& watch = {},
                                 const Spread& spread = {}, Share<Compared>* share = nullptr);

}  // namespace studies
