#pragma once

#include <string>
#include <vector>

#include "parts/design.hpp"

namespace parts {

/// A bar or tube of a design, by the key that names it: "lateral_link.tube".
struct StickOf {
  std::string key;
  const Stick* stick;
};

/// All bars and tubes a design is made of, in the order of a case file.
[[nodiscard]] std::vector<StickOf> used_sticks(const Design& design);

}  // namespace parts
