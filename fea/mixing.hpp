#pragma once

#include <vector>

#include <Eigen/Core>

namespace fea {

/// Anderson's mixing of a fixed-point iteration u = g(u): the next u from the last few, so that
/// what is left over would vanish were g linear. A few directions along which plain iteration runs
/// away do no harm.
/// Source: Walker and Ni, SIAM J. Numer. Anal. 49 (2011), algorithm AA (from memory).
class Mixing {
 public:
  /// @param from  u
  /// @param to    g(u)
  /// @return the next u
  [[nodiscard]] Eigen::VectorXd next(const Eigen::VectorXd& from, const Eigen::VectorXd& to);

 private:
  struct Pair {
    Eigen::VectorXd to;
    Eigen::VectorXd left;  ///< to - from
  };
  std::vector<Pair> last_;
};

}  // namespace fea
