#pragma once

#include <Eigen/Eigenvalues>

#include "fea/pencil.hpp"

namespace fea {

struct LargestPairs {
  std::vector<EigenPair> pairs;  ///< descending mu; those that converged
  bool all = false;              ///< whether every pair looked for did, or there are no others
  double norm = 0.0;             ///< about the largest magnitude of any mu, never above it
};

/// Memory of the iteration, used again for the next matrix of the same size.
struct LanczosMemory {
  Eigen::MatrixXd basis;
  Eigen::VectorXd diagonal;
  Eigen::VectorXd beside;
  Eigen::VectorXd start;
  Eigen::VectorXd here;
  Eigen::VectorXd next;
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> ritz;
};

/// Pairs with the largest mu that are not among `known`, by Lanczos' iteration: a short basis that
/// is kept square to all of itself first, Spectra's restarts where that does not do.
/// Source: Parlett, The Symmetric Eigenvalue Problem (1980), ch. 13 (from memory).
/// @param count      how many to look for, >= 1
/// @param tolerance  of mu, relative: of its error by the distance to the next one found. The error
///                   that no unseen pair can raise is at most its root.
[[nodiscard]] LargestPairs largest_pairs(const Pencil& pencil, const std::vector<EigenPair>& known,
                                         Eigen::Index count, double tolerance,
                                         LanczosMemory& memory);

}  // namespace fea
