#pragma once

#include "checks/finding.hpp"

namespace checks {

/// A limit strap that catches an axle alone.
struct StrapInput {
  double weight = base::kUnset;         ///< of axle and wheels  [N]
  double pushed = 0.0;                  ///< by both coils as it comes tight  [N]
  double rate = base::kUnset;           ///< of the strap  [N/m]
  double energy = base::kUnset;         ///< m v^2 of axle and wheels as it comes tight  [N m]
  double force = base::kUnset;          ///< that it leads to  [N]
  double breaking_load = base::kUnset;  ///< rated  [N]
  double required = base::kUnset;
};

/// Part of the rated breaking load that a rare catch may use: proposal, no source.
inline constexpr double kOfBreakingLoad = 0.6;

/// Force in the strap against 0.6 of its rated breaking load. A rating that is missing leaves it
/// undecided.
[[nodiscard]] Finding strap(const StrapInput& input);

/// A limit strap that is tight while the axle rests on it.
struct TightStrapInput {
  double force = base::kUnset;          ///< in the strap  [N]
  double rate = base::kUnset;           ///< [N/m]
  double slack = base::kUnset;          ///< drop of the axle until it is tight  [m]
  double breaking_load = base::kUnset;  ///< rated  [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< multiple of the load at which it just holds
};

/// The same capacity against the force it has in the frame, in equilibrium.
[[nodiscard]] Finding tight_strap(const TightStrapInput& input);

}  // namespace checks
