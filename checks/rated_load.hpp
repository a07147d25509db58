#pragma once

#include "checks/finding.hpp"

namespace checks {

/// What the check of a bought part by its rated load needs.
struct RatedLoadInput {
  double preload = 0.0;          ///< it has at ride height  [N]
  double rate = base::kUnset;    ///< [N/m]
  double travel = 0.0;           ///< pressed since ride height or since it is met  [m]
  double force = base::kUnset;   ///< preload + rate x travel  [N]
  double rating = base::kUnset;  ///< load that its maker lets it carry  [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = rating / force
};

/// Force on a coil seat or bump stop against the load that its maker lets it carry. A rating is
/// never assumed. Statics; the rating is the maker's, no source.
[[nodiscard]] Finding rated_load(const RatedLoadInput& input);

}  // namespace checks
