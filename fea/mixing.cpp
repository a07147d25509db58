#include "fea/mixing.hpp"

#include <Eigen/QR>

namespace fea {

Eigen::VectorXd Mixing::next(const Eigen::VectorXd& from, const Eigen::VectorXd& to) {
  constexpr std::size_t kMost = 6;
  last_.push_back({to, to - from});
  if (last_.size() > kMost) last_.erase(last_.begin());
  const auto n = static_cast<Eigen::Index>(last_.size()) - 1;
  if (n == 0) return to;
  Eigen::MatrixXd lefts(to.size(), n);
  Eigen::MatrixXd tos(to.size(), n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const Pair& a = last_[static_cast<std::size_t>(i)];
    const Pair& b = last_[static_cast<std::size_t>(i) + 1];
    lefts.col(i) = b.left - a.left;
    tos.col(i) = b.to - a.to;
  }
  const Eigen::VectorXd weights = lefts.colPivHouseholderQr().solve(last_.back().left);
  return to - tos * weights;
}

}  // namespace fea
