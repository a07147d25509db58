#include "fea/mixing.hpp"

#include <algorithm>

namespace fea {
namespace {

// A difference of which less than this is new says no more than rounding does.
constexpr double kNew = 1.0e-7;

}  // namespace

Mixing::Mixing(Eigen::Index size)
    : tos_(size, kMost),
      lefts_(size, kMost),
      square_(size, kMost),
      left_(size),
      last_left_(size),
      last_to_(size) {}

void Mixing::restart() {
  place_ = 0;
  known_ = 0;
  began_ = false;
}

void Mixing::next(const Eigen::VectorXd& from, Eigen::VectorXd& to) {
  left_ = to - from;
  learn(to);
  const Few weight = weights();
  for (Eigen::Index k = 0; k < known_; ++k) {
    if (weight(k) != 0.0) to -= weight(k) * tos_.col((place_ - 1 - k + kMost) % kMost);
  }
}

void Mixing::learn(const Eigen::VectorXd& to) {
  if (began_) {
    tos_.col(place_) = to - last_to_;
    lefts_.col(place_) = left_ - last_left_;
    place_ = (place_ + 1) % kMost;
    known_ = std::min(known_ + 1, kMost);
  }
  last_to_ = to;
  last_left_ = left_;
  began_ = true;
}

/// Least squares by orthogonal columns, the newest difference first.
Mixing::Few Mixing::weights() {
  Eigen::Matrix<double, kMost, kMost> upper;
  Few out = Few::Zero(known_);
  for (Eigen::Index k = 0; k < known_; ++k) {
    auto column = square_.col(k);
    column = lefts_.col((place_ - 1 - k + kMost) % kMost);
    const double whole = column.norm();
    for (Eigen::Index j = 0; j < k; ++j) {
      upper(j, k) = square_.col(j).dot(column);
      column -= upper(j, k) * square_.col(j);
    }
    upper(k, k) = column.norm();
    if (!(upper(k, k) > kNew * whole)) {
      upper(k, k) = 0.0;
      column.setZero();
      continue;
    }
    column /= upper(k, k);
    out(k) = column.dot(left_);
    left_ -= out(k) * column;
  }
  for (Eigen::Index k = known_ - 1; k >= 0; --k) {
    for (Eigen::Index j = k + 1; j < known_; ++j) out(k) -= upper(k, j) * out(j);
    out(k) = upper(k, k) > 0.0 ? out(k) / upper(k, k) : 0.0;
  }
  return out;
}

}  // namespace fea
