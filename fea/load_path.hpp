#pragma once

#include "fea/moved_frame.hpp"
#include "fea/solver.hpp"

namespace fea {

/// Follows equilibria past limits of the load: one unknown is driven, the load factor found.
struct Drive {
  NodeId node;
  int freedom = 0;             ///< 0 to 2: displacement along x, y, z  [m]
  std::vector<double> values;  ///< where the path is wanted, in the order passed
};

struct PathPoint {
  double value = base::kUnset;   ///< of the driven displacement  [m]
  double factor = base::kUnset;  ///< multiple of the loads  [-]
  bool stable = false;           ///< under the load held
  MovedState state;
};

/// The points reached; fewer than asked for when the path turns back on the driven displacement.
/// Gaps open and close as they are met.
[[nodiscard]] std::vector<PathPoint> follow(const Factored& factored, const Loads& loads,
                                            const Drive& drive);

}  // namespace fea
