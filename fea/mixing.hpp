#pragma once

#include <Eigen/Core>

namespace fea {

/// Anderson's mixing of a fixed-point iteration u = g(u): the next u from the last few, so that
/// what is left over would vanish were g linear. A few directions along which plain iteration runs
/// away do no harm. Asks for memory only when made.
/// Source: Walker and Ni, SIAM J. Numer. Anal. 49 (2011), algorithm AA (from memory).
class Mixing {
 public:
  /// @param size  of u
  explicit Mixing(Eigen::Index size);

  /// Forgets all.
  void restart();

  /// @param from  u
  /// @param to    g(u); becomes the next u
  void next(const Eigen::VectorXd& from, Eigen::VectorXd& to);

 private:
  static constexpr Eigen::Index kMost = 12;
  using Few = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMost, 1>;

  void learn(const Eigen::VectorXd& to);
  bool make_square();
  [[nodiscard]] Few weights() const;

  // Differences from one u to the next.
  Eigen::MatrixXd tos_;     ///< of g(u)
  Eigen::MatrixXd square_;  ///< of what is left over, g(u) - u, made square to each other
  Eigen::Matrix<double, kMost, kMost> upper_;  ///< and how they were made of them
  Eigen::VectorXd left_;
  Eigen::VectorXd last_left_;
  Eigen::VectorXd last_to_;
  Eigen::Index known_ = 0;
  bool began_ = false;
};

}  // namespace fea
