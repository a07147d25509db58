#include "sections/stress.hpp"

#include <cmath>

#include <fmt/format.h>

#include "sections/stress_points.hpp"

namespace sections {
namespace {

/// A part of the load that is zero asks for no section number; one that is not and has none
/// gives NaN, "unknown".
double over(double load, double resistance) {
  return load == 0.0 ? 0.0 : std::abs(load) / resistance;
}

double shear_area(double given, double area) {
  return std::isnan(given) ? area : given;
}

/// Every part at its largest, as if at one fiber: the shape is not known.
PointStress worst_of_numbers(const ByNumbers& s, const Resultants& r) {
  const double axial = r.n / s.area;
  const double bending = over(r.my, s.modulus_y) + over(r.mz, s.modulus_z);
  Worst<int> worst;
  worst.offer({.axial = axial,
               .bending = axial < 0.0 ? -bending : bending,
               .torsion = over(r.t, s.modulus_t),
               .shear = std::hypot(r.vy / shear_area(s.shear_y, s.area),
                                   r.vz / shear_area(s.shear_z, s.area))},
              0);
  return worst.stress("extreme fiber");
}

struct WorstPoint {
  const Resultants& r;

  PointStress operator()(const RoundBar& s) const { return worst_of_round(s.diameter, 0.0, r); }
  PointStress operator()(const RoundTube& s) const {
    return worst_of_round(s.outside, s.outside - 2.0 * s.wall, r);
  }
  PointStress operator()(const RectangularTube& s) const { return worst_of_box(s, r); }
  PointStress operator()(const FlatBar& s) const { return worst_of_rectangle(s.depth, s.width, r); }
  // Both plates are alike: each carries half of everything, torque included.
  PointStress operator()(const TwinPlate& s) const {
    const Resultants half{.n = 0.5 * r.n,
                          .vy = 0.5 * r.vy,
                          .vz = 0.5 * r.vz,
                          .t = 0.5 * r.t,
                          .my = 0.5 * r.my,
                          .mz = 0.5 * r.mz};
    return worst_of_rectangle(s.depth, s.thickness, half);
  }
  PointStress operator()(const Channel& s) const { return worst_of_walls(walled_section(s), r); }
  PointStress operator()(const Angle& s) const { return worst_of_walls(walled_section(s), r); }
  PointStress operator()(const BoxedChannel& s) const {
    return worst_of_walls(walled_section(s), r);
  }
  PointStress operator()(const ThinWalled& s) const { return worst_of_walls(walled_section(s), r); }
  PointStress operator()(const ByNumbers& s) const { return worst_of_numbers(s, r); }
};

/// Without saying where.
struct LargestStress {
  const Resultants& r;

  double operator()(const Channel& s) const { return largest_of_walls(walled_section(s), r); }
  double operator()(const Angle& s) const { return largest_of_walls(walled_section(s), r); }
  double operator()(const BoxedChannel& s) const { return largest_of_walls(walled_section(s), r); }
  double operator()(const ThinWalled& s) const { return largest_of_walls(walled_section(s), r); }
  template <class Other>
  double operator()(const Other& s) const {
    return WorstPoint{r}(s).von_mises;
  }
};

}  // namespace

std::string place_name(const OutlinePlace& place, double depth, double width, const char* noun) {
  if (place.kind == OutlinePlace::Kind::corner) return "corner";
  if (place.kind == OutlinePlace::Kind::center) return "center";
  const double own = place.across_y ? depth : width;
  const double other = place.across_y ? width : depth;
  const char* adjective = own == other ? "" : own > other ? "long " : "short ";
  const double at = std::abs(place.at);
  if (at == 0.0) return fmt::format("middle of the {}{}", adjective, noun);
  return fmt::format("{}{}, {:.0f} % of the way from its middle to the corner", adjective, noun,
                     100.0 * at);
}

PointStress worst_point(const Shape& shape, const Resultants& r) {
  return std::visit(WorstPoint{r}, shape);
}

double largest_von_mises(const Shape& shape, const Resultants& r, double from) {
  if (const auto* bar = std::get_if<RoundBar>(&shape)) {
    return largest_of_round(bar->diameter, 0.0, r, from);
  }
  if (const auto* tube = std::get_if<RoundTube>(&shape)) {
    return largest_of_round(tube->outside, tube->outside - 2.0 * tube->wall, r, from);
  }
  return std::visit(LargestStress{r}, shape);
}

PointStress worst_point_within(const Shape& shape, const Resultants& r, const OutlinePart& part) {
  if (const auto* bar = std::get_if<RoundBar>(&shape)) {
    return worst_of_round(bar->diameter, 0.0, r, &part);
  }
  if (const auto* tube = std::get_if<RoundTube>(&shape)) {
    return worst_of_round(tube->outside, tube->outside - 2.0 * tube->wall, r, &part);
  }
  return worst_point(shape, r);
}

}  // namespace sections
