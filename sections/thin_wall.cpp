#include "sections/thin_wall.hpp"

#include <algorithm>
#include <cmath>

namespace sections {
namespace {

constexpr std::array<std::size_t, 2> kBothAxes = {0, 1};

std::array<Point, 4> outline(const WallCorners& c) {
  return {c.right_start, c.right_end, c.left_end, c.left_start};
}

/// Adds a counterclockwise polygon, by Green's theorem along its sides.
template <typename Polygon>
void add(AreaIntegrals& sum, const Polygon& polygon) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point& a = polygon[i];
    const Point& b = polygon[(i + 1) % polygon.size()];
    const double twice = cross(a, b);
    sum.area += twice / 2.0;
    sum.sz += twice * (a[0] + b[0]) / 6.0;
    sum.sy += twice * (a[1] + b[1]) / 6.0;
    sum.izz += twice * (a[0] * a[0] + a[0] * b[0] + b[0] * b[0]) / 12.0;
    sum.iyy += twice * (a[1] * a[1] + a[1] * b[1] + b[1] * b[1]) / 12.0;
    sum.iyz += twice * (2.0 * a[0] * a[1] + a[0] * b[1] + b[0] * a[1] + 2.0 * b[0] * b[1]) / 24.0;
  }
}

/// From the axes as drawn to the principal ones, by under half of a right angle either way: y
/// stays nearest to y, whichever second moment is the larger.
double principal_angle(const AreaIntegrals& i) {
  constexpr double kRounding = 1e-10;
  const double size = i.iyy + i.izz;
  const double difference = i.izz - i.iyy;
  if (std::abs(i.iyz) <= kRounding * size) return 0.0;
  const double sign = difference < -kRounding * size ? -1.0 : 1.0;
  const double gap = std::abs(difference) <= kRounding * size ? 0.0 : std::abs(difference);
  return 0.5 * std::atan2(2.0 * sign * i.iyz, gap);
}

struct Axes {
  Point origin;
  double cosine;
  double sine;
  [[nodiscard]] Point turned(const Point& p) const {
    const double y = p[0] - origin[0];
    const double z = p[1] - origin[1];
    return {y * cosine + z * sine, z * cosine - y * sine};
  }
};

/// Integrals over the middle lines, for the shear flow, which must end at 0 where a line does.
AreaIntegrals of_middle_lines(const std::vector<FlowWall>& walls) {
  AreaIntegrals sum;
  for (const FlowWall& w : walls) {
    const double area = w.length * w.thickness;
    const Point a = w.start;
    const Point b = w.at(w.length);
    sum.area += area;
    sum.sz += area * (a[0] + b[0]) / 2.0;
    sum.sy += area * (a[1] + b[1]) / 2.0;
    sum.izz += area * (a[0] * a[0] + a[0] * b[0] + b[0] * b[0]) / 3.0;
    sum.iyy += area * (a[1] * a[1] + a[1] * b[1] + b[1] * b[1]) / 3.0;
    sum.iyz += area * (2.0 * a[0] * a[1] + a[0] * b[1] + b[0] * a[1] + 2.0 * b[0] * b[1]) / 6.0;
  }
  const double y = sum.sz / sum.area;
  const double z = sum.sy / sum.area;
  sum.izz -= sum.area * y * y;
  sum.iyy -= sum.area * z * z;
  sum.iyz -= sum.area * y * z;
  return sum;
}

/// Integral of a quadratic over a wall.
template <typename Quadratic>
double along(const FlowWall& w, Quadratic value) {
  return w.length / 6.0 * (value(0.0) + 4.0 * value(0.5 * w.length) + value(w.length));
}

}  // namespace

double FlowWall::flow(std::size_t axis, double along) const {
  const Point middle = at(0.5 * along);
  const double growth =
      load[axis][0] * (middle[0] - pole[0]) + load[axis][1] * (middle[1] - pole[1]);
  return flow_start[axis] - thickness * along * growth;
}

