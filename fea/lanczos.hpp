#pragma once

#include "fea/pencil.hpp"

namespace fea {

/// Pairs with the largest mu that are not among `known`, descending; those that converged.
/// @param norm       the pencil's norm(), > 0
/// @param count      how many to look for, < pencil.size()
/// @param tolerance  relative to `norm`
[[nodiscard]] std::vector<EigenPair> largest_pairs(const Pencil& pencil, double norm,
                                                   const std::vector<EigenPair>& known,
                                                   Eigen::Index count, double tolerance);

}  // namespace fea
