#include "fea/mixing.hpp"

namespace fea {
namespace {

// A difference of which less than this is new says no more than rounding does.
constexpr double kNew = 1.0e-7;

}  // namespace

Mixing::Mixing(Eigen::Index size)
    : tos_(size, kMost), square_(size, kMost), left_(size), last_left_(size), last_to_(size) {}

void Mixing::restart() {
  known_ = 0;
  began_ = false;
}

void Mixing::next(const Eigen::VectorXd& from, Eigen::VectorXd& to) {
  left_ = to - from;
  learn(to);
  if (known_ > 0) to.noalias() -= tos_.leftCols(known_) * weights();
}

void Mixing::learn(const Eigen::VectorXd& to) {
  if (began_) {
    if (known_ == kMost) known_ = 0;
    tos_.col(known_) = to - last_to_;
    square_.col(known_) = left_ - last_left_;
    // What older ones say already counts for less than what is new.
    if (!make_square() && known_ > 0) {
      tos_.col(0) = to - last_to_;
      square_.col(0) = left_ - last_left_;
      known_ = 0;
      make_square();
    }
  }
  last_to_ = to;
  last_left_ = left_;
  began_ = true;
}

/// The newest difference square to those before. @return false where nothing of it is new
bool Mixing::make_square() {
  const Eigen::Index k = known_;
  auto column = square_.col(k);
  const double whole = column.norm();
  for (Eigen::Index j = 0; j < k; ++j) {
    upper_(j, k) = square_.col(j).dot(column);
    column -= upper_(j, k) * square_.col(j);
  }
  upper_(k, k) = column.norm();
  if (!(upper_(k, k) > kNew * whole)) return false;
  column /= upper_(k, k);
  ++known_;
  return true;
}

/// Least squares by orthogonal columns.
Mixing::Few Mixing::weights() const {
  Few out = square_.leftCols(known_).transpose() * left_;
  upper_.topLeftCorner(known_, known_).triangularView<Eigen::Upper>().solveInPlace(out);
  return out;
}

}  // namespace fea
