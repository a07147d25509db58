#include "studies/check.hpp"

#include "studies/variants.hpp"

namespace studies {

namespace {

Answer checked(const parts::Design& design, const Watch& watch, const Spread& spread,
               Extras extras) {
  WithVariants all = run_with_variants(design, watch, spread, extras);
  if (!all.comparison.unfinished.empty()) throw Stopped{};
  if (!design.variants.empty()) all.base.answer.comparison = std::move(all.comparison);
  return std::move(all.base.answer);
}

}  // namespace

Answer check(const parts::Design& design, const Watch& watch, const Spread& spread) {
  return checked(design, watch, spread, Extras::order_and_life);
}

Answer check_briefly(const parts::Design& design, const Watch& watch, const Spread& spread) {
  // What is compared with variants are figures.
  const bool alone = design.variants.empty();
  return checked(design, watch, spread, alone ? Extras::short_answer : Extras::order_and_life);
}

Answer check_and_draw(const parts::Design& design, const Watch& watch, const Spread& spread) {
  return checked(design, watch, spread, Extras::order_life_and_drawing);
}

}  // namespace studies
