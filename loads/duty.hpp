#pragma once

#include <string>
#include <vector>

#include "base/units.hpp"

/// How often loads come back, for estimates of life.
namespace loads {

/// How large the cycles of a block are.
enum class Spread {
  full,      ///< every cycle goes all the way between the two cases
  straight,  ///< a straight line of size over the logarithm of how often: mixed use
  bell,      ///< a bell curve (Gaussian): one rough road
};

/// Cycles between two load cases.
struct DutyBlock {
  std::string from;  ///< name of a load case, or "at rest"
  std::string to;
  double per_1000_km = base::kUnset;  ///< cycles  [-]
  Spread spread = Spread::full;
  bool operator==(const DutyBlock&) const = default;
};

/// The spectrum taken when a case gives none: straight lines of 1e6 cycles in 100 000 km between
/// opposite routine cases (left and right corner, stop and reverse stop, lock to lock); ten times
/// as many for mixed use off the road. Proposal, no source.
[[nodiscard]] std::vector<DutyBlock> default_duty(bool off_road);

/// Where the default comes from, in words.
[[nodiscard]] std::string default_duty_basis(bool off_road);

}  // namespace loads
