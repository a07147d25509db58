#pragma once

#include "parts/stick.hpp"

namespace parts {

/// Tabs welded to something, that a bolt goes through: "2 of 1/4 in mild steel, edge 1 in, height
/// 2 in, 1/4 in fillet both sides", "..., gap 2 in, on 3 x 0.25 in DOM, along the tube".
struct TabSpec {
  Plates plates;                 ///< without a steel = not given
  double edge = base::kUnset;    ///< bolt's center to the nearest edge  [m]
  double height = base::kUnset;  ///< bolt's center to the weld  [m]
  double width = base::kUnset;   ///< at the weld; unset = twice the edge  [m]
  double off = base::kUnset;     ///< of the force from the middle of a single tab  [m]
  FilletWeld weld;               ///< without a leg = not given
  double gap = base::kUnset;     ///< clear between two tabs, which hold a side force together  [m]
  Stick on;                      ///< the round tube they stand on; without a steel = not given
  bool across = false;           ///< they stand across that tube, not along it
  double side_force = 0.05;      ///< share of the bolt's force across the tabs  [-]

  [[nodiscard]] bool on_tube() const { return !on.material.id.empty(); }
  [[nodiscard]] bool given() const { return !plates.material.id.empty(); }
  [[nodiscard]] double root_width() const { return width > 0.0 ? width : 2.0 * edge; }
  bool operator==(const TabSpec&) const = default;
};

}  // namespace parts
