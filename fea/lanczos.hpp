#pragma once

#include "fea/pencil.hpp"

namespace fea {

struct LargestPairs {
  std::vector<EigenPair> pairs;  ///< descending mu; those that converged
  bool all = false;              ///< whether every pair looked for did
};

/// Pairs with the largest mu that are not among `known`.
/// @param norm       the pencil's norm(), > 0
/// @param count      how many to look for, < pencil.size()
/// @param tolerance  relative to `norm`
[[nodiscard]] LargestPairs largest_pairs(const Pencil& pencil, double norm,
                                         const std::vector<EigenPair>& known, Eigen::Index count,
                                         double tolerance);

}  // namespace fea
