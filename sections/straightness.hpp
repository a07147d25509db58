#pragma once

#include <string_view>

#include "sections/material.hpp"

namespace sections {

/// How far off straight a bar or tube may be as it is delivered.
struct Straightness {
  double share = 0.001;    ///< bow over length  [-]
  std::string_view basis;  ///< the standard, and how it is known
};

/// By the standard that its sizes have; L/1000 where none is known here.
/// Source: ASTM A513 (0.030 in in 3 ft), A500 (1/8 in in 5 ft), A108 (1/8 in in 10 ft; 3/16 in over
/// 0.28 % carbon), A29 (1/4 in in 5 ft), EN 10305-1 (1.5 mm in 1 m, over 500 MPa 2 mm); all from
/// memory.
[[nodiscard]] Straightness straightness(const Material& steel);

}  // namespace sections
