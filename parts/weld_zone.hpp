#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sections/material.hpp"
#include "sections/shape.hpp"
#include "sections/stress.hpp"

/// Where along a bar, tube or plate the heat of a weld lowers its strength.
namespace parts {

/// A weld, by the point of the center line it belongs to: the end of a part, or a junction.
struct Weld {
  double at = base::kUnset;     ///< along the piece's center line  [m]
  double reach = base::kUnset;  ///< how far it lies from there at most; unset = not known  [m]
  /// Of a weld on the side of a round bar or tube: the part of the outside that its zone takes.
  /// Nothing = all round.
  std::optional<sections::OutlinePart> on_side = {};
};

/// A stretch of a piece's center line, its edges included.
struct WeldZone {
  double from = base::kUnset;                         ///< [m]
  double to = base::kUnset;                           ///< [m]
  std::optional<sections::OutlinePart> on_side = {};  ///< as of its weld

  [[nodiscard]] bool reaches(double along) const;
};

/// The part of a round outside that the zone of a weld on its side takes: the arc over which what
/// stands there is as wide, and `beyond` along the outside to both sides of that.
/// @param width  of what stands on it, around it  [m]
/// @param middle  where, from y toward z  [rad]
/// @return nothing where that is all round, or the shape is not round
[[nodiscard]] std::optional<sections::OutlinePart> side_of_outline(const sections::Shape& shape,
                                                                   double width, double middle);

/// How far the zone goes beyond a weld to each side: the larger of 15 mm and twice the wall of a
/// tube, or twice the diameter or thickness of a solid.  [m]
/// @return unset for a section given by its numbers
/// Source: 10 to 15 mm or 2 t, common practice, no source.
[[nodiscard]] double beyond_weld(const sections::Shape& shape);

/// Half of the outside of a section, its larger way.  [m]
/// @return unset for a section given by its numbers
[[nodiscard]] double half_outside(const sections::Shape& shape);

/// How far the cut of a mitered corner lies from its point, along either side.  [m]
/// @param turn  by which the center line turns, 0 to pi  [rad]
[[nodiscard]] double miter_reach(double half, double turn);

/// How far the weld between two bars lies from the point where their center lines meet, along
/// either of them: the farthest point where the outside of the one, drawn flat, crosses the
/// other's.
/// @param half  half outside of the bar along which it is measured  [m]
/// @param other_half  of the other bar  [m]
/// @param angle  between the two as they leave the point, 0 to pi  [rad]
/// @return (other_half + half |cos|) / sin; within 30 degrees of one line the miter between them
[[nodiscard]] double weld_reach(double half, double other_half, double angle);

/// The zones of a piece, in order; those all round do not touch each other. All of it when it has
/// no weld whose place is known, when a weld's reach is not, or `beyond` is unset.
/// @param beyond  beyond_weld of its thickest section  [m]
/// @param center_line  its length  [m]
[[nodiscard]] std::vector<WeldZone> weld_zones(const std::vector<Weld>& welds, double beyond,
                                               double center_line);

/// "A36 plate shape bar, specified minimum, from memory": what a parent strength rests on.
[[nodiscard]] std::string parent_words(const sections::Material& steel);

/// "heat-affected zone of a weld: A513 1020 normalized row".
[[nodiscard]] std::string weld_zone_words(const sections::Material& steel);

}  // namespace parts
