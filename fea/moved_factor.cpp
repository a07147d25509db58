#include "fea/moved_factor.hpp"

#include <cmath>

namespace fea {
namespace {

constexpr double kTrusted = 1.0e-14;  // a pivot nearer to zero may have either sign

Eigen::VectorXi reduced_numbers(const System& system) {
  Eigen::VectorXi out(system.n_unknowns());
  int next = 0;
  for (int i = 0; i < system.n_unknowns(); ++i) out(i) = system.held(i) ? -1 : next++;
  return out;
}

/// Square roots of what scales the system: D over the free unknowns.
Eigen::VectorXd free_scale(const System& system) {
  const Eigen::VectorXd full = system.from_scaled_motion(Eigen::VectorXd::Ones(system.n_free()));
  Eigen::VectorXd out(system.n_free());
  Eigen::Index next = 0;
  for (int i = 0; i < system.n_unknowns(); ++i) {
    if (!system.held(i)) out(next++) = full(i);
  }
  return out;
}

}  // namespace

MovedFactor::MovedFactor(const MovedFrame& frame)
    : system_(frame.system()),
      use_whole_(frame.has_dead_moment()),
      assembly_(frame.block_unknowns(), reduced_numbers(frame.system()), frame.system().n_free()),
      scale_(free_scale(frame.system())) {
  if (system_.n_free() > 0) symmetric_.analyzePattern(assembly_.sum({}));
}

Sparse MovedFactor::scaled(Sparse matrix) const {
  for (int column = 0; column < matrix.outerSize(); ++column) {
    for (Sparse::InnerIterator entry(matrix, column); entry; ++entry) {
      entry.valueRef() *= scale_(entry.row()) * scale_(column);
    }
  }
  return matrix;
}

Sparse MovedFactor::symmetric_part(const Blocks& tangent) const {
  Blocks blocks;
  blocks.reserve(tangent.size());
  for (const Eigen::MatrixXd& block : tangent) {
    blocks.emplace_back(0.5 * (block + block.transpose()));
  }
  return scaled(assembly_.sum(blocks));
}

Sparse MovedFactor::whole(const Blocks& tangent) const {
  Blocks turned;
  turned.reserve(tangent.size());
  for (const Eigen::MatrixXd& block : tangent) turned.emplace_back(block.transpose());
  const Sparse lower = assembly_.sum(tangent);
  const Sparse upper = Sparse(assembly_.sum(turned).transpose());
  return scaled(Sparse(lower + Sparse(upper.triangularView<Eigen::StrictlyUpper>())));
}

bool MovedFactor::factor_symmetric(const Blocks& tangent) {
  if (system_.n_free() == 0) return true;
  ++count_;
  symmetric_.factorize(symmetric_part(tangent));
  if (symmetric_.info() != Eigen::Success) return false;
  const Eigen::VectorXd pivots = symmetric_.vectorD();
  return pivots.allFinite() && pivots.cwiseAbs().minCoeff() > kTrusted;
}

bool MovedFactor::factor(const Blocks& tangent) {
  if (!use_whole_) return factor_symmetric(tangent);
  ++count_;
  const Sparse matrix = whole(tangent);
  whole_.compute(matrix);
  return whole_.info() == Eigen::Success;
}

Eigen::VectorXd MovedFactor::solve(const Eigen::VectorXd& force) const {
  const Eigen::VectorXd scaled_force = system_.to_scaled_force(force);
  const Eigen::VectorXd motion = use_whole_ ? Eigen::VectorXd(whole_.solve(scaled_force))
                                            : Eigen::VectorXd(symmetric_.solve(scaled_force));
  return system_.from_scaled_motion(motion);
}

std::optional<int> MovedFactor::n_negative(const Blocks& tangent) {
  if (!factor_symmetric(tangent)) return std::nullopt;
  if (system_.n_free() == 0) return 0;
  return static_cast<int>((symmetric_.vectorD().array() < 0.0).count());
}

Eigen::VectorXd MovedFactor::weakest_shape() const {
  constexpr int kSweeps = 30;
  // Spread over all directions, and the same every time.
  Eigen::VectorXd shape(system_.n_free());
  for (Eigen::Index i = 0; i < shape.size(); ++i) {
    shape(i) = std::sin(1.0 + 2.3 * static_cast<double>(i));
  }
  for (int i = 0; i < kSweeps; ++i) {
    const Eigen::VectorXd next = symmetric_.solve(shape);
    if (!next.allFinite() || next.norm() == 0.0) break;
    shape = next.normalized();
  }
  return system_.from_scaled_motion(shape);
}

}  // namespace fea
