#include "sections/wall_line.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"

namespace sections {
namespace {

using base::InputError;

constexpr double kParallel = 1e-9;  // sine of the angle under which two walls are in one line

Point operator+(const Point& a, const Point& b) {
  return {a[0] + b[0], a[1] + b[1]};
}
Point operator-(const Point& a, const Point& b) {
  return {a[0] - b[0], a[1] - b[1]};
}
Point operator*(double f, const Point& a) {
  return {f * a[0], f * a[1]};
}
double dot(const Point& a, const Point& b) {
  return a[0] * b[0] + a[1] * b[1];
}

Point direction(const WallLine& line, std::size_t wall) {
  const Point along = line.end(wall) - line.start(wall);
  return (1.0 / std::hypot(along[0], along[1])) * along;
}

Point left_of(const Point& direction) {
  return {-direction[1], direction[0]};
}

/// Where the faces `side` half thicknesses to the left of two walls meet, which meet at `at`.
Point miter(const Point& at, const Point& d1, double t1, const Point& d2, double t2, double side) {
  const Point face1 = (0.5 * side * t1) * left_of(d1);
  const Point face2 = (0.5 * side * t2) * left_of(d2);
  return at + face1 + (cross(face2 - face1, d2) / cross(d1, d2)) * d1;
}

double enclosed(const WallLine& line) {
  double twice = 0.0;
  for (std::size_t i = 0; i < line.size(); ++i) twice += cross(line.start(i), line.end(i));
  return 0.5 * twice;
}

WallLine channel_walls(double depth, double width, double web, double flange, double plate) {
  const double z = 0.5 * (depth - flange);
  const double y = plate > 0.0 ? width + 0.5 * plate : width;
  WallLine line{.points = {{y, z}, {0.5 * web, z}, {0.5 * web, -z}, {y, -z}},
                .thickness = {flange, web, flange},
                .names = {"upper flange", "web", "lower flange"},
                .closed = false};
  return line;
}

bool cross_each_other(const Point& a, const Point& b, const Point& c, const Point& d) {
  const double scale = std::max(dot(b - a, b - a), dot(d - c, d - c));
  const double none = kParallel * scale;
  const auto side = [&](const Point& from, const Point& to, const Point& p) {
    const double s = cross(to - from, p - from);
    return s > none ? 1 : s < -none ? -1 : 0;
  };
  const auto between = [&](const Point& from, const Point& to, const Point& p) {
    return dot(p - from, p - to) <= none;
  };
  const int c_side = side(a, b, c);
  const int d_side = side(a, b, d);
  const int a_side = side(c, d, a);
  const int b_side = side(c, d, b);
  if (c_side * d_side < 0 && a_side * b_side < 0) return true;
  return (c_side == 0 && between(a, b, c)) || (d_side == 0 && between(a, b, d)) ||
         (a_side == 0 && between(c, d, a)) || (b_side == 0 && between(c, d, b));
}

void require_counts(const ThinWalled& s) {
  for (const auto& point : s.points) {
    if (std::isfinite(point[0]) && std::isfinite(point[1])) continue;
    throw InputError("points", "a point is not finite; give [y, z] of each");
  }
  const std::size_t least = s.closed ? 3 : 2;
  if (s.points.size() < least + (s.closed ? 0 : 1)) {
    throw InputError("points",
                     fmt::format("{} points are given; {} needs {} or more", s.points.size(),
                                 s.closed ? "a closed line" : "an open line", 3));
  }
  const std::size_t walls = s.closed ? s.points.size() : s.points.size() - 1;
  if (s.walls.size() != walls) {
    throw InputError("walls", fmt::format("{} thicknesses are given for {} walls; give one for "
                                          "each, or one for all",
                                          s.walls.size(), walls));
  }
}

void require_no_crossing(const WallLine& line) {
  const std::size_t n = line.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      if (line.closed && i == 0 && j + 1 == n) continue;
      if (!cross_each_other(line.start(i), line.end(i), line.start(j), line.end(j))) continue;
      const bool meets = !line.closed && i == 0 && j + 1 == n && line.start(0) == line.end(n - 1);
      throw InputError("points",
                       meets ? "the line ends where it starts; drop the last point and say "
                               "`closed: yes`"
                             : fmt::format("walls {} and {} cross or touch; the line must not meet "
                                           "itself",
                                           i + 1, j + 1));
    }
  }
}

