#pragma once

#include "base/units.hpp"
#include "sections/bolt.hpp"

namespace parts {

/// The thread of a rod end: "3/4-16, 1-1/8 in engaged, 1 in out, 60 ksi shank".
struct ThreadSpec {
  sections::BoltThread thread;    ///< without a name = not given
  double engaged = base::kUnset;  ///< full thread in its insert, at the longest adjustment  [m]
  double out = base::kUnset;      ///< joint's center to the jam nut, at the longest adjustment  [m]
  double yield = base::kUnset;    ///< of the shank  [Pa]

  [[nodiscard]] bool given() const { return !thread.name.empty(); }
  bool operator==(const ThreadSpec&) const = default;
};

}  // namespace parts
