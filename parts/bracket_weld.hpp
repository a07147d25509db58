#pragma once

#include "checks/weld_group.hpp"
#include "fea/vectors.hpp"
#include "parts/design.hpp"

namespace parts {

/// Where a bracket stands: its rail's bottom face over the bolt.
struct BracketPlace {
  fea::Vector3 rail_bottom_g;  ///< rail's center line, bottom face  [m]
  double inward_y = -1.0;      ///< direction from this rail to the other along y: -1 or +1
};

/// The lines of the root weld: on each plate, one or both sides, along the faces of the rail that
/// the plates are welded to. On the bottom the line is as long as the plate is deep, but not longer
/// than the rail is wide; on a side it runs `up_the_side` from the bottom corner.
[[nodiscard]] checks::WeldGroup root_weld(const Bracket& bracket, const BracketPlace& place);

/// Length of the weld up a rail side: as given, else half of the rail's height.  [m]
[[nodiscard]] double weld_up_the_side(const Bracket& bracket);

/// Depth of the plates at the bolt: as given, else half of the depth at the rail.  [m]
[[nodiscard]] double depth_at_bolt(const Bracket& bracket);

/// From the bolt's center to the nearest edge of a plate: as given, else half of the depth there.
/// [m]
[[nodiscard]] double edge_distance(const Bracket& bracket);

/// Strength of the filler: as the bracket's weld says, else of E70.  [Pa]
[[nodiscard]] double filler_of(const Design& design);

}  // namespace parts
