#pragma once

#include "parts/design.hpp"

namespace cases {

/// Where nobody says how the bolts of a group are sheared: in two planes between two plates around
/// the bar, else in one, as parts that lie against each other are; it stays listed as assumed.
/// Source: common practice, no source; one plane is the weaker.
void assume_group_shear(parts::Design& design);

}  // namespace cases
