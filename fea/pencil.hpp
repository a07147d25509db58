#pragma once

#include "fea/system.hpp"

namespace fea {

/// The buckling problem (-Kg) x = mu K x in standard form: C y = mu y with
/// C = D^-1/2 L^-1 P (-Kg) P' L^-T D^-1/2 from the factor K = P' L D L' P. Keeps references.
class Pencil {
 public:
  /// @param geometric  scaled, lower triangle
  Pencil(const System& system, const Sparse& geometric);

  [[nodiscard]] Eigen::Index size() const { return roots_.size(); }
  [[nodiscard]] Eigen::VectorXd apply(const Eigen::VectorXd& y) const;
  /// The motion (full) that belongs to y.
  [[nodiscard]] Eigen::VectorXd motion(const Eigen::VectorXd& y) const;
  /// Largest magnitude of any mu, by power iteration: never above it, seldom much below.  [-]
  [[nodiscard]] double norm() const;

 private:
  [[nodiscard]] Eigen::VectorXd scaled_motion(const Eigen::VectorXd& y) const;

  const System& system_;
  const Sparse& geometric_;
  Eigen::VectorXd roots_;  // D^1/2
};

/// One solution of C y = mu y.
struct EigenPair {
  double mu = 0.0;
  Eigen::VectorXd vector;  ///< unit length
};

/// All pairs, ascending mu; for small systems.
[[nodiscard]] std::vector<EigenPair> all_pairs(const Pencil& pencil);

}  // namespace fea
