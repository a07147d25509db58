#pragma once

#include "loads/vehicle.hpp"

namespace loads {

/// An axle that hangs and is caught by its limit straps, from energy.
struct StrapCatch {
  double weight = base::kUnset;  ///< of axle and wheels  [N]
  double rate = base::kUnset;    ///< of one strap  [N/m]
  double pushed = 0.0;           ///< by both coils as the straps come tight  [N]
  double speed = base::kUnset;   ///< of the axle as the straps come tight  [m/s]
  double shared = base::kUnset;  ///< two straps that share, together  [N]
  double alone = base::kUnset;   ///< one strap that takes all  [N]
};

/// @throws base::InputError with the key of the number that is missing
[[nodiscard]] StrapCatch caught_by_straps(const Vehicle& vehicle);

}  // namespace loads
