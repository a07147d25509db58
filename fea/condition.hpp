#pragma once

#include <string>

#include "fea/solver.hpp"

namespace fea {

/// How much of the arithmetic's 16 digits the equations of a model can cost.
struct Condition {
  /// Estimate of the 1-norm condition number of the scaled stiffness: about log10 of it digits of
  /// a displacement may be lost. 1 for a model without freedoms.  [-]
  double number = 1.0;
  /// What costs most of them: "beam `tube` can nearly turn about its own axis; spring `spin` alone
  /// resists it, 2e+09 times softer than beam `tube`".
  std::string cause;
};

/// Above this the answer says that the model is ill-conditioned, and why: six digits are left.
inline constexpr double kIllConditioned = 1.0e10;

/// Source: Hager (1984) as improved by Higham, Accuracy and Stability of Numerical Algorithms,
/// 2nd ed. (2002), algorithm 15.1 (from memory): never above the true number, seldom below a third.
[[nodiscard]] Condition condition(const Factored& factored);

/// What a factor takes.
struct FactorSize {
  long long unknowns = 0;  ///< free ones
  long long nonzeros = 0;  ///< of the triangular factor, its diagonal included
  long long bytes = 0;     ///< values, diagonal, row numbers, where groups of columns start
  [[nodiscard]] double bytes_per_nonzero() const {
    return nonzeros > 0 ? static_cast<double>(bytes) / static_cast<double>(nonzeros) : 0.0;
  }
};
[[nodiscard]] FactorSize factor_size(const Factored& factored);

}  // namespace fea
