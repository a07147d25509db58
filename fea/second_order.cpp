#include "fea/second_order.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <Eigen/Eigenvalues>
#include <Eigen/QR>

#include "fea/deformed_frame.hpp"
#include "fea/internal_force.hpp"
#include "fea/linear_motion.hpp"

namespace fea {
namespace {

// Factors tried, each with the forces that the one before has led to.
constexpr int kMostFactors = 3;
// So near to settling that the last round is left to do it, and so many of those.
constexpr double kNearlySettled = 0.1;
constexpr int kMostLast = 8;
// So many rounds in which the forces come no nearer to settling, and they are not waited for.
constexpr int kPatience = 8;
constexpr double kNearer = 0.5;
// Answers are looked at in the deformed place when the forces leave less than this of a stiffness,
// or when that differs so much from what the linear forces leave, as parts of the unloaded one.
constexpr double kSoft = 0.5;
constexpr double kShifted = 0.1;
// Of an answer's forces, in shapes that its matrix calls unstable.
constexpr double kMostPart = 1.0e-2;

/// The part of `x` in the eigenvectors of A with negative eigenvalues: those of A^-1, by subspace
/// iteration with a Rayleigh-Ritz step (Parlett, The Symmetric Eigenvalue Problem, ch. 14, from
/// memory). Nothing when they are not found.
/// @param factor  of A
/// @param count   of negative eigenvalues
std::optional<Eigen::VectorXd> negative_part(const Ldlt& factor, int count,
                                             const Eigen::VectorXd& x) {
  constexpr int kSpare = 3;
  constexpr int kMostRounds = 200;
  constexpr double kAccuracy = 1.0e-5;
  const Eigen::Index n = x.size();
  const Eigen::Index size = std::min<Eigen::Index>(n, count + kSpare);
  Eigen::MatrixXd basis(n, size);
  for (Eigen::Index column = 0; column < size; ++column) {
    for (Eigen::Index row = 0; row < n; ++row) {
      basis(row, column) = std::sin(static_cast<double>((row + 1) * (column + 1)));
    }
  }
  for (int round = 0; round < kMostRounds; ++round) {
    const Eigen::MatrixXd square = Eigen::HouseholderQR<Eigen::MatrixXd>(basis).householderQ() *
                                   Eigen::MatrixXd::Identity(n, size);
    for (Eigen::Index column = 0; column < size; ++column) {
      basis.col(column) = factor.solve(square.col(column));
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> ritz(square.transpose() * basis);
    if ((ritz.eigenvalues().array() < 0.0).count() != count) continue;
    const Eigen::MatrixXd turn = ritz.eigenvectors().leftCols(count);
    const Eigen::MatrixXd negative = square * turn;
    const Eigen::MatrixXd left =
        basis * turn - negative * ritz.eigenvalues().head(count).asDiagonal();
    const Eigen::ArrayXd size_of = ritz.eigenvalues().head(count).cwiseAbs().array();
    if ((left.colwise().norm().transpose().array() < kAccuracy * size_of).all()) {
      return negative * (negative.transpose() * x);
    }
  }
  return std::nullopt;
}

}  // namespace

SecondOrder::SecondOrder(std::shared_ptr<const System> system)
    : system_(std::move(system)),
      tangent_(*system_),
      force_(system_->n_free()),
      answer_(system_->n_free()),
      step_(system_->n_free()),
      motion_(system_->n_unknowns()),
      left_(system_->n_unknowns()),
      mixing_(system_->n_free()) {}

SolveStatus SecondOrder::run(const LoadCase& load_case, const Eigen::VectorXd& linear,
                             const Eigen::VectorXd* start, const SolveOptions& options) {
  n_factored_ = 0;
  imposes_ = !load_case.imposed.isZero(0.0);
  system_->to_scaled_force(load_case.vector, force_);
  stress_state(*system_, load_case, linear, state_);
  factor(load_case);
  bool doubtful = n_negative_ != 0;
  linear_pivots_ = tangent_.factor().pivots();
  if (start != nullptr) {
    motion_ = *start - load_case.imposed;
    system_->to_scaled_motion(motion_, answer_);
  } else {
    answer_ = force_;
    tangent_.factor().solve_in_place(answer_);
  }
  bool settled = false;
  for (int i = 0; i < kMostFactors && !settled; ++i) {
    settled = approach(load_case, options);
    factor(load_case);
    doubtful = doubtful || n_negative_ != 0;
  }
  if (settled && settle(load_case, options)) {
    if (!turns_little(*system_, motion_)) return SolveStatus::not_converged;
    const bool good = doubtful ? stands(load_case) : !delicate() || !falls(load_case);
    return good ? SolveStatus::converged : SolveStatus::unstable;
  }
  return doubtful ? SolveStatus::unstable : SolveStatus::not_converged;
}

/// From answer_, by the factor that is there: what is out of balance is solved for again and again,
/// until the forces, which state_ then holds, are about settled.
bool SecondOrder::approach(const LoadCase& load_case, const SolveOptions& options) {
  const double lever = system_->typical_length();
  mixing_.restart();
  double least = std::numeric_limits<double>::infinity();
  int waited = 0;
  for (int i = 0; i < options.max_iterations; ++i) {
    system_->from_scaled_motion(answer_, motion_);
    motion_ += load_case.imposed;
    stress_state(*system_, load_case, motion_, i == 0 ? state_ : next_);
    if (i > 0) {
      const double changed = change(state_, next_, lever);
      std::swap(state_, next_);
      if (changed <= kNearlySettled * options.tolerance) return true;
      waited = changed < kNearer * least ? 0 : waited + 1;
      least = std::min(least, changed);
      if (waited > kPatience) return false;
    }
    left_ = -load_case.vector;
    add_internal_force(*system_, load_case, &state_, motion_, left_);
    system_->to_scaled_force(left_, step_);
    step_ = -step_;
    tangent_.factor().solve_in_place(step_);
    step_ += answer_;
    mixing_.next(answer_, step_);
    std::swap(answer_, step_);
  }
  return false;
}

/// K + Kg with the forces of state_.
void SecondOrder::factor(const LoadCase& load_case) {
  scaled_geometric_stiffness(*system_, load_case, state_, geometric_);
  n_negative_ = tangent_.n_negative(geometric_, 1.0);
  ++n_factored_;
}

/// From the matrix factored last and the forces it was made of: answer_, by K + Kg itself.
bool SecondOrder::settle(const LoadCase& load_case, const SolveOptions& options) {
  mixing_.restart();
  for (int i = 0; i < kMostLast; ++i) {
    if (i > 0) factor(load_case);
    if (imposes_) {
      const Blocks geometric = geometric_stiffness(*system_, load_case, state_);
      system_->to_scaled_force(to_balance(*system_, load_case, geometric), force_);
    }
    step_ = force_;
    tangent_.factor().solve_in_place(step_);
    system_->from_scaled_motion(step_, motion_);
    motion_ += load_case.imposed;
    stress_state(*system_, load_case, motion_, next_);
    if (change(state_, next_, system_->typical_length()) <= options.tolerance) {
      std::swap(answer_, step_);
      return true;
    }
    mixing_.next(answer_, step_);
    std::swap(answer_, step_);
    system_->from_scaled_motion(answer_, motion_);
    motion_ += load_case.imposed;
    stress_state(*system_, load_case, motion_, state_);
  }
  return false;
}

/// Whether a stiffness (of one unknown, with those eliminated before it free) is mostly gone, or is
/// not what the linear forces leave of it.
bool SecondOrder::delicate() const {
  const auto now = tangent_.factor().pivots().array();
  const auto unloaded = system_->factor().pivots().array();
  return (now < kSoft * unloaded || (now - linear_pivots_.array()).abs() > kShifted * unloaded)
      .any();
}

/// Whether the deformed frame is seen not to be stable.
bool SecondOrder::falls(const LoadCase& load_case) const {
  return n_negative_deformed(*system_, load_case, motion_, next_).value_or(0) != 0;
}

/// Whether an answer that came by negative pivots is one.
bool SecondOrder::stands(const LoadCase& load_case) const {
  if (n_negative_deformed(*system_, load_case, motion_, next_) != 0) return false;
  if (n_negative_ == 0) return true;
  const std::optional<Eigen::VectorXd> unstable =
      n_negative_ ? negative_part(tangent_.factor(), *n_negative_, answer_) : std::nullopt;
  if (!unstable) return false;
  const Eigen::VectorXd without = motion_ - system_->from_scaled_motion(*unstable);
  return change(stress_state(*system_, load_case, without), next_, system_->typical_length()) <=
         kMostPart;
}

}  // namespace fea
