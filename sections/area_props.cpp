#include "sections/area_props.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "sections/box_torsion.hpp"
#include "sections/thin_wall.hpp"
#include "sections/torsion_rectangle.hpp"

namespace sections {
namespace {

constexpr double kPi = base::kPi;

/// Cowper's coefficient of a rectangle; he finds it independent of the ratio of the sides.
double cowper_rectangle(double poisson) {
  return 10.0 * (1.0 + poisson) / (12.0 + 11.0 * poisson);
}

/// Cowper's coefficient of a round tube; `inside` 0 is the solid bar.
double cowper_round(double outside, double inside, double poisson) {
  const double m2 = (inside / outside) * (inside / outside);
  const double ring = (1.0 + m2) * (1.0 + m2);
  return 6.0 * (1.0 + poisson) * ring /
         ((7.0 + 6.0 * poisson) * ring + (20.0 + 12.0 * poisson) * m2);
}

/// Cowper's coefficient of a thin box of one wall thickness, `along` and `across` the shear force
/// on the middle of the wall. From memory; it agrees with his rectangle (across = 0) and with his
/// square tube, 20 (1 + nu) / (48 + 39 nu).
double cowper_box(double along, double across, double poisson) {
  const double m = across / along;
  const double m2 = m * m;
  const double m3 = m2 * m;
  const double above = 10.0 * (1.0 + poisson) * (1.0 + 3.0 * m) * (1.0 + 3.0 * m);
  const double below = 12.0 + 72.0 * m + 150.0 * m2 + 90.0 * m3 +
                       poisson * (11.0 + 66.0 * m + 135.0 * m2 + 90.0 * m3) +
                       10.0 * m2 * ((3.0 + poisson) * m + 3.0 * m2);
  return above / below;
}

/// Adds what follows from the areas already there.
AreaProps completed(AreaProps p) {
  p.radius_y = std::sqrt(p.iyy / p.area);
  p.radius_z = std::sqrt(p.izz / p.area);
  p.polar = p.iyy + p.izz;
  if (std::isnan(p.drawn_iyz)) {
    p.drawn_iyy = p.iyy;
    p.drawn_izz = p.izz;
    p.drawn_iyz = 0.0;
  }
  return p;
}

AreaProps round_props(double outside, double inside, double poisson) {
  const double area = kPi / 4.0 * (outside * outside - inside * inside);
  const double inertia = area * (outside * outside + inside * inside) / 16.0;
  const double modulus = 2.0 * inertia / outside;
  const double plastic = (std::pow(outside, 3) - std::pow(inside, 3)) / 6.0;
  const double shear = cowper_round(outside, inside, poisson) * area;
  return completed({.area = area,
                    .iyy = inertia,
                    .izz = inertia,
                    .torsion = 2.0 * inertia,
                    .shear_y = shear,
                    .shear_z = shear,
                    .modulus_y = modulus,
                    .modulus_z = modulus,
                    .plastic_y = plastic,
                    .plastic_z = plastic});
}

/// `count` equal rectangles side by side that bend together about y and alone about z.
AreaProps rectangles(int count, double depth, double width, double poisson) {
  const double area = count * depth * width;
  const double shear = cowper_rectangle(poisson) * area;
  return completed({.area = area,
                    .iyy = area * depth * depth / 12.0,
                    .izz = area * width * width / 12.0,
                    .torsion = count * rectangle_torsion(depth, width).constant,
                    .shear_y = shear,
                    .shear_z = shear,
                    .modulus_y = area * depth / 6.0,
                    .modulus_z = area * width / 6.0,
                    .plastic_y = area * depth / 4.0,
                    .plastic_z = area * width / 4.0});
}

/// Area, second moment and plastic modulus, for bending along `depth`, of a solid rectangle whose
/// corners are rounded off: the rectangle less four spandrels (EN 10219-2 annex B).
struct RoundedRectangle {
  double area;
  double inertia;
  double plastic;
};

RoundedRectangle rounded_rectangle(double depth, double width, double corner) {
  const double spandrel = (1.0 - kPi / 4.0) * corner * corner;
  const double arm = depth / 2.0 - (10.0 - 3.0 * kPi) / (12.0 - 3.0 * kPi) * corner;
  const double own =
      (1.0 / 3.0 - kPi / 16.0 - 1.0 / (3.0 * (12.0 - 3.0 * kPi))) * std::pow(corner, 4);
  return {.area = depth * width - 4.0 * spandrel,
          .inertia = width * std::pow(depth, 3) / 12.0 - 4.0 * (own + spandrel * arm * arm),
          .plastic = width * depth * depth / 4.0 - 4.0 * spandrel * arm};
}

AreaProps box_props(const RectangularTube& tube, double poisson) {
  const double depth_in = tube.depth - 2.0 * tube.wall;
  const double width_in = tube.width - 2.0 * tube.wall;
  const double corner_in = std::max(0.0, tube.corner - tube.wall);
  const RoundedRectangle out_y = rounded_rectangle(tube.depth, tube.width, tube.corner);
  const RoundedRectangle in_y = rounded_rectangle(depth_in, width_in, corner_in);
  const RoundedRectangle out_z = rounded_rectangle(tube.width, tube.depth, tube.corner);
  const RoundedRectangle in_z = rounded_rectangle(width_in, depth_in, corner_in);
  const double area = out_y.area - in_y.area;
  const double along = tube.depth - tube.wall;
  const double across = tube.width - tube.wall;
  return completed({.area = area,
                    .iyy = out_y.inertia - in_y.inertia,
                    .izz = out_z.inertia - in_z.inertia,
                    .torsion = box_torsion(tube).constant,
                    .shear_y = cowper_box(across, along, poisson) * area,
                    .shear_z = cowper_box(along, across, poisson) * area,
                    .modulus_y = 2.0 * (out_y.inertia - in_y.inertia) / tube.depth,
                    .modulus_z = 2.0 * (out_z.inertia - in_z.inertia) / tube.width,
                    .plastic_y = out_y.plastic - in_y.plastic,
                    .plastic_z = out_z.plastic - in_z.plastic});
}

AreaProps wall_props(const ThinWall& s) {
  const std::array<double, 2> reach = s.reach();
  const std::array<double, 2> shear = s.shear_areas();
  return completed({.area = s.area(),
                    .iyy = s.iyy(),
                    .izz = s.izz(),
                    .torsion = s.torsion(),
                    .shear_y = shear[0],
                    .shear_z = shear[1],
                    .modulus_y = s.iyy() / reach[1],
                    .modulus_z = s.izz() / reach[0],
                    .plastic_y = s.plastic_modulus(1),
                    .plastic_z = s.plastic_modulus(0),
                    .shear_center_y = s.shear_center()[0],
                    .shear_center_z = s.shear_center()[1],
                    .axes_angle = s.axes_angle(),
                    .centroid_y = s.centroid()[0],
                    .centroid_z = s.centroid()[1],
                    .drawn_iyy = s.drawn().iyy,
                    .drawn_izz = s.drawn().izz,
                    .drawn_iyz = s.drawn().iyz,
                    .asymmetry_y = s.asymmetry(1),
                    .asymmetry_z = s.asymmetry(0)});
}

/// A plastic modulus takes its time: what this thread's last shapes came to is remembered.
template <class Walled>
AreaProps remembered_props(const Walled& shape) {
  thread_local Remembered<Walled, AreaProps> remembered;
  return remembered(shape, [&shape] { return wall_props(walled_section(shape).section); });
}

struct Props {
  double poisson;

