#pragma once

#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "sections/shape.hpp"

/// Width-to-thickness of walls, and what of a wall that buckles before it yields still carries.
namespace checks {

/// A flat wall of a shape, as AISC 360-22 table B4.1a sorts it. Several alike are one entry.
struct FlatWall {
  std::string what;                 ///< "flange", "web", "leg", "wall"
  double width = base::kUnset;      ///< flat width b  [m]
  double thickness = base::kUnset;  ///< [m]
  int count = 1;                    ///< walls alike
  double slender_over = 0.0;        ///< lambda_r over sqrt(E / Fy), uniform compression  [-]
  double c1 = 0.0;                  ///< of table E7.1  [-]
  double c2 = 0.0;                  ///< [-]
  /// b / t
  [[nodiscard]] double slenderness() const { return width / thickness; }
};

/// The flat walls of a shape: none of a bar, a plate, a round tube or a section given by numbers.
/// Source: AISC 360-22 tables B4.1a and E7.1, from memory.
[[nodiscard]] std::vector<FlatWall> flat_walls(const sections::Shape& shape);

/// Some wall buckles before it yields when all of the shape is compressed: D/t over 0.11 E/Fy of a
/// round tube, b/t over the limit of table B4.1a of a flat wall. Up to there walls yield first in
/// bending too.
[[nodiscard]] bool has_slender_wall(const sections::Shape& shape, double elastic, double yield);

/// "walls yield before they buckle: D/t of 12.5 is not over 0.11 E/Fy = 91.1 (...)" of the wall
/// that comes nearest to its limit, or that it is over; empty for a shape without walls.
[[nodiscard]] std::string wall_words(const sections::Shape& shape, double elastic, double yield);

/// Why the shape is too thin for E7 and F8; empty when it is not.
/// Source: AISC 360-22 E7 and F8, D/t under 0.45 E/Fy, from memory.
[[nodiscard]] std::string wall_outside_method(const sections::Shape& shape, double elastic,
                                              double yield);

/// Area that counts at a compressive stress Fn, with the lines that work it out (none where all of
/// it counts).
struct EffectiveArea {
  double ratio = 1.0;  ///< Ae / Ag
  std::vector<WorkedLine> lines = {};
};

/// @param at_stress  Fn  [Pa]
/// Flat walls: be = b (1 - c1 sqrt(Fel/Fn)) sqrt(Fel/Fn), Fel = (c2 lambda_r / lambda)^2 Fy. Round
/// tubes: 0.038 E / (Fy D/t) + 2/3, whatever the stress.
/// Source: AISC 360-22 E7, from memory.
[[nodiscard]] EffectiveArea effective_area(const sections::Shape& shape, double elastic,
                                           double yield, double at_stress);

}  // namespace checks
