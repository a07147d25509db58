#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// One tab on the side of a round tube, and the worst that it brings.
struct TabWallInput {
  double outside = base::kUnset;  ///< of the tube, diameter  [m]
  double wall = base::kUnset;     ///< of the tube  [m]
  double yield = base::kUnset;    ///< of the tube, beside the weld  [Pa]
  double tensile = base::kUnset;  ///< [Pa]
  std::string strength_basis = {};
  bool across = false;           ///< the tab stands across the tube, not along it
  double width = base::kUnset;   ///< of the tab at the wall  [m]
  double height = base::kUnset;  ///< bolt's center to the wall  [m]
  double force = 0.0;            ///< at the bolt in the tab's plane, any direction, of one tab  [N]
  double pull = 0.0;             ///< off the wall, of one tab of a pair that a side force turns;
                                 ///< unset = nothing is known to hold that force  [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / ratio
};

/// Nominal strengths of a round tube's wall under one plate.
struct TabWallStrength {
  double pull = base::kUnset;    ///< Rn, off the wall  [N]
  double moment = base::kUnset;  ///< Mn, in the plate's plane  [N m]
  double edge = base::kUnset;    ///< punching: along the weld's end  [N/m]
};

/// The tube's own stress is taken as 0.4 of its yield strength, pressed (proposal): Qf = 0.832.
/// Source: AISC 360-10 table K1.1 (K1-1 to K1-4), punching EN 1993-1-8 table 7.3, from memory.
[[nodiscard]] TabWallStrength tab_wall_strength(const TabWallInput& input);

/// The wall of a tube under a tab's weld: pull off it and moment, their direction the worst, added
/// in parts; or punched at the end of the weld, whichever is more.
/// @return undecided outside the range, and with a force across a single tab, for which there is no
///         method
/// Limits: 10 <= D/t <= 50; across: 0.2 < w/D <= 1, along: w/D <= 4; Fy up to 360 MPa and 0.8 Fu.
/// Source: as tab_wall_strength; the two parts added: EN 1993-1-8 7.4.2(1), from memory.
[[nodiscard]] Finding tab_wall(const TabWallInput& input);

}  // namespace checks
