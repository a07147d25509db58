#include "fea/second_order.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <Eigen/Eigenvalues>
#include <Eigen/QR>

#include "fea/deformed_frame.hpp"
#include "fea/linear_motion.hpp"
#include "fea/mixing.hpp"

namespace fea {
namespace {

// A start that is near enough to be worth it settles within this many rounds.
constexpr int kMostFromStart = 12;
// Once there were negative pivots: so many rounds in which the forces come no nearer to settling,
// and no answer is waited for.
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
      before_(system_->n_free()),
      motion_(system_->n_unknowns()) {}

SolveStatus SecondOrder::run(const LoadCase& load_case, const Eigen::VectorXd& linear,
                             const Eigen::VectorXd* start, const SolveOptions& options) {
  n_factored_ = 0;
  imposes_ = !load_case.imposed.isZero(0.0);
  system_->to_scaled_force(load_case.vector, force_);
  // What the linear forces make unstable is called so wherever the search starts. They balance in
  // the undeformed place, where K + Kg is put together.
  stress_state(*system_, load_case, linear, state_);
  factor(load_case);
  if (n_negative_ != 0) return SolveStatus::unstable;
  linear_pivots_ = tangent_.factor().pivots();
  if (start != nullptr) {
    stress_state(*system_, load_case, *start, state_);
    factor(load_case);
    const int most = std::min(kMostFromStart, options.max_iterations);
    if (iterate(load_case, options, most) == SolveStatus::converged) return SolveStatus::converged;
    stress_state(*system_, load_case, linear, state_);
    factor(load_case);
  }
  return iterate(load_case, options, options.max_iterations);
}

/// K + Kg with the forces of state_.
void SecondOrder::factor(const LoadCase& load_case) {
  geometric_stiffness(*system_, load_case, state_, geometric_);
  n_negative_ = tangent_.n_negative(geometric_, 1.0);
  ++n_factored_;
}

/// From the matrix factored last and the forces it was made of.
SolveStatus SecondOrder::iterate(const LoadCase& load_case, const SolveOptions& options, int most) {
  const double lever = system_->typical_length();
  bool doubtful = false;  // there were negative pivots
  Mixing mixing;
  double least = std::numeric_limits<double>::infinity();
  int waited = 0;
  for (int i = 0; i < most; ++i) {
    if (i > 0) factor(load_case);
    doubtful = doubtful || n_negative_ != 0;
    if (imposes_) system_->to_scaled_force(to_balance(*system_, load_case, geometric_), force_);
    answer_ = force_;
    tangent_.factor().solve_in_place(answer_);
    system_->from_scaled_motion(answer_, motion_);
    motion_ += load_case.imposed;
    stress_state(*system_, load_case, motion_, next_);
    const double changed = change(state_, next_, lever);
    if (changed <= options.tolerance) {
      const bool good = doubtful ? stands(load_case) : !delicate() || !falls(load_case);
      return good ? SolveStatus::converged : SolveStatus::unstable;
    }
    const bool nearer = changed < kNearer * least;
    least = std::min(least, changed);
    waited = nearer ? 0 : waited + 1;
    if (doubtful && waited > kPatience) break;
    if (doubtful && i > 0) {
      answer_ = mixing.next(before_, answer_);
      system_->from_scaled_motion(answer_, motion_);
      motion_ += load_case.imposed;
      stress_state(*system_, load_case, motion_, next_);
    }
    before_ = answer_;
    std::swap(state_, next_);
  }
  return doubtful ? SolveStatus::unstable : SolveStatus::not_converged;
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
