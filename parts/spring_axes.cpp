#include "parts/spring_axes.hpp"

#include <cmath>

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

namespace parts {

fea::Matrix6 spring_stiffness(const PlainSpring& spring) {
  fea::Matrix6 k = fea::Matrix6::Zero();
  for (int i = 0; i < 6; ++i) k(i, i) = spring.rates[static_cast<std::size_t>(i)];
  for (const Coupling::Term& term : spring.coupled.terms) {
    k(term.row, term.column) = k(term.column, term.row) = term.value;
  }
  return k;
}

bool pushes_along(const PlainSpring& spring) {
  const fea::Matrix6 k = spring_stiffness(spring);
  // Scaled by the diagonal, so that m and rad can be judged together.
  fea::Vector6 scale;
  for (int i = 0; i < 6; ++i) scale(i) = k(i, i) > 0.0 ? 1.0 / std::sqrt(k(i, i)) : 1.0;
  const fea::Matrix6 scaled = scale.asDiagonal() * k * scale.asDiagonal();
  const Eigen::SelfAdjointEigenSolver<fea::Matrix6> modes(scaled, Eigen::EigenvaluesOnly);
  return modes.eigenvalues()(0) < -1.0e-9;
}

std::optional<fea::Matrix3> axes_of(const std::optional<fea::Vector3>& x_g,
                                    const std::optional<fea::Vector3>& z_g) {
  fea::Matrix3 axes = fea::Matrix3::Identity();
  if (!x_g && !z_g) return axes;
  constexpr double kSame = 1.0e-6;
  const auto other = [](const fea::Vector3& unit, const fea::Vector3& usual,
                        const fea::Vector3& instead) {
    return unit.cross(usual).norm() > 1.0e-3 ? usual : instead;
  };
  if (x_g) {
    axes.col(0) = x_g->normalized();
    const fea::Vector3 hint =
        z_g ? z_g->normalized() : other(axes.col(0), fea::Vector3::UnitZ(), fea::Vector3::UnitX());
    if (!(axes.col(0).cross(hint).norm() > kSame)) return std::nullopt;
    axes.col(1) = hint.cross(axes.col(0)).normalized();
    axes.col(2) = axes.col(0).cross(axes.col(1));
    return axes;
  }
  axes.col(2) = z_g->normalized();
  const fea::Vector3 hint = other(axes.col(2), fea::Vector3::UnitX(), fea::Vector3::UnitY());
  axes.col(1) = axes.col(2).cross(hint).normalized();
  axes.col(0) = axes.col(1).cross(axes.col(2));
  return axes;
}

}  // namespace parts
