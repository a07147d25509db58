#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// What the check of tabs where they are welded needs.
struct TabRootInput {
  int plates = 2;
  double thickness = base::kUnset;  ///< of one  [m]
  double width = base::kUnset;      ///< at the root  [m]
  double height = base::kUnset;     ///< bolt's center to the root  [m]
  double off = 0.0;                 ///< of the force from the middle of a single tab  [m]
  double force = 0.0;               ///< at the bolt, in the tabs' plane, on all of them  [N]
  double side = 0.0;                ///< at the bolt, across them  [N]
  double yield = base::kUnset;      ///< beside the weld  [Pa]
  std::string strength_basis = {};
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / stress
};

/// First yield of tabs at their root. The force's direction is not asked: bent as if all of it
/// acted along the root and pulled as if all of it acted off it, the two as legs of a right angle;
/// across, each tab bends alone. Statics, no source.
[[nodiscard]] Finding tab_root(const TabRootInput& input);

}  // namespace checks
