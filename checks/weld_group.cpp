#include "checks/weld_group.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

#include "base/invariant.hpp"

namespace checks {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr int kRingChords = 72;
// Far above rounding, far below any weld: a group of 100 mm lines 0.1 mm apart stays over it.
constexpr double kFlat = 1e-8;
constexpr double kNoMoment = 1e-6;

/// Second moment of a line about the origin, per unit throat.
Matrix3d line_second_moment(const WeldLine& line, const Vector3d& origin) {
  const Vector3d c = 0.5 * (line.from + line.to) - origin;
  const Vector3d v = line.to - line.from;
  return line.length() * (c * c.transpose() + v * v.transpose() / 12.0);
}

bool is_diagonal(const Matrix3d& m) {
  const Matrix3d off = m - Matrix3d(m.diagonal().asDiagonal());
  return off.cwiseAbs().maxCoeff() <= 1e-9 * m.diagonal().maxCoeff();
}

void choose_axes(WeldProperties& p) {
  p.given_axes = is_diagonal(p.inertia);
  if (p.given_axes) {
    p.axes = Matrix3d::Identity();
    p.moments = p.inertia.diagonal();
  } else {
    const Eigen::SelfAdjointEigenSolver<Matrix3d> solver(p.inertia);
    p.axes = solver.eigenvectors();
    p.axes.col(2) = p.axes.col(0).cross(p.axes.col(1));
    p.moments = solver.eigenvalues();
  }
  const double largest = p.moments.maxCoeff();
  for (int i = 0; i < 3; ++i) {
    if (p.moments[i] < kFlat * largest) p.moments[i] = 0.0;
  }
}

}  // namespace

double WeldLine::throat() const {
  return is_groove() ? groove : leg / std::sqrt(2.0);
}

void make_grooves(std::vector<WeldLine>& lines, double throat) {
  for (WeldLine& line : lines) {
    line.leg = base::kUnset;
    line.groove = throat;
  }
}

std::vector<WeldLine> ring_weld(const Vector3d& center, const Vector3d& axis, double radius,
                                double leg) {
  const Vector3d e1 = axis.unitOrthogonal();
  const Vector3d e2 = axis.normalized().cross(e1);
  std::vector<WeldLine> lines;
  const auto corner = [&](int i) -> Vector3d {
    const double u = 2.0 * base::kPi * i / kRingChords;
    return center + radius * (std::cos(u) * e1 + std::sin(u) * e2);
  };
  for (int i = 0; i < kRingChords; ++i) lines.push_back({corner(i), corner(i + 1), leg});
  return lines;
}

WeldProperties weld_properties(const std::vector<WeldLine>& lines) {
  INVARIANT(!lines.empty());
  WeldProperties p;
  p.area = 0.0;
  p.centroid = Vector3d::Zero();
  for (const WeldLine& line : lines) {
    INVARIANT(line.length() > 0.0 && line.throat() > 0.0);
    const double area = line.throat() * line.length();
    p.area += area;
    p.centroid += area * 0.5 * (line.from + line.to);
  }
  p.centroid /= p.area;
  Matrix3d second = Matrix3d::Zero();
  for (const WeldLine& line : lines) second += line.throat() * line_second_moment(line, p.centroid);
  p.inertia = second.trace() * Matrix3d::Identity() - second;
  choose_axes(p);
  return p;
}

double directional_increase(const Vector3d& line, const Vector3d& stress) {
  const double sine = line.cross(stress).norm() / (line.norm() * stress.norm());
  return 1.0 + 0.50 * std::pow(std::min(sine, 1.0), 1.5);
}

std::optional<ThroatStress> worst_throat_stress(const WeldGroup& group, const Wrench& wrench,
                                                bool directional) {
  const WeldProperties p = weld_properties(group.lines);
  const Vector3d arm = wrench.at - p.centroid;
  const Vector3d force = p.axes.transpose() * wrench.force;
  const Vector3d moment = p.axes.transpose() * (wrench.moment + arm.cross(wrench.force));
  const double reach = std::sqrt(p.moments.maxCoeff() / p.area);
  Vector3d turn = Vector3d::Zero();
  for (int i = 0; i < 3; ++i) {
    if (p.moments[i] > 0.0) {
      turn[i] = moment[i] / p.moments[i];
    } else if (std::abs(moment[i]) > kNoMoment * (moment.norm() + reach * force.norm())) {
      return std::nullopt;
    }
  }
  ThroatStress worst;
  double most = -1.0;
  for (std::size_t i = 0; i < group.lines.size(); ++i) {
    // The stress is linear along a line, so its length is largest at an end; over kds it need not
    // be.
    const int steps = directional ? 16 : 1;
    for (int k = 0; k <= steps; ++k) {
      const double part = static_cast<double>(k) / steps;
      const Vector3d point = (1.0 - part) * group.lines[i].from + part * group.lines[i].to;
      const Vector3d r = p.axes.transpose() * (point - p.centroid);
      const Vector3d stress = force / p.area + turn.cross(r);
      double increase = 1.0;
      if (directional && stress.norm() > 0.0) {
        const Vector3d line = group.lines[i].to - group.lines[i].from;
        increase = directional_increase(p.axes.transpose() * line, stress);
      }
      if (stress.norm() / increase > most * (1.0 + 1e-12)) {
        most = stress.norm() / increase;
        worst = {i, point, stress, stress.norm(), increase};
      }
    }
  }
  return worst;
}

}  // namespace checks
