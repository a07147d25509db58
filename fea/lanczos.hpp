#pragma once

#include <Eigen/Eigenvalues>

#include "fea/pencil.hpp"

namespace fea {

/// What to look for at the two ends of the list of mu.
struct PairsWanted {
  Eigen::Index n_largest = 1;   ///< >= 1
  Eigen::Index n_smallest = 0;  ///< found in the same basis, or not at all
  /// Of mu, relative: of its error by the distance to the next one found. The error that no unseen
  /// pair can raise is at most its root.
  double tolerance = 1e-6;
  /// C y of a y near what is looked for, such as the sum of the vectors of a matrix like this one;
  /// none = one spread over all directions.
  const Eigen::VectorXd* start = nullptr;
};

struct EndPairs {
  std::vector<EigenPair> largest;   ///< descending mu; those that converged
  std::vector<EigenPair> smallest;  ///< ascending mu; none, or as many as were looked for
  /// Whether all of the largest that were looked for converged, or there are no others.
  bool all = false;
  double norm = 0.0;  ///< about the largest magnitude of any mu, never above it
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

/// Pairs at the ends that are not among `known`, by Lanczos' iteration: a short basis that is kept
/// square to all of itself first, Spectra's restarts where that does not do for the largest and no
/// start was given.
/// Source: Parlett, The Symmetric Eigenvalue Problem (1980), ch. 13 (from memory).
[[nodiscard]] EndPairs end_pairs(const Pencil& pencil, const std::vector<EigenPair>& known,
                                 const PairsWanted& wanted, LanczosMemory& memory);

}  // namespace fea
