#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "sections/shape.hpp"

namespace checks {

/// What a tube carries in torsion and in shear.
struct TubeTorsion {
  double torsion = base::kUnset;  ///< Tn; unset = outside the method  [N m]
  double shear_y = base::kUnset;  ///< Vn along y  [N]
  double shear_z = base::kUnset;  ///< Vn along z  [N]
  std::string reason = {};        ///< why `torsion` is outside the method
  std::vector<WorkedLine> lines = {};
};

/// Nominal torque Tn = Fcr C and shear of a round or rectangular tube.
/// @param length  of the member; taken as the distance from most to no shear too  [m]
/// @return nothing for a section that is no tube
/// Limits: h/t of a rectangular tube up to 260. C of a round tube is J / (D/2), as the manual lists
/// it; that of the user note, pi (D - t)^2 t / 2, is up to a tenth more in a thick one.
/// Source: AISC 360-22 H3.1, G4 and G5, from memory.
[[nodiscard]] std::optional<TubeTorsion> tube_torsion(const sections::Shape& shape, double elastic,
                                                      double yield, double length);

}  // namespace checks
