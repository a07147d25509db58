#include <array>

#include "sections/area_props.hpp"
#include "sections/box_torsion.hpp"
#include "sections/stress_points.hpp"

namespace sections {
namespace {

constexpr std::array kStations{1.0, 0.0, 1.0 / 3.0, 2.0 / 3.0};

/// Shear stress of a force of one along the walls: V Q / (I t) at the middle of a wall that runs
/// with the force, and at a corner.  [1/m^2]
struct WallShear {
  double middle;
  double corner;
};

WallShear wall_shear(double plastic, double inertia, double along, double across, double wall) {
  // Half of the section has the first moment plastic / 2, and two walls to carry the flow. What
  // reaches a corner is half of a cross wall, at the middle of its thickness.
  return {.middle = plastic / (4.0 * inertia * wall),
          .corner = 0.25 * (along - wall) * (across - wall) / inertia};
}

/// One wall: normal stress as on the side of a rectangle, and the shear flow of a force along it
/// and of one across it, counterclockwise positive.
struct Wall {
  double axial;
  double bending;
  double bending_along;
  double torsion;
  double middle;  ///< from the force along the wall, at the middle
  double corner;  ///< the same at the corners
  double across;  ///< from the force across the wall, at the +1 end; zero at the middle
  bool across_y;
};

void offer_wall(Worst<OutlinePlace>& worst, const Wall& w) {
  for (const double station : kStations) {
    for (const double at : {station, -station}) {
      const bool corner = station == 1.0;
      worst.offer(
          {.axial = w.axial,
           .bending = w.bending + at * w.bending_along,
           .torsion = w.torsion,
           .shear = w.middle - (w.middle - w.corner) * at * at + w.across * at},
          {corner ? OutlinePlace::Kind::corner : OutlinePlace::Kind::on_side, w.across_y, at});
    }
  }
}

}  // namespace

PointStress worst_of_box(const RectangularTube& tube, const Resultants& r) {
  const AreaProps p = area_props(tube);
  const double axial = r.n / p.area;
  const double along_z = r.my / p.modulus_y;   // at z = +depth / 2
  const double along_y = -r.mz / p.modulus_z;  // at y = +width / 2
  const double torsion = r.t / box_torsion(tube).modulus;
  const WallShear z = wall_shear(p.plastic_y, p.iyy, tube.depth, tube.width, tube.wall);
  const WallShear y = wall_shear(p.plastic_z, p.izz, tube.width, tube.depth, tube.wall);

  Worst<OutlinePlace> worst;
  for (const double sign : {1.0, -1.0}) {
    offer_wall(worst, {.axial = axial,
                       .bending = sign * along_y,
                       .bending_along = along_z,
                       .torsion = torsion,
                       .middle = sign * r.vz * z.middle,
                       .corner = sign * r.vz * z.corner,
                       .across = -r.vy * y.corner,
                       .across_y = true});
    offer_wall(worst, {.axial = axial,
                       .bending = sign * along_z,
                       .bending_along = along_y,
                       .torsion = torsion,
                       .middle = -sign * r.vy * y.middle,
                       .corner = -sign * r.vy * y.corner,
                       .across = r.vz * z.corner,
                       .across_y = false});
  }
  return worst.stress(place_name(worst.place(), tube.depth, tube.width, "wall"));
}

}  // namespace sections
