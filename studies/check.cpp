#include "studies/check.hpp"

#include "studies/compare.hpp"
#include "studies/run.hpp"
#include "studies/variants.hpp"

namespace studies {

Answer check(const parts::Design& design, const Watch& watch) {
  const double share = 1.0 / static_cast<double>(1 + design.variants.size());
  Run base = run(design, "as drawn", part_of(watch, 0.0, share, ""));
  if (!design.variants.empty()) {
    base.answer.comparison = compare_with(design, base.figures, part_of(watch, share, 1.0, ""));
  }
  return std::move(base.answer);
}

}  // namespace studies
