#include "checks/saddle_weld.hpp"

#include <cmath>

#include "base/invariant.hpp"

namespace checks {
namespace {

constexpr int kChords = 180;
// Cosine of 45 degrees between the surfaces' normals, which is 135 between the surfaces.
constexpr double kMostSkewed = 0.70710678;

Eigen::Vector3d saddle_point(double radius, double around, double turn) {
  const double side = radius * std::sin(turn);
  return {around - std::sqrt(around * around - side * side), side, radius * std::cos(turn)};
}

}  // namespace

std::vector<WeldLine> saddle_weld(double radius, double around, double leg) {
  INVARIANT(radius > 0.0 && around >= radius && leg > 0.0);
  std::vector<WeldLine> lines;
  for (int i = 0; i < kChords; ++i) {
    const double from = 2.0 * base::kPi * i / kChords;
    const double to = 2.0 * base::kPi * (i + 1) / kChords;
    const double sine = std::sin(0.5 * (from + to));
    const double normals = radius / around * sine * sine;  // cosine of the angle between them
    if (normals > kMostSkewed) continue;
    const double throat = leg * std::sin(0.5 * std::acos(normals));
    lines.push_back({saddle_point(radius, around, from), saddle_point(radius, around, to),
                     std::sqrt(2.0) * throat});
  }
  return lines;
}

double saddle_length(double radius, double around) {
  INVARIANT(radius > 0.0 && around >= radius);
  constexpr int kSteps = 720;
  double sum = 0.0;
  for (int i = 0; i < kSteps; ++i) {
    sum += (saddle_point(radius, around, 2.0 * base::kPi * (i + 1) / kSteps) -
            saddle_point(radius, around, 2.0 * base::kPi * i / kSteps))
               .norm();
  }
  return sum;
}

double uneven_saddle(double leg, double wall) {
  constexpr double kUneven = 1.5;
  constexpr double kDevelops = 1.1;
  return leg / std::sqrt(2.0) >= kDevelops * wall ? 1.0 : kUneven;
}

}  // namespace checks