  AreaProps operator()(const RoundBar& s) const { return round_props(s.diameter, 0.0, poisson); }
  AreaProps operator()(const RoundTube& s) const {
    return round_props(s.outside, s.outside - 2.0 * s.wall, poisson);
  }
  AreaProps operator()(const RectangularTube& s) const { return box_props(s, poisson); }
  AreaProps operator()(const FlatBar& s) const { return rectangles(1, s.depth, s.width, poisson); }
  AreaProps operator()(const TwinPlate& s) const {
    return rectangles(2, s.depth, s.thickness, poisson);
  }
  AreaProps operator()(const Channel& s) const { return remembered_props(s); }
  AreaProps operator()(const Angle& s) const { return remembered_props(s); }
  AreaProps operator()(const BoxedChannel& s) const { return remembered_props(s); }
  AreaProps operator()(const ThinWalled& s) const { return remembered_props(s); }
  AreaProps operator()(const ByNumbers& s) const {
    constexpr double kNoGive = std::numeric_limits<double>::infinity();
    return completed({.area = s.area,
                      .iyy = s.iyy,
                      .izz = s.izz,
                      .torsion = s.torsion,
                      .shear_y = std::isnan(s.shear_y) ? kNoGive : s.shear_y,
                      .shear_z = std::isnan(s.shear_z) ? kNoGive : s.shear_z,
                      .modulus_y = s.modulus_y,
                      .modulus_z = s.modulus_z});
  }
};

}  // namespace

AreaProps area_props(const Shape& shape, double poisson) {
  return std::visit(Props{poisson}, shape);
}

}  // namespace sections
