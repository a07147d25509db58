#pragma once

#include <array>
#include <string>
#include <vector>

#include "cases/document.hpp"
#include "cases/quantity.hpp"
#include "parts/field.hpp"

namespace cases {

/// Quantities of one kind, of which a unit serves the bare numbers before it.
/// @throws base::InputError without a key
[[nodiscard]] std::vector<Measured> read_with_shared_unit(const std::vector<std::string>& texts,
                                                          parts::Dimension dimension);

/// Three quantities of one kind.
struct ThreeNumbers {
  std::array<double, 3> si = {};  ///< x y z
  std::string weight_unit = {};   ///< "lb", "kg" when a mass was taken as the force of its weight
};

/// `[0, 17, 22 in]`: the last unit serves the numbers before it.
/// @param wanted  what to say when it is no such list: "a point is [x, y, z], e.g. ..."
/// @throws base::InputError without a key
[[nodiscard]] ThreeNumbers read_three(const Value& list, parts::Dimension dimension,
                                      const std::string& wanted);

}  // namespace cases
