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

/// The unknowns of one beam or spring out of all; an indexed view would copy the numbers.
[[nodiscard]] inline BlockVector gathered(const Eigen::VectorXd& full,
                                          const Eigen::VectorXi& unknowns) {
  BlockVector out(unknowns.size());
  for (Eigen::Index i = 0; i < out.size(); ++i) out(i) = full(unknowns(i));
  return out;
}

}  // namespace fea
