#pragma once

#include <Eigen/Core>

namespace fea {

/// Two nodes, and a joint with all six components free at either end.
inline constexpr int kMostUnknowns = 24;

// For intermediate results over the unknowns of one beam or spring: not on the heap.
template <int Rows>
using OverUnknowns =
    Eigen::Matrix<double, Rows, Eigen::Dynamic, Eigen::ColMajor, Rows, kMostUnknowns>;
using BlockVector = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMostUnknowns, 1>;
using BlockMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::ColMajor,
                                  kMostUnknowns, kMostUnknowns>;

[[nodiscard]] constexpr int triangle_size(int n) {
  return n * (n + 1) / 2;
}
/// Lower triangle of a symmetric BlockMatrix, column by column.
using Triangle =
    Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, triangle_size(kMostUnknowns), 1>;
template <class Symmetric>
[[nodiscard]] Triangle lower_triangle(const Eigen::MatrixBase<Symmetric>& block) {
  const auto n = static_cast<int>(block.rows());
  Triangle out(triangle_size(n));
  Eigen::Index next = 0;
  for (Eigen::Index column = 0; column < n; ++column) {
    out.segment(next, n - column) = block.col(column).tail(n - column);
    next += n - column;
  }
  return out;
}

/// The unknowns of one beam or spring out of all; an indexed view would copy the numbers.
[[nodiscard]] inline BlockVector gathered(const Eigen::VectorXd& full,
                                          const Eigen::VectorXi& unknowns) {
  BlockVector out(unknowns.size());
  for (Eigen::Index i = 0; i < out.size(); ++i) out(i) = full(unknowns(i));
  return out;
}

}  // namespace fea
