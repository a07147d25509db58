#pragma once

#include <optional>
#include <string>

#include "checks/finding.hpp"
#include "sections/shape.hpp"

namespace checks {

/// The welds of a column whose steel they weaken.
struct ColumnWelds {
  double yield = base::kUnset;     ///< Fy beside a weld  [Pa]
  double farthest = base::kUnset;  ///< how far they reach into the column from its nearer end;
                                   ///< unset = it is not known where they are  [m]
  std::string basis = {};          ///< where `yield` comes from
  bool assumed = false;            ///< how far they reach is not given, but assumed
};

/// What the column check of a straight member needs.
struct ColumnInput {
  sections::Shape shape;
  double elastic = base::kUnset;          ///< E  [Pa]
  double yield = base::kUnset;            ///< Fy of the parent  [Pa]
  std::string strength_basis = {};        ///< where `yield` comes from
  std::optional<ColumnWelds> welds = {};  ///< unset = none that weaken it
  double length = base::kUnset;           ///< joint to joint  [m]
  double k = 1.0;                         ///< effective length factor  [-]
  double bow = 0.001;                     ///< off straight as delivered, over its length  [-]
  std::string bow_basis = {};             ///< where that comes from
  double compression = base::kUnset;      ///< largest in the member; 0 or less = none  [N]
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / compression
};

/// Buckling of a straight member as a column about its weaker axis: nominal Pn = Fn Ae, with
/// Euler's and Johnson's loads beside it, and the load of first yield with its bow, by Perry's and
/// the secant formula.
/// @return nothing when the member is not compressed; undecided when its wall is too thin for the
///         method
/// An open section may buckle by bending and twisting together (E4), its warping left out.
/// Welds within 0.05 L of its ends leave its buckling alone, and there it holds A Fy of the weld
/// zone at most; with any weld farther in, Fy is the weld zone's throughout.
/// Limits: straight members without side load; bent members need the stress along the true shape.
/// Source: AISC 360-22 E3, E4 and E7; welds: practice of the Aluminum Design Manual for welds at
/// the ends of columns; from memory.
[[nodiscard]] std::optional<Finding> column(const ColumnInput& given);

/// What that check says the member holds, without its words; unset where it is undecided.  [N]
[[nodiscard]] double column_capacity(const ColumnInput& given);

}  // namespace checks
