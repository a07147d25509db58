#pragma once

#include <array>
#include <string>
#include <vector>

#include "sections/shape.hpp"

/// The walls of thin-walled shapes as one line; not for use outside this folder.
namespace sections {

using Point = std::array<double, 2>;  ///< y and z  [m]

/// Twice the area of the triangle from the origin over a and b, positive counterclockwise.
inline double cross(const Point& a, const Point& b) {
  return a[0] * b[1] - a[1] * b[0];
}

/// Walls one after the other along their middle line, in the axes the shape is drawn in. A closed
/// line runs counterclockwise, from y toward z.
struct WallLine {
  std::vector<Point> points;
  std::vector<double> thickness;   ///< of the wall from each point to the next  [m]
  std::vector<std::string> names;  ///< of each wall, in words
  bool closed = false;

  [[nodiscard]] std::size_t size() const { return thickness.size(); }
  [[nodiscard]] const Point& start(std::size_t wall) const { return points[wall]; }
  [[nodiscard]] const Point& end(std::size_t wall) const {
    return points[wall + 1 == points.size() ? 0 : wall + 1];
  }
};

[[nodiscard]] WallLine wall_line(const Channel& s);
[[nodiscard]] WallLine wall_line(const Angle& s);
[[nodiscard]] WallLine wall_line(const BoxedChannel& s);
[[nodiscard]] WallLine wall_line(const ThinWalled& s);

/// A wall with its mitered ends: right and left of its start, then right and left of its end, as
/// seen along the line.
struct WallCorners {
  Point right_start;
  Point left_start;
  Point right_end;
  Point left_end;
};

/// Walls that meet at an angle share the points where their faces meet; free ends and walls in one
/// line end square.
[[nodiscard]] std::vector<WallCorners> mitered(const WallLine& line);

/// @throws base::InputError for `points` or `walls`, whose thicknesses must be over 0 already
void require_sound(const ThinWalled& s);

}  // namespace sections
