#include "fea/moved_factor.hpp"

#include <cmath>

namespace fea {
namespace {

constexpr double kTrusted = 1.0e-14;  // a pivot nearer to zero may have either sign

}  // namespace

MovedFactor::MovedFactor(const MovedFrame& frame)
    : system_(frame.system()),
      use_whole_(frame.has_dead_moment()),
      assembly_(frame.block_unknowns(), system_.places(), system_.n_free()),
      symmetric_(assembly_.pattern()) {
  assembly_.scale_by(system_.scale());
}

/// Lower triangle of the scaled sum.
Sparse MovedFactor::lower(const Blocks& tangent) const {
  Sparse out = assembly_.pattern();
  assembly_.add(tangent, 1.0, out.valuePtr());
  return out;
}

MovedFactor::Whole MovedFactor::whole(const Blocks& tangent) const {
  Blocks turned;
  turned.reserve(tangent.size());
  for (const Eigen::MatrixXd& block : tangent) turned.emplace_back(block.transpose());
  const Whole below = lower(tangent);
  const Whole above = lower(turned).transpose();
  return below + Whole(above.triangularView<Eigen::StrictlyUpper>());
}

bool MovedFactor::factor_symmetric(const Blocks& tangent) {
  if (system_.n_free() == 0) return true;
  ++count_;
  Blocks symmetric;
  symmetric.reserve(tangent.size());
  for (const Eigen::MatrixXd& block : tangent) {
    symmetric.emplace_back(0.5 * (block + block.transpose()));
  }
  if (!symmetric_.factorize(lower(symmetric).valuePtr())) return false;
  return symmetric_.pivots().cwiseAbs().minCoeff() > kTrusted;
}

bool MovedFactor::factor(const Blocks& tangent) {
  if (!use_whole_) return factor_symmetric(tangent);
  ++count_;
  whole_.compute(whole(tangent));
  return whole_.info() == Eigen::Success;
}

Eigen::VectorXd MovedFactor::solve(const Eigen::VectorXd& force) const {
  const Eigen::VectorXd scaled_force = system_.to_scaled_force(force);
  const Eigen::VectorXd motion =
      use_whole_ ? Eigen::VectorXd(whole_.solve(scaled_force)) : symmetric_.solve(scaled_force);
  return system_.from_scaled_motion(motion);
}

std::optional<int> MovedFactor::n_negative(const Blocks& tangent) {
  if (!factor_symmetric(tangent)) return std::nullopt;
  if (system_.n_free() == 0) return 0;
  return static_cast<int>((symmetric_.pivots().array() < 0.0).count());
}

Eigen::VectorXd MovedFactor::weakest_shape() const {
  constexpr int kPowerSweeps = 30;
  // Spread over all directions, and the same every time.
  Eigen::VectorXd shape(system_.n_free());
  for (Eigen::Index i = 0; i < shape.size(); ++i) {
    shape(i) = std::sin(1.0 + 2.3 * static_cast<double>(i));
  }
  for (int i = 0; i < kPowerSweeps; ++i) {
    const Eigen::VectorXd next = symmetric_.solve(shape);
    if (!next.allFinite() || next.norm() == 0.0) break;
    shape = next.normalized();
  }
  return system_.from_scaled_motion(shape);
}

}  // namespace fea
