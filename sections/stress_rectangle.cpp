#include <algorithm>
#include <array>
#include <cmath>

#include "sections/stress_points.hpp"
#include "sections/torsion_rectangle.hpp"

namespace sections {
namespace {

/// A place on half of a side, and the stress of a torque of one there.
struct Station {
  double at;
  double torsion;
};

/// Halfway places, then places counted from the corner in short sides: torsion climbs to its full
/// value within about one short side of the corner, where bending is still near its largest.
constexpr std::array kHalfway{0.0, 1.0 / 3.0, 2.0 / 3.0};
constexpr std::array kFromCorner{0.1, 0.2, 0.35, 0.5, 0.75, 1.0, 1.5};
constexpr std::array kShortSide{0.0, 0.25, 0.5, 0.75};

struct Stations {
  std::array<Station, kHalfway.size() + kFromCorner.size()> long_side{};
  std::array<Station, kShortSide.size()> short_side{};
};

Stations stations(double depth, double width, bool twisted) {
  const RectangleTorsion torsion = rectangle_torsion(depth, width);
  Stations all;
  std::size_t i = 0;
  const auto add_long = [&](double at) {
    all.long_side[i++] = {at, twisted ? torsion.on_long_side(at) : 0.0};
  };
  for (const double at : kHalfway) add_long(at);
  for (const double sides : kFromCorner) {
    add_long(std::max(0.0, 1.0 - 2.0 * sides * torsion.shorter / torsion.longer));
  }
  i = 0;
  for (const double at : kShortSide) {
    all.short_side[i++] = {at, twisted ? torsion.on_short_side(at) : 0.0};
  }
  return all;
}

/// What a side sees: stress at its middle, what bending adds at its +1 end, and 1.5 V / A of the
/// force along it, counterclockwise positive.
struct Side {
  double axial;
  double bending;
  double bending_along;
  double shear;
  bool across_y;
};

template <typename StationList>
void offer_side(Worst<OutlinePlace>& worst, const Side& side, const StationList& list,
                double torque) {
  for (const Station& station : list) {
    for (const double at : {station.at, -station.at}) {
      worst.offer({.axial = side.axial,
                   .bending = side.bending + at * side.bending_along,
                   .torsion = torque * station.torsion,
                   .shear = side.shear * (1.0 - at * at)},
                  {OutlinePlace::Kind::on_side, side.across_y, at});
    }
  }
}

}  // namespace

PointStress worst_of_rectangle(double depth, double width, const Resultants& r) {
  const double area = depth * width;
  const double axial = r.n / area;
  const double along_z = r.my / (area * depth / 6.0);   // at z = +depth / 2
  const double along_y = -r.mz / (area * width / 6.0);  // at y = +width / 2
  const double shear_y = 1.5 * r.vy / area;
  const double shear_z = 1.5 * r.vz / area;
  const Stations all = stations(depth, width, r.t != 0.0);
  const bool deep = depth >= width;

  Worst<OutlinePlace> worst;
  for (const double sign : {1.0, -1.0}) {
    worst.offer({.axial = axial, .bending = sign * (along_z + along_y)}, {});
    worst.offer({.axial = axial, .bending = sign * (along_z - along_y)}, {});
  }
  for (const double sign : {1.0, -1.0}) {
    const Side across_y{axial, sign * along_y, along_z, sign * shear_z, true};
    const Side across_z{axial, sign * along_z, along_y, -sign * shear_y, false};
    offer_side(worst, deep ? across_y : across_z, all.long_side, r.t);
    offer_side(worst, deep ? across_z : across_y, all.short_side, r.t);
  }
  worst.offer({.axial = axial, .shear = std::hypot(shear_y, shear_z)},
              {.kind = OutlinePlace::Kind::center});
  return worst.stress(place_name(worst.place(), depth, width, "side"));
}

}  // namespace sections
