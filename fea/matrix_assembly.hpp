#pragma once

#include <vector>

#include <Eigen/SparseCore>

namespace fea {

using Sparse = Eigen::SparseMatrix<double>;

/// Dense square matrices over some unknowns each, in a fixed order.
using Blocks = std::vector<Eigen::MatrixXd>;

/// Where each entry of each block goes in the matrix of the whole model. Made once; the elastic and
/// the geometric stiffness share it, so they have the same pattern and can be added value by value.
class Assembly {
 public:
  Assembly() = default;
  /// @param unknowns  of each block, numbers in the whole model
  /// @param reduced   new number of every unknown, -1 where it is held
  /// @param n_free    count of those not held
  Assembly(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced,
           int n_free);

  /// @param blocks  in the order of `unknowns`, symmetric; an empty one counts as zero
  /// @return lower triangle, n_free square; zeros of the pattern are stored
  [[nodiscard]] Sparse sum(const Blocks& blocks) const;

 private:
  Sparse pattern_;
  std::vector<std::vector<int>> places_;  // index of the stored value, column by column; -1 = none
};

}  // namespace fea
