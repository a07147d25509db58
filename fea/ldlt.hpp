#pragma once

#include <memory>

#include "fea/matrix_assembly.hpp"

namespace fea {

/// K = L D L' of symmetric matrices of one pattern, one after another in the same memory. Pivots
/// are taken as they come, so their signs count the negative eigenvalues (Sylvester's law of
/// inertia); unknowns are eliminated in their own order, so number them well first
/// (elimination_order). The columns of one pattern (the freedoms of a node) together as a dense
/// front; what they leave of the other columns is taken off those at once. Source: Davis, Direct
/// Methods for Sparse Linear Systems (2006), ch. 4 and 6 (supernodal, right-looking Cholesky; from
/// memory).
class Ldlt {
 public:
  Ldlt() = default;
  /// Looks at the pattern and takes the memory.
  /// @param lower  lower triangle; every diagonal entry stored
  explicit Ldlt(const Sparse& lower);

  /// @param values  of a matrix of that pattern, in its stored order
  /// @return whether every pivot is finite and not zero
  bool factorize(const double* values);
  /// For matrices of the same pattern, in memory of its own; nothing is factored.
  [[nodiscard]] Ldlt empty_like() const;

  [[nodiscard]] Eigen::Index size() const { return pivots_.size(); }
  [[nodiscard]] const Eigen::VectorXd& pivots() const { return pivots_; }
  /// Values of L on and below the diagonal.
  [[nodiscard]] std::size_t n_nonzeros() const;
  /// Memory of L (the unused halves of diagonal blocks included), its indices and the pivots.
  /// [byte]
  [[nodiscard]] std::size_t n_bytes() const;

  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& force) const;
  void solve_in_place(Eigen::VectorXd& x) const;
  void solve_lower_in_place(Eigen::VectorXd& x) const;  ///< x = L^-1 x
  void solve_upper_in_place(Eigen::VectorXd& x) const;  ///< x = L'^-1 x

 private:
  struct Pattern;
  void take_memory(Eigen::Index n);
  bool eliminate(int group);
  void pass_on(int group);

  std::shared_ptr<const Pattern> pattern_;
  Eigen::VectorXd fronts_;  ///< L, a group's columns after another's, upper triangles unused
  Eigen::VectorXd work_;
  Eigen::VectorXd pivots_;
  Eigen::VectorXd inverse_pivots_;
};

}  // namespace fea
