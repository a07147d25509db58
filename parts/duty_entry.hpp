#pragma once

#include <array>

#include "loads/duty.hpp"
#include "parts/field.hpp"

namespace parts {

/// A block of cycles as the case file gives it.
struct DutyEntry {
  loads::DutyBlock block;
  bool operator==(const DutyEntry&) const = default;
};

template <class Visitor>
void fields(Visitor& v, DutyEntry& entry) {
  using enum Presence;
  constexpr std::array<Word<loads::Spread>, 3> kSpreads = {
      Word<loads::Spread>{"all full", loads::Spread::full},
      Word<loads::Spread>{"straight line", loads::Spread::straight},
      Word<loads::Spread>{"bell curve", loads::Spread::bell}};
  v.text({"from", required, "a load case, or at rest"}, entry.block.from);
  v.text({"to", required, "a load case, or at rest"}, entry.block.to);
  v.quantity({"per_1000_km", required, "cycles in 1000 km"}, entry.block.per_1000_km,
             positive(Dimension::ratio));
  v.choice({"sizes", assumed, "how large the cycles are", "every cycle goes all the way"},
           entry.block.spread, kSpreads);
}

}  // namespace parts
