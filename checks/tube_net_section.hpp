#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// A round tube with holes through its wall, evenly around in one ring.
struct TubeNetSectionInput {
  double outside = base::kUnset;  ///< diameter  [m]
  double wall = base::kUnset;     ///< [m]
  int holes = 0;
  double hole = base::kUnset;     ///< diameter  [m]
  double tensile = base::kUnset;  ///< beside the welds that fill them  [Pa]
  std::string strength_basis = {};
  double axial = 0.0;    ///< pull or push  [N]
  double bending = 0.0;  ///< [N m]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / stress
};

/// What the holes leave of the tube, on its ultimate strength: Fu on the net section. Weld metal in
/// a hole counts as none, each hole as 1/16 in wider. Two holes lie where bending is largest, three
/// or more are an even ring (statics).
/// @return undecided when nothing is left between them
/// Source: AISC 360-22 D2(b), D3 and B4.3b, from memory; elastic bending of what is left: F13 asks
/// less (proposal, errs to less strength).
[[nodiscard]] Finding tube_net_section(const TubeNetSectionInput& input);

}  // namespace checks
