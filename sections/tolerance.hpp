#pragma once

#include <string>

#include "sections/material.hpp"
#include "sections/shape.hpp"

namespace sections {

/// Which sizes a calculation uses.
enum class Sizes {
  nominal,  ///< as entered
  minimum,  ///< less what the mill may leave away
};

/// A shape as thin as its standard allows.
struct MinimumShape {
  Shape shape;
  bool known = false;  ///< otherwise `shape` is as it was given
  std::string basis;   ///< the standard, what is taken off and how it is known; or why nothing is
};

/// Least diameter of round bars, least outside and wall of tubes.
/// @param shape  passes require_valid
/// @param steel  its standard decides whose tolerances apply
/// Source: ASTM A513 type 5 and type 1, ASTM A108 table A1.1, ASTM A29/A6 (read in reproductions;
/// heavy walls of A513 type 5 from memory, at least 5 % then); ASTM A500 and square and rectangular
/// A513: wall 10 % (read); EN 10305-1: wall 10 %, not under 0.1 mm (read), outside from memory.
[[nodiscard]] MinimumShape minimum_material(const Shape& shape, const Material& steel);

/// The shape that a calculation with these sizes uses.
[[nodiscard]] Shape used_shape(const Shape& shape, const Material& steel, Sizes sizes);

}  // namespace sections
