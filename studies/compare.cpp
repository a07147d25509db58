#include "studies/compare.hpp"

#include "base/input_error.hpp"
#include "cases/patch.hpp"
#include "studies/run.hpp"
#include "studies/variants.hpp"

namespace studies {

Comparison compare_with(const parts::Design& design, const Figures& base, const Watch& watch) {
  Comparison out;
  out.title = design.title;
  out.inches = design.inches;
  out.base = base;
  const double n = static_cast<double>(design.variants.size());
  for (std::size_t i = 0; i < design.variants.size(); ++i) {
    const parts::Variant& variant = design.variants[i];
    const double from = static_cast<double>(i) / n;
    try {
      const parts::Design changed = cases::apply(design, variant);
      out.variants.push_back(
          run(changed, variant.name, part_of(watch, from, from + 1.0 / n, variant.name)).figures);
    } catch (const base::InputError& error) {
      out.failures.push_back(variant.name + ": " + error.what());
    }
  }
  return out;
}

Comparison compare(const parts::Design& design, const Watch& watch) {
  const double share = 1.0 / static_cast<double>(1 + design.variants.size());
  const Figures base = run(design, "as drawn", part_of(watch, 0.0, share, "")).figures;
  return compare_with(design, base, part_of(watch, share, 1.0, ""));
}

}  // namespace studies
