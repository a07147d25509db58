#pragma once

#include <optional>

#include <Eigen/SparseLU>

#include "fea/ldlt.hpp"
#include "fea/moved_frame.hpp"

namespace fea {

/// Factors of a moved frame's tangent. Newton's steps take the symmetric part (LDL'): in
/// equilibrium under loads with a potential the tangent is symmetric, so what is left out vanishes
/// as fast as the unbalanced forces, steps stay quadratic, and the factor is a third of the price.
/// Where a load keeps a moment about fixed axes that does not hold, and the whole tangent is
/// factored (LU). Source of the symmetry: Simo and Vu-Quoc, Comput. Methods Appl. Mech. Eng. 58
/// (1986) (notes of it read).
class MovedFactor {
 public:
  explicit MovedFactor(const MovedFrame& frame);

  /// @return false when the tangent is singular
  [[nodiscard]] bool factor(const Blocks& tangent);
  /// Of the tangent last factored; full vectors.
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& force) const;

  /// Factors the symmetric part alone and counts its negative eigenvalues; nothing when a pivot is
  /// too small to trust. None is negative: no way out of the state, also under moments about fixed
  /// axes (for a system without a potential that is on the cautious side).
  [[nodiscard]] std::optional<int> n_negative(const Blocks& tangent);
  /// The shape that the symmetric part resists least, or is farthest from resisting, full; after
  /// n_negative.
  [[nodiscard]] Eigen::VectorXd weakest_shape() const;

  [[nodiscard]] int count() const { return count_; }  ///< factorizations so far

 private:
  using Whole = Eigen::SparseMatrix<double>;
  [[nodiscard]] Sparse lower(const Blocks& tangent) const;
  [[nodiscard]] Whole whole(const Blocks& tangent) const;
  [[nodiscard]] bool factor_symmetric(const Blocks& tangent);

  const System& system_;
  bool use_whole_;
  Assembly assembly_;
  Ldlt symmetric_;
  Eigen::SparseLU<Whole> whole_;
  int count_ = 0;
};

}  // namespace fea
