#pragma once

#include <optional>
#include <string>

#include "checks/finding.hpp"
#include "sections/shape.hpp"

namespace checks {

/// What the column check of a straight member needs.
struct ColumnInput {
  sections::Shape shape;
  double elastic = base::kUnset;      ///< E  [Pa]
  double yield = base::kUnset;        ///< Fy  [Pa]
  std::string strength_basis;         ///< where `yield` comes from
  double length = base::kUnset;       ///< joint to joint  [m]
  double k = 1.0;                     ///< effective length factor  [-]
  double compression = base::kUnset;  ///< largest in the member; 0 or less = none  [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / compression
};

/// Buckling of a straight member as a column about its weaker axis: nominal Pn = Fn Ae, with
/// Euler's and Johnson's loads and the load of first yield with a bow of L/1000 beside it.
/// @return nothing when the member is not compressed; undecided when its wall is too thin for the
///         method
/// An open section may buckle by bending and twisting together (E4), its warping left out.
/// Limits: straight members without side load; bent members need the stress along the true shape.
/// Source: AISC 360-22 E3, E4 and E7, from memory.
[[nodiscard]] std::optional<Finding> column(const ColumnInput& input);

}  // namespace checks
