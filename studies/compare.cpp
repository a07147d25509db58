#include "studies/compare.hpp"

#include "base/input_error.hpp"
#include "cases/patch.hpp"
#include "studies/variants.hpp"

namespace studies {

WithVariants run_with_variants(const parts::Design& design, const Watch& watch,
                               const Spread& spread, Extras of_base) {
  WithVariants out;
  const std::size_t n = design.variants.size();
  std::vector<Figures> figures(n);
  std::vector<std::string> failures(n);
  std::vector<char> stopped(n, 0);
  const double share = 1.0 / static_cast<double>(1 + n);
  spread_out(spread, 1 + n, [&](std::size_t i) {
    const double from = static_cast<double>(i) * share;
    if (i == 0) {
      out.base = run(design, "as drawn", part_of(watch, from, from + share, ""), {}, of_base);
      return;
    }
    const parts::Variant& variant = design.variants[i - 1];
    try {
      const parts::Design changed = cases::apply(design, variant);
      const Watch seen = part_of(watch, from, from + share, variant.name);
      figures[i - 1] = run(changed, variant.name, seen).figures;
    } catch (const base::InputError& error) {
      failures[i - 1] = variant.name + ": " + error.what();
    } catch (const Stopped&) {
      stopped[i - 1] = 1;
    }
  });
  Comparison& comparison = out.comparison;
  comparison.title = design.title;
  comparison.inches = design.inches;
  comparison.base = out.base.figures;
  for (std::size_t i = 0; i < n; ++i) {
    if (stopped[i] != 0)
      comparison.unfinished.push_back(design.variants[i].name);
    else if (failures[i].empty())
      comparison.variants.push_back(std::move(figures[i]));
    else
      comparison.failures.push_back(std::move(failures[i]));
  }
  return out;
}

Comparison compare(const parts::Design& design, const Watch& watch, const Spread& spread) {
  return run_with_variants(design, watch, spread).comparison;
}

}  // namespace studies
