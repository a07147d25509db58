#include "studies/compare.hpp"

#include <optional>
#include <utility>
#include <vector>

#include "base/input_error.hpp"
#include "cases/patch.hpp"
#include "studies/design_caveats.hpp"
#include "studies/variants.hpp"

namespace studies {

WithVariants run_with_variants(const parts::Design& design, const Watch& watch,
                               const Spread& spread, Extras of_base, Share<Compared>* share) {
  WithVariants out;
  const std::size_t n = design.variants.size();
  std::vector<std::optional<Compared>> all(1 + n);
  const double part = 1.0 / static_cast<double>(1 + n);
  spread_out(spread, 1 + n, [&](std::size_t i) {
    if (const Compared* known = share == nullptr ? nullptr : share->find(i)) {
      all[i] = *known;
      return;
    }
    if (share != nullptr && !share->is_mine(i)) return;
    const double from = static_cast<double>(i) * part;
    if (i == 0) {
      out.base = run(design, "as drawn", part_of(watch, from, from + part, ""), {}, of_base);
      all[i] = Compared{.figures = out.base.figures};
      return;
    }
    const parts::Variant& variant = design.variants[i - 1];
    try {
      const parts::Design changed = cases::apply(design, variant);
      const Watch seen = part_of(watch, from, from + part, variant.name);
      all[i] = Compared{.figures = run(changed, variant.name, seen).figures};
      all[i]->figures.beware = more_caveats(changed, design);
    } catch (const base::InputError& error) {
      all[i] = Compared{.failure = variant.name + ": " + error.what()};
    } catch (const Stopped&) {
    }
  });
  Comparison& comparison = out.comparison;
  comparison.title = design.title;
  comparison.inches = design.inches;
  comparison.scope = scope_of(design);
  if (all.front()) comparison.base = all.front()->figures;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (share != nullptr && all[i]) share->known.emplace(i, *all[i]);
    if (i == 0) continue;
    if (!all[i])
      comparison.unfinished.push_back(design.variants[i - 1].name);
    else if (all[i]->failure.empty())
      comparison.variants.push_back(std::move(all[i]->figures));
    else
      comparison.failures.push_back(std::move(all[i]->failure));
  }
  return out;
}

Comparison compare(const parts::Design& design, const Watch& watch, const Spread& spread,
                   Share<Compared>* share) {
  return run_with_variants(design, watch, spread, Extras::figures, share).comparison;
}

}  // namespace studies
