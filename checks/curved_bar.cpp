#include "checks/curved_bar.hpp"

#include <algorithm>
#include <cmath>

#include "base/invariant.hpp"
#include "sections/area_props.hpp"

namespace checks {
namespace {

using sections::Shape;

/// int(dA / r) over a disk, 2 pi (R - sqrt(R^2 - a^2)), written without cancellation.  [m]
double disk(double radius, double outer) {
  return 2.0 * base::kPi * outer * outer / (radius + std::sqrt(radius * radius - outer * outer));
}

/// int(dA / r) over a rectangle `depth` across the bend, `width` along its axis.  [m]
double rectangle(double radius, double depth, double width) {
  return width * std::log((radius + 0.5 * depth) / (radius - 0.5 * depth));
}

/// The factor from area, integral, distance c to the fibers and second moment.
double factor(double radius, double area, double integral, double c, double second_moment) {
  const double neutral = area / integral;
  const double inner = radius - c;
  const double stress = (neutral - inner) / (area * (radius - neutral) * inner);
  return stress * second_moment / c;
}

struct Sides {
  double depth;
  double width;
};

double rectangle_factor(double radius, const Sides& outside, const Sides& hole) {
  const double area = outside.depth * outside.width - hole.depth * hole.width;
  const double second_moment =
      (outside.width * std::pow(outside.depth, 3) - hole.width * std::pow(hole.depth, 3)) / 12.0;
  const double integral =
      rectangle(radius, outside.depth, outside.width) - rectangle(radius, hole.depth, hole.width);
  return factor(radius, area, integral, 0.5 * outside.depth, second_moment);
}

/// Bent either way, the worse; nothing when the radius is not over the larger side.
std::optional<double> worse_way(double radius, const Sides& outside, const Sides& hole) {
  if (!(radius > std::max(outside.depth, outside.width))) return std::nullopt;
  return std::max(
      rectangle_factor(radius, outside, hole),
      rectangle_factor(radius, {outside.width, outside.depth}, {hole.width, hole.depth}));
}

std::optional<double> round_factor(double radius, double outer, double inner) {
  if (!(radius > 2.0 * outer)) return std::nullopt;
  const double area = base::kPi * (outer * outer - inner * inner);
  const double second_moment = 0.25 * base::kPi * (std::pow(outer, 4) - std::pow(inner, 4));
  const double integral = disk(radius, outer) - disk(radius, inner);
  return factor(radius, area, integral, outer, second_moment);
}

struct ByShape {
  double radius;
  const Shape& shape;

  std::optional<double> operator()(const sections::RoundBar& s) const {
    return round_factor(radius, 0.5 * s.diameter, 0.0);
  }
  std::optional<double> operator()(const sections::RoundTube& s) const {
    return round_factor(radius, 0.5 * s.outside, 0.5 * s.outside - s.wall);
  }
  std::optional<double> operator()(const sections::RectangularTube& s) const {
    return worse_way(radius, {s.depth, s.width}, {s.depth - 2.0 * s.wall, s.width - 2.0 * s.wall});
  }
  std::optional<double> operator()(const sections::FlatBar& s) const {
    return worse_way(radius, {s.depth, s.width}, {0.0, 0.0});
  }
  /// Straight where the radius is over 13 depths, the depth from I / S.
  template <class Other>
  std::optional<double> operator()(const Other&) const {
    const sections::AreaProps p = sections::area_props(shape);
    const double depth = 2.0 * std::max(p.iyy / p.modulus_y, p.izz / p.modulus_z);
    return radius > 13.0 * depth ? std::optional<double>(1.0) : std::nullopt;
  }
};

}  // namespace

std::optional<double> curved_bar_factor(const Shape& shape, double radius) {
  INVARIANT(radius > 0.0);
  return std::visit(ByShape{radius, shape}, shape);
}

}  // namespace checks
