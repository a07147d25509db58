#include <array>
#include <cmath>

#include <fmt/format.h>

#include "sections/stress_points.hpp"
#include "sections/thin_wall.hpp"

namespace sections {
namespace {

/// A place on a wall: how far along it, in walls.
struct WallPlace {
  std::size_t wall = 0;
  double at = 0.0;
};

std::string name(const WallPlace& place, const WallLine& line) {
  const std::string& wall = line.names[place.wall];
  const std::size_t n = line.size();
  const bool start = place.at == 0.0;
  if (!start && place.at != 1.0) {
    return place.at == 0.5 ? fmt::format("middle of the {}", wall)
                           : fmt::format("{}, {:.0f} % along", wall, 100.0 * place.at);
  }
  if (!line.closed && place.wall == (start ? 0 : n - 1)) return fmt::format("tip of the {}", wall);
  const std::size_t other = (place.wall + (start ? n - 1 : 1)) % n;
  return fmt::format("corner of the {} and the {}", line.names[start ? other : place.wall],
                     line.names[start ? place.wall : other]);
}

/// Where the shear flow of the forces has no slope, in walls; outside 0 to 1 when nowhere.
double flow_summit(const FlowWall& w, const Resultants& r) {
  const Point k = {r.vy * w.load[0][0] + r.vz * w.load[1][0],
                   r.vy * w.load[0][1] + r.vz * w.load[1][1]};
  const double slope = k[0] * w.direction[0] + k[1] * w.direction[1];
  if (slope == 0.0) return -1.0;
  return -(k[0] * (w.start[0] - w.pole[0]) + k[1] * (w.start[1] - w.pole[1])) / slope / w.length;
}

/// A face at a place: the mitered corner at the ends, so that the outermost fiber is met.
Point face_at(const FlowWall& w, double at, bool right) {
  if (at == 0.0) return right ? w.corners.right_start : w.corners.left_start;
  if (at == 1.0) return right ? w.corners.right_end : w.corners.left_end;
  const double half = right ? 0.5 * w.thickness : -0.5 * w.thickness;
  const Point middle = w.at(at * w.length);
  return {middle[0] + half * w.direction[1], middle[1] - half * w.direction[0]};
}

Worst<WallPlace> worst_on_walls(const ThinWall& section, const Resultants& r) {
  Worst<WallPlace> worst;
  const auto offer = [&](std::size_t wall, double at) {
    const FlowWall& w = section.walls()[wall];
    const double shear =
        (r.vy * w.flow(0, at * w.length) + r.vz * w.flow(1, at * w.length)) / w.thickness;
    for (const bool right : {true, false}) {
      const Point face = face_at(w, at, right);
      const double strip = (right ? w.thickness : -w.thickness) / section.torsion();
      worst.offer({.axial = r.n / section.area(),
                   .bending = r.my * face[1] / section.iyy() - r.mz * face[0] / section.izz(),
                   .torsion = r.t * (section.torsion_flow() / w.thickness + strip),
                   .shear = shear},
                  {wall, at});
    }
  };
  for (std::size_t wall = 0; wall < section.walls().size(); ++wall) {
    for (const double at : {0.0, 1.0, 0.5, 0.25, 0.75}) offer(wall, at);
    const double summit = flow_summit(section.walls()[wall], r);
    if (summit > 0.0 && summit < 1.0) offer(wall, summit);
  }
  return worst;
}

}  // namespace

PointStress worst_of_walls(const WalledSection& walled, const Resultants& r) {
  const Worst<WallPlace> worst = worst_on_walls(walled.section, r);
  return worst.stress(name(worst.place(), walled.line));
}

double largest_of_walls(const WalledSection& walled, const Resultants& r) {
  return std::sqrt(worst_on_walls(walled.section, r).squared());
}

}  // namespace sections
