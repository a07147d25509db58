#include "fea/moved_factor.hpp"

#include <cmath>
#include <utility>

#include <Eigen/SparseLU>

namespace fea {
namespace {

constexpr double kTrusted = 1.0e-14;  // a pivot nearer to zero may have either sign
// Change of a refined answer, of itself: Newton's next step makes good what is left.
constexpr double kRefined = 1.0e-5;
constexpr int kMostRefinements = 20;
constexpr double kNoSkew = 1.0e-14;  // of a scaled matrix, whose diagonal is about 1: rounding

}  // namespace

MovedFactor::MovedFactor(const MovedFrame& frame)
    : system_(frame.system()),
      assembly_(frame.shared().assembly),
      symmetric_(frame.shared().blank.empty_like()),
      below_symmetric_(assembly_.pattern()),
      below_skew_(assembly_.pattern()),
      mixing_(system_.n_free()) {
  start_anew(frame);
}

void MovedFactor::start_anew(const MovedFrame& frame) {
  refines_ = frame.has_dead_moment();
  count_ = 0;
}

MovedFactor::Whole MovedFactor::whole() const {
  const Whole below = below_symmetric_ + below_skew_;
  const Whole above = Sparse(below_symmetric_ - below_skew_).transpose();
  return below + Whole(above.triangularView<Eigen::StrictlyUpper>());
}

bool MovedFactor::factor_symmetric() {
  if (system_.n_free() == 0) return true;
  ++count_;
  if (!symmetric_.factorize(below_symmetric_.valuePtr())) return false;
  return symmetric_.pivots().cwiseAbs().minCoeff() > kTrusted;
}

bool MovedFactor::factor(const Blocks& tangent) {
  below_symmetric_.coeffs().setZero();
  below_skew_.coeffs().setZero();
  assembly_.add_parts(tangent, below_symmetric_.valuePtr(),
                      refines_ ? below_skew_.valuePtr() : nullptr);
  if (refines_) find_skew();
  return factor_symmetric();
}

/// Away from the loads' dead moments equilibrium leaves next to nothing.
void MovedFactor::find_skew() {
  skew_.clear();
  for (int row = 0; row < static_cast<int>(below_skew_.rows()); ++row) {
    const int diagonal = below_skew_.outerIndexPtr()[row + 1] - 1;  // the last of its row
    for (int k = below_skew_.outerIndexPtr()[row]; k < diagonal; ++k) {
      const double value = below_skew_.valuePtr()[k];
      if (std::abs(value) > kNoSkew) skew_.push_back({row, below_skew_.innerIndexPtr()[k], value});
    }
  }
}

/// Refined until it no longer changes; nothing when it goes on changing.
std::optional<Eigen::VectorXd> MovedFactor::refined(const Eigen::VectorXd& scaled_force) const {
  Eigen::VectorXd motion = symmetric_.solve(scaled_force);
  mixing_.restart();
  for (int i = 0; i < kMostRefinements; ++i) {
    next_ = scaled_force;
    subtract_skew_product(skew_, motion, next_);
    symmetric_.solve_in_place(next_);
    if ((next_ - motion).norm() <= kRefined * next_.norm()) return next_;
    mixing_.next(motion, next_);
    std::swap(motion, next_);
  }
  return std::nullopt;
}

Eigen::VectorXd MovedFactor::solve(const Eigen::VectorXd& force) const {
  const Eigen::VectorXd scaled_force = system_.to_scaled_force(force);
  if (!refines_) return system_.from_scaled_motion(symmetric_.solve(scaled_force));
  if (const std::optional<Eigen::VectorXd> motion = refined(scaled_force)) {
    return system_.from_scaled_motion(*motion);
  }
  const Eigen::SparseLU<Whole> whole_factor(whole());
  if (whole_factor.info() != Eigen::Success) {
    return Eigen::VectorXd::Constant(system_.n_unknowns(), base::kUnset);
  }
  return system_.from_scaled_motion(whole_factor.solve(scaled_force));
}

std::optional<int> MovedFactor::n_negative(const Blocks& tangent) {
  below_symmetric_.coeffs().setZero();
  assembly_.add_parts(tangent, below_symmetric_.valuePtr(), nullptr);
  if (!factor_symmetric()) return std::nullopt;
  if (system_.n_free() == 0) return 0;
  return static_cast<int>((symmetric_.pivots().array() < 0.0).count());
}

Eigen::VectorXd MovedFactor::weakest_shape() const {
  constexpr int kPowerSweeps = 30;
  // Spread over all directions, and the same every time.
  Eigen::VectorXd shape(system_.n_free());
  for (Eigen::Index i = 0; i < shape.size(); ++i) {
    shape(i) = std::sin(1.0 + 2.3 * static_cast<double>(i));
  }
  for (int i = 0; i < kPowerSweeps; ++i) {
    const Eigen::VectorXd next = symmetric_.solve(shape);
    if (!next.allFinite() || next.norm() == 0.0) break;
    shape = next.normalized();
  }
  return system_.from_scaled_motion(shape);
}

}  // namespace fea