void require_bends(const WallLine& line) {
  constexpr double kSharpest = -0.966;  // cosine of 165 degrees of turn
  bool turns = false;
  const std::size_t joints = line.closed ? line.size() : line.size() - 1;
  for (std::size_t i = 0; i < joints; ++i) {
    const std::size_t next = (i + 1) % line.size();
    const Point d1 = direction(line, i);
    const Point d2 = direction(line, next);
    turns = turns || std::abs(cross(d1, d2)) > kParallel;
    if (dot(d1, d2) > kSharpest) continue;
    throw InputError("points", fmt::format("wall {} folds back on wall {}; their angle must be 15 "
                                           "deg or more",
                                           next + 1, i + 1));
  }
  if (!turns) {
    throw InputError("points", "the walls lie in one straight line; that is a flat_bar");
  }
}

}  // namespace

WallLine wall_line(const Channel& s) {
  return channel_walls(s.depth, s.width, s.web, s.flange, 0.0);
}

WallLine wall_line(const BoxedChannel& s) {
  WallLine line = channel_walls(s.depth, s.width, s.web, s.flange, s.plate);
  line.thickness.push_back(s.plate);
  line.names.emplace_back("plate");
  line.closed = true;
  return line;
}

WallLine wall_line(const Angle& s) {
  const double half = 0.5 * s.wall;
  return {.points = {{s.width, half}, {half, half}, {half, s.depth}},
          .thickness = {s.wall, s.wall},
          .names = {"leg along y", "leg along z"},
          .closed = false};
}

WallLine wall_line(const ThinWalled& s) {
  WallLine line{.points = s.points, .thickness = s.walls, .names = {}, .closed = s.closed};
  for (std::size_t i = 1; i <= line.size(); ++i) line.names.push_back("wall " + std::to_string(i));
  if (line.closed && enclosed(line) < 0.0) {
    // Backward, with the first point last: wall i then runs between the points it ran between.
    std::reverse(line.points.begin(), line.points.end());
    std::rotate(line.points.begin(), line.points.end() - 1, line.points.end());
    std::reverse(line.thickness.begin(), line.thickness.end());
    std::reverse(line.names.begin(), line.names.end());
  }
  return line;
}

std::vector<WallCorners> mitered(const WallLine& line) {
  const std::size_t n = line.size();
  std::vector<WallCorners> walls(n);
  for (std::size_t i = 0; i < n; ++i) {
    const Point half = (0.5 * line.thickness[i]) * left_of(direction(line, i));
    walls[i] = {line.start(i) - half, line.start(i) + half, line.end(i) - half, line.end(i) + half};
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (i + 1 == n && !line.closed) break;
    const std::size_t next = (i + 1) % n;
    const Point d1 = direction(line, i);
    const Point d2 = direction(line, next);
    if (std::abs(cross(d1, d2)) <= kParallel) continue;
    const double t1 = line.thickness[i];
    const double t2 = line.thickness[next];
    walls[i].right_end = miter(line.end(i), d1, t1, d2, t2, -1.0);
    walls[i].left_end = miter(line.end(i), d1, t1, d2, t2, 1.0);
    walls[next].right_start = walls[i].right_end;
    walls[next].left_start = walls[i].left_end;
  }
  return walls;
}

void require_sound(const ThinWalled& s) {
  require_counts(s);
  const WallLine line = wall_line(s);
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point along = line.end(i) - line.start(i);
    if (std::hypot(along[0], along[1]) > 0.0) continue;
    throw InputError("points", line.names[i] + " has no length: two points are the same");
  }
  require_bends(line);
  require_no_crossing(line);
  const std::vector<WallCorners> walls = mitered(line);
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point along = direction(line, i);
    if (dot(walls[i].right_end - walls[i].right_start, along) > 0.0 &&
        dot(walls[i].left_end - walls[i].left_start, along) > 0.0) {
      continue;
    }
    throw InputError("walls", line.names[i] +
                                  " is too short for the thickness of the walls it meets; give "
                                  "thinner walls or fewer points");
  }
}

}  // namespace sections
