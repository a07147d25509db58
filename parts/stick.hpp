#pragma once

#include <string>

#include "sections/material.hpp"
#include "sections/shape.hpp"

namespace parts {

/// A bar or tube as it is bought: "1-1/2 x 0.250 in DOM", "1-1/2 in solid bar",
/// "40 x 40 x 3 mm S355H", or the name of a section of the case file.
struct Stick {
  sections::Shape shape;
  sections::Material material;
  bool operator==(const Stick&) const = default;
};

/// A steel by its name: "A36", "S355".
struct Steel {
  sections::Material material;
  bool operator==(const Steel&) const = default;
};

/// Plates of a bracket: "2 of 5/16 in mild steel", or one folded to a channel, whose flanges stand
/// as two plates do: "folded from 1/4 in mild steel, 3/8 in inside radius".
struct Plates {
  int count = 2;                    ///< 1 or 2
  double thickness = base::kUnset;  ///< of one  [m]
  double fold_radius = 0.0;         ///< inside; 0 = flat plates  [m]
  sections::Material material;
  [[nodiscard]] bool folded() const { return fold_radius > 0.0; }
  bool operator==(const Plates&) const = default;
};

/// "1/4 in fillet, both sides of each plate", "4 mm groove, one side of each plate", "1/4 in
/// fillet, both sides, directional strength".
struct FilletWeld {
  double leg = base::kUnset;  ///< unset for a groove  [m]
  bool both_sides = true;     ///< of each plate; otherwise one
  double groove =
      base::kUnset;          ///< its effective throat, into the plate's edge; unset = fillet [m]
  bool directional = false;  ///< a fillet's strength by the direction of its load
  [[nodiscard]] bool given() const { return leg > 0.0 || groove > 0.0; }
  bool operator==(const FilletWeld&) const = default;
};

}  // namespace parts
