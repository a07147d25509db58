#pragma once

#include <optional>

#include "fea/system.hpp"

namespace fea {

/// Factors K + s Kg of one system again and again; the pattern is looked at once.
class Tangent {
 public:
  explicit Tangent(const System& system);

  /// Factors scaled K + factor * geometric.
  /// @param geometric  scaled, the same pattern as System::scaled
  /// @return how many of its eigenvalues are negative; nothing when a pivot is too small to trust
  [[nodiscard]] std::optional<int> n_negative(const Sparse& geometric, double factor);

  /// Solution (full) of the system last factored, which must have had no negative eigenvalue.
  [[nodiscard]] Eigen::VectorXd solve(const Eigen::VectorXd& force) const;

 private:
  const System& system_;
  Ldlt factor_;
};

}  // namespace fea
