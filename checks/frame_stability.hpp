#pragma once

#include <optional>
#include <string>

#include "checks/finding.hpp"

namespace checks {

/// How the search for the critical load factor of a frame ended.
enum class StabilityOutcome {
  found,
  no_compression,  ///< nothing in the load case can buckle
  failed,          ///< no factor that could be proved to be the lowest
};

/// What the stability check of a whole frame needs.
struct FrameStabilityInput {
  StabilityOutcome outcome = StabilityOutcome::failed;
  double critical_factor = base::kUnset;  ///< lowest multiple of the load at which it buckles  [-]
  /// Multiple at which the frame gives way in second order; unset = no earlier, as far as it was
  /// followed.  [-]
  double second_order_factor = base::kUnset;
  std::string part_that_goes;   ///< the part with most of the mode's strain energy
  double share = base::kUnset;  ///< that part's share of the strain energy, 0..1  [-]
  std::string problem;          ///< why it failed
  double required = base::kUnset;
};

/// Elastic stability of the frame under one load case: the lower of the critical factor, forces in
/// proportion to the load, and of where second order (equilibrium in the deformed position) finds
/// no stable answer.
/// @return nothing when nothing is compressed; undecided when the search failed
/// Limits: elastic buckling of the ideal frame; yield and bows are other checks.
[[nodiscard]] std::optional<Finding> frame_stability(const FrameStabilityInput& input);

}  // namespace checks
