#pragma once

#include <string>
#include <vector>

#include "base/units.hpp"

namespace parts {
struct Design;
}

namespace studies {

struct Answer;

/// Something that a solved axle goes past, though it would stop it or break there.
struct BeyondTravel {
  enum class Kind {
    drop,        ///< [m] from ride height, of the corner that goes farthest
    rise,        ///< likewise, up
    wheel_lifts  ///< [N m] about x: the ground rolls the axle, and has no more than its weight
  };
  Kind kind = Kind::drop;
  std::string what;               ///< "damper at full length"
  double ends = base::kUnset;     ///< where that is reached
  double reached = base::kUnset;  ///< how far the axle goes, or is rolled
  std::string load_case;          ///< in which it goes farthest
};

/// What the axle's solved places go past: of what ends its drop the nearest, of what ends its rise
/// the nearest (a stop met is made for it; one fully crushed, or a coil's turns that touch, is
/// not), and the roll at which a wheel would leave the ground.
/// @param answer  with its solved cases, drop and rise
[[nodiscard]] std::vector<BeyondTravel> beyond_travel(const parts::Design& design,
                                                      const Answer& answer);

}  // namespace studies
