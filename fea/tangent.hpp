#pragma once

#include <optional>

#include "fea/system.hpp"

namespace fea {

/// Factors K + s Kg of one system again and again, in the same memory.
class Tangent {
 public:
  explicit Tangent(const System& system);

  /// Factors scaled K + factor * geometric.
  /// @param geometric  values of the scaled matrix, in the stored order of System::scaled
  /// @return how many of its eigenvalues are negative; nothing when a pivot is too small to trust
  [[nodiscard]] std::optional<int> n_negative(const Eigen::Ref<const Eigen::VectorXd>& geometric,
                                              double factor);

  /// What was factored last.
  [[nodiscard]] const Ldlt& factor() const { return factor_; }

 private:
  const System& system_;
  Eigen::VectorXd values_;
  Ldlt factor_;
};

}  // namespace fea
