#pragma once

#include <functional>
#include <string>

namespace studies {

/// Where a long run is.
struct Progress {
  double fraction = 0.0;  ///< done, 0 to 1
  std::string what;       ///< "load case 3 of 12, soft rail"
};

enum class Go { on, stop };

/// Called now and then by a long run; an empty one means: never stop. A run that is stopped throws
/// Stopped.
using Watch = std::function<Go(const Progress&)>;

struct Stopped {};

}  // namespace studies
