#include "report/section_outline.hpp"

#include <cmath>
#include <cstddef>
#include <numbers>
#include <variant>

namespace report {
namespace {

Outline round_outline(double diameter) {
  constexpr int kSides = 12;
  Outline out;
  for (int i = 0; i < kSides; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i + 0.5) / kSides;
    out.push_back({0.5 * diameter * std::cos(angle), 0.5 * diameter * std::sin(angle)});
  }
  return out;
}

/// From corner to corner.
Outline box(double y0, double z0, double y1, double z1) {
  return {{y0, z0}, {y1, z0}, {y1, z1}, {y0, z1}};
}

Outline centered(double width, double depth) {
  return box(-0.5 * width, -0.5 * depth, 0.5 * width, 0.5 * depth);
}

struct Drawn {
  std::vector<Outline> operator()(const sections::RoundBar& s) const {
    return {round_outline(s.diameter)};
  }
  std::vector<Outline> operator()(const sections::RoundTube& s) const {
    return {round_outline(s.outside)};
  }
  std::vector<Outline> operator()(const sections::RectangularTube& s) const {
    return {centered(s.width, s.depth)};
  }
  std::vector<Outline> operator()(const sections::FlatBar& s) const {
    return {centered(s.width, s.depth)};
  }
  std::vector<Outline> operator()(const sections::TwinPlate& s) const {
    const double inside = 0.5 * s.gap;
    const double outside = inside + s.thickness;
    return {box(-outside, -0.5 * s.depth, -inside, 0.5 * s.depth),
            box(inside, -0.5 * s.depth, outside, 0.5 * s.depth)};
  }
  std::vector<Outline> operator()(const sections::ByNumbers& s) const {
    return {round_outline(2.0 * std::sqrt(s.area / std::numbers::pi))};
  }
  std::vector<Outline> operator()(const sections::Channel& s) const {
    const double half = 0.5 * s.depth;
    return {box(0.0, -half, s.web, half), box(s.web, -half, s.width, s.flange - half),
            box(s.web, half - s.flange, s.width, half)};
  }
  std::vector<Outline> operator()(const sections::Angle& s) const {
    return {box(0.0, 0.0, s.wall, s.depth), box(s.wall, 0.0, s.width, s.wall)};
  }
  std::vector<Outline> operator()(const sections::BoxedChannel& s) const {
    const double half = 0.5 * s.depth;
    return {box(0.0, -half, s.width + s.plate, half)};
  }
  std::vector<Outline> operator()(const sections::ThinWalled& s) const {
    std::vector<Outline> out;
    for (std::size_t i = 0; i < s.walls.size(); ++i) {
      const auto& a = s.points[i];
      const auto& b = s.points[(i + 1) % s.points.size()];
      const double length = std::hypot(b[0] - a[0], b[1] - a[1]);
      const double y = -0.5 * s.walls[i] * (b[1] - a[1]) / length;
      const double z = 0.5 * s.walls[i] * (b[0] - a[0]) / length;
      out.push_back(
          {{a[0] - y, a[1] - z}, {b[0] - y, b[1] - z}, {b[0] + y, b[1] + z}, {a[0] + y, a[1] + z}});
    }
    return out;
  }
};

double area_of(const Outline& outline) {
  double twice = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto& a = outline[i];
    const auto& b = outline[(i + 1) % outline.size()];
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return 0.5 * twice;
}

/// Moves the parts' common center of area to the origin.
void center(std::vector<Outline>& all) {
  double area = 0.0;
  std::array<double, 2> moment = {0.0, 0.0};
  for (const Outline& outline : all) {
    // Each part is a box or has the symmetry of one.
    const double its = std::abs(area_of(outline));
    std::array<double, 2> middle = {0.0, 0.0};
    for (const auto& p : outline) {
      middle[0] += p[0] / static_cast<double>(outline.size());
      middle[1] += p[1] / static_cast<double>(outline.size());
    }
    area += its;
    moment[0] += its * middle[0];
    moment[1] += its * middle[1];
  }
  for (Outline& outline : all) {
    for (auto& p : outline) {
      p[0] -= moment[0] / area;
      p[1] -= moment[1] / area;
    }
  }
}

}  // namespace

std::vector<Outline> outlines(const sections::Shape& shape) {
  std::vector<Outline> all = std::visit(Drawn{}, shape);
  center(all);
  return all;
}

}  // namespace report
