#pragma once

#include "studies/compare.hpp"
#include "studies/run.hpp"
#include "studies/spread.hpp"

namespace studies {

/// A design as drawn, and beside its variants.
struct WithVariants {
  Run base;
  Comparison comparison;
};

/// Runs a design and each of its variants.
/// @throws base::InputError, Stopped: of the design as drawn; a variant that cannot be run is a
///         failure in the comparison, one that was stopped is unfinished
[[nodiscard]] WithVariants run_with_variants(const parts::Design& design, const Watch& watch,
                                             const Spread& spread,
                                             Extras of_base = Extras::order_and_life,
                                             Share<Compared>* share = nullptr);

}  // namespace studies