Point FlowWall::at(double along) const {
  return {start[0] + along * direction[0], start[1] + along * direction[1]};
}

ThinWall::ThinWall(const WallLine& line) {
  const std::vector<WallCorners> corners = mitered(line);
  for (const WallCorners& c : corners) add(drawn_, outline(c));
  const double a = drawn_.area;
  centroid_ = {drawn_.sz / a, drawn_.sy / a};
  drawn_.izz -= a * centroid_[0] * centroid_[0];
  drawn_.iyy -= a * centroid_[1] * centroid_[1];
  drawn_.iyz -= a * centroid_[0] * centroid_[1];
  drawn_.sy = 0.0;
  drawn_.sz = 0.0;
  angle_ = principal_angle(drawn_);
  turn_to_principal_axes(line, corners);
  find_torsion(line.closed);
  find_flows(line.closed);
}

void ThinWall::turn_to_principal_axes(const WallLine& line,
                                      const std::vector<WallCorners>& corners) {
  const Axes axes{centroid_, std::cos(angle_), std::sin(angle_)};
  const double c2 = axes.cosine * axes.cosine;
  const double s2 = axes.sine * axes.sine;
  const double mixed = 2.0 * axes.sine * axes.cosine * drawn_.iyz;
  iyy_ = c2 * drawn_.iyy + s2 * drawn_.izz - mixed;
  izz_ = c2 * drawn_.izz + s2 * drawn_.iyy + mixed;
  for (std::size_t i = 0; i < line.size(); ++i) {
    FlowWall w;
    w.start = axes.turned(line.start(i));
    const Point end = axes.turned(line.end(i));
    w.length = std::hypot(end[0] - w.start[0], end[1] - w.start[1]);
    w.direction = {(end[0] - w.start[0]) / w.length, (end[1] - w.start[1]) / w.length};
    w.thickness = line.thickness[i];
    w.corners = {axes.turned(corners[i].right_start), axes.turned(corners[i].left_start),
                 axes.turned(corners[i].right_end), axes.turned(corners[i].left_end)};
    walls_.push_back(w);
  }
}

void ThinWall::find_torsion(bool closed) {
  double strips = 0.0;
  double girth = 0.0;  // integral ds / t
  double twice = 0.0;  // enclosed area
  for (const FlowWall& w : walls_) {
    strips += w.length * std::pow(w.thickness, 3) / 3.0;
    girth += w.length / w.thickness;
    twice += w.length * cross(w.start, w.direction);
  }
  torsion_ = strips;
  if (!closed) return;
  torsion_ += twice * twice / girth;
  torsion_flow_ = twice / girth / torsion_;
}

void ThinWall::find_flows(bool closed) {
  const AreaIntegrals line = of_middle_lines(walls_);
  const double determinant = line.iyy * line.izz - line.iyz * line.iyz;
  const std::array<Point, 2> load = {Point{line.iyy / determinant, -line.iyz / determinant},
                                     Point{-line.iyz / determinant, line.izz / determinant}};
  for (const std::size_t axis : kBothAxes) {
    double flow = 0.0;
    double slip = 0.0;   // integral q ds / t
    double girth = 0.0;  // integral ds / t
    for (FlowWall& w : walls_) {
      w.pole = {line.sz / line.area, line.sy / line.area};
      w.load[axis] = load[axis];
      w.flow_start[axis] = flow;
      flow = w.flow(axis, w.length);
      slip += along(w, [&](double s) { return w.flow(axis, s); }) / w.thickness;
      girth += w.length / w.thickness;
    }
    double torque = 0.0;
    for (FlowWall& w : walls_) {
      if (closed) w.flow_start[axis] -= slip / girth;  // a cell that does not twist
      torque += cross(w.start, w.direction) * along(w, [&](double s) { return w.flow(axis, s); });
    }
    shear_center_[1 - axis] = axis == 0 ? -torque : torque;
  }
}

