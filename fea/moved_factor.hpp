#pragma once

#include <optional>
#include <vector>

#include <Eigen/SparseCore>

#include "fea/ldlt.hpp"
#include "fea/mixing.hpp"
#include "fea/moved_frame.hpp"

namespace fea {

/// Factors of a moved frame's tangent: its symmetric part (LDL'). In equilibrium under loads with a
/// potential the tangent is symmetric, so what is left out vanishes as fast as the unbalanced
/// forces, and Newton's steps stay quadratic. Where a load keeps a moment about fixed axes that
/// does not hold: what is not symmetric is brought back in by refinement, which settles in a few
/// rounds as such moments are small beside the stiffness they turn; the whole (LU) where they are
/// not. Source of the symmetry: Simo and Vu-Quoc, Comput. Methods Appl. Mech. Eng. 58 (1986) (notes
/// of it read).
class MovedFactor {
 public:
  /// Keeps references to what the frame shares.
  explicit MovedFactor(const MovedFrame& frame);
  /// For another frame that shares the same.
  void start_anew(const MovedFrame& frame);

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
  [[nodiscard]] Whole whole() const;
  [[nodiscard]] bool factor_symmetric();
  void find_skew();
  [[nodiscard]] std::optional<Eigen::VectorXd> refined(const Eigen::VectorXd& scaled_force) const;

  const System& system_;
  const Assembly& assembly_;
  bool refines_ = false;
  Ldlt symmetric_;
  // Lower triangles of the tangent last factored, scaled.
  Sparse below_symmetric_;
  Sparse below_skew_;
  std::vector<SkewEntry> skew_;  ///< what of it is not rounding
  mutable Mixing mixing_;
  mutable Eigen::VectorXd next_;  ///< scaled
  int count_ = 0;
};

}  // namespace fea
