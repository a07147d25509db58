#pragma once

#include "studies/spread.hpp"

namespace app {

/// Spreads pieces of work over threads.
/// @param jobs  how many at once; 0 = as many as the machine has processors
[[nodiscard]] studies::Spread threads(int jobs);

}  // namespace app
