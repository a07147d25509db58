#pragma once

#include "fea/system.hpp"

namespace fea {

/// The buckling problem (-Kg) x = mu K x in standard form: C y = mu y with
/// C = D^-1/2 L^-1 (-Kg) L^-T D^-1/2 from the factor K = L D L'. Keeps references.
class Pencil {
 public:
  /// @param geometric  scaled, lower triangle
  Pencil(const System& system, const Sparse& geometric);

  [[nodiscard]] Eigen::Index size() const { return inverse_roots_.size(); }
  [[nodiscard]] Eigen::VectorXd apply(const Eigen::VectorXd& y) const;
  /// The same into memory that is there.
  void apply(const Eigen::VectorXd& y, Eigen::VectorXd& out) const;
  /// C y of the y that belongs to a motion (full).
  void apply_to_motion(const Eigen::VectorXd& motion, Eigen::VectorXd& out) const;
  /// The motion (full) that belongs to y: of the strain energy 1/2 where y is of unit length.
  [[nodiscard]] Eigen::VectorXd motion(const Eigen::VectorXd& y) const;

 private:
  /// C y where motion_ belongs to y.
  void apply_to_scaled(Eigen::VectorXd& out) const;

  const System& system_;
  const Sparse& geometric_;
  Eigen::VectorXd inverse_roots_;   // D^-1/2
  mutable Eigen::VectorXd motion_;  // scaled, of the last y
};

/// One solution of C y = mu y.
struct EigenPair {
  double mu = 0.0;
  Eigen::VectorXd vector;  ///< unit length
};

/// All pairs, ascending mu; for small systems.
[[nodiscard]] std::vector<EigenPair> all_pairs(const Pencil& pencil);

}  // namespace fea
