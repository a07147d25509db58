#include "fea/tangent.hpp"

namespace fea {
namespace {

constexpr double kTrusted = 1.0e-14;  // a pivot nearer to zero may have either sign

}  // namespace

Tangent::Tangent(const System& system) : system_(system) {
  factor_.analyzePattern(system.scaled());
}

std::optional<int> Tangent::n_negative(const Sparse& geometric, double factor) {
  Sparse sum = system_.scaled();
  Eigen::Map<Eigen::VectorXd>(sum.valuePtr(), sum.nonZeros()) +=
      factor * Eigen::Map<const Eigen::VectorXd>(geometric.valuePtr(), geometric.nonZeros());
  factor_.factorize(sum);
  if (factor_.info() != Eigen::Success) return std::nullopt;
  const Eigen::VectorXd pivots = factor_.vectorD();
  if (!pivots.allFinite() || pivots.cwiseAbs().minCoeff() < kTrusted) return std::nullopt;
  return static_cast<int>((pivots.array() < 0.0).count());
}

Eigen::VectorXd Tangent::solve(const Eigen::VectorXd& force) const {
  return system_.from_scaled_motion(factor_.solve(system_.to_scaled_force(force)));
}

}  // namespace fea
