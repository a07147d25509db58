#pragma once

#include <vector>

#include "fea/matrix_assembly.hpp"

/// The floor that the solver is measured against: LAPACK's banded Cholesky factorization (dpbtrf,
/// dpbtrs) after reverse Cuthill-McKee.
namespace bench {

/// A symmetric matrix in LAPACK's lower band storage, its unknowns renumbered.
class BandCholesky {
 public:
  /// @param lower  lower triangle; positive definite
  explicit BandCholesky(const fea::Sparse& lower);

  [[nodiscard]] int n_below() const { return n_below_; }  ///< diagonals below the main one
  void load();                                            ///< the matrix into the factor's place
  void factorize();
  void solve(Eigen::VectorXd& x) const;  ///< x in the band's own numbering

  /// x renumbered, and back.
  [[nodiscard]] Eigen::VectorXd to_band(const Eigen::VectorXd& x) const;
  [[nodiscard]] Eigen::VectorXd from_band(const Eigen::VectorXd& x) const;

 private:
  std::vector<int> place_;  // in the band, of each unknown
  int n_below_ = 0;
  std::vector<double> matrix_;
  std::vector<double> factor_;
};

/// Place of each unknown in reverse Cuthill-McKee order.
/// Source: George and Liu, Computer Solution of Large Sparse Positive Definite Systems (1981),
/// ch. 4 (from memory).
[[nodiscard]] std::vector<int> reverse_cuthill_mckee(const fea::Sparse& lower);

}  // namespace bench