std::array<double, 2> ThinWall::reach() const {
  std::array<double, 2> farthest = {0.0, 0.0};
  for (const FlowWall& w : walls_) {
    for (const Point& p : outline(w.corners)) {
      for (const std::size_t axis : kBothAxes) {
        farthest[axis] = std::max(farthest[axis], std::abs(p[axis]));
      }
    }
  }
  return farthest;
}

std::array<double, 2> ThinWall::shear_areas() const {
  // The square of the flow is of degree 4: three Gauss points are exact.
  const double outer = std::sqrt(0.6);
  std::array<double, 2> areas = {};
  for (const std::size_t axis : kBothAxes) {
    double energy = 0.0;
    for (const FlowWall& w : walls_) {
      const auto square = [&](double at) {
        const double q = w.flow(axis, 0.5 * w.length * (1.0 + at));
        return q * q;
      };
      energy += w.length / (18.0 * w.thickness) *
                (5.0 * square(-outer) + 8.0 * square(0.0) + 5.0 * square(outer));
    }
    areas[axis] = 1.0 / energy;
  }
  return areas;
}

std::array<double, 2> ThinWall::above(std::size_t axis, double level) const {
  AreaIntegrals sum;
  std::vector<Point> part;
  for (const FlowWall& w : walls_) {
    part.clear();
    const std::array<Point, 4> whole = outline(w.corners);
    for (std::size_t i = 0; i < whole.size(); ++i) {
      const Point& a = whole[i];
      const Point& b = whole[(i + 1) % whole.size()];
      if (a[axis] > level) part.push_back(a);
      if ((a[axis] > level) == (b[axis] > level)) continue;
      const double share = (level - a[axis]) / (b[axis] - a[axis]);
      part.push_back({a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])});
    }
    add(sum, part);
  }
  return {sum.area, (axis == 0 ? sum.sz : sum.sy) - level * sum.area};
}

/// The level that halves the area: between two corners next to each other the area above a level is
/// of degree 2 in it.
double ThinWall::halving_level(std::size_t axis) const {
  std::vector<double> levels;
  for (const FlowWall& w : walls_) {
    for (const Point& p : outline(w.corners)) levels.push_back(p[axis]);
  }
  std::sort(levels.begin(), levels.end());
  const double half = 0.5 * area();
  const auto next = std::partition_point(levels.begin() + 1, levels.end() - 1, [&](double level) {
    return above(axis, level)[0] > half;
  });
  const double low = *std::prev(next);
  const double high = *next;
  const double at_low = above(axis, low)[0];
  const double at_high = above(axis, high)[0];
  const double square = 2.0 * (at_low + at_high - 2.0 * above(axis, 0.5 * (low + high))[0]);
  const double slope = at_high - at_low - square;
  const double left = at_low - half;
  if (!(left > 0.0)) return low;
  const double root = std::sqrt(std::max(0.0, slope * slope - 4.0 * square * left));
  return low + (high - low) * std::min(1.0, 2.0 * left / (root - slope));
}

double ThinWall::plastic_modulus(std::size_t axis) const {
  const double level = halving_level(axis);
  // The first moment about the level that halves the area, of the part above it and, turned to
  // the other sign, of the part below.
  return 2.0 * above(axis, level)[1] + area() * level;
}

double ThinWall::asymmetry(std::size_t axis) const {
  double cubes = 0.0;
  double squares = 0.0;
  for (const FlowWall& w : walls_) {
    // Simpson's rule is exact up to the third power.
    cubes += w.thickness * along(w, [&](double s) {
               const Point p = w.at(s);
               return p[axis] * (p[0] * p[0] + p[1] * p[1]);
             });
    squares += w.thickness * along(w, [&](double s) { return w.at(s)[axis] * w.at(s)[axis]; });
  }
  return cubes / squares - 2.0 * shear_center_[axis];
}

}  // namespace sections
