#include "studies/check.hpp"

#include "studies/variants.hpp"

namespace studies {

Answer check(const parts::Design& design, const Watch& watch, const Spread& spread) {
  WithVariants all = run_with_variants(design, watch, spread);
  if (!design.variants.empty()) all.base.answer.comparison = std::move(all.comparison);
  return std::move(all.base.answer);
}

}  // namespace studies
