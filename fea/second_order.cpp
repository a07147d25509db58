#include "fea/second_order.hpp"

#include <algorithm>
#include <utility>

#include "fea/linear_motion.hpp"

namespace fea {
namespace {

// A start that is near enough to be worth it settles within this many rounds.
constexpr int kMostFromStart = 12;

}  // namespace

SecondOrder::SecondOrder(std::shared_ptr<const System> system)
    : system_(std::move(system)),
      tangent_(*system_),
      force_(system_->n_free()),
      answer_(system_->n_free()),
      motion_(system_->n_unknowns()) {}

SolveStatus SecondOrder::run(const LoadCase& load_case, const Eigen::VectorXd& linear,
                             const Eigen::VectorXd* start, const SolveOptions& options) {
  n_factored_ = 0;
  imposes_ = !load_case.imposed.isZero(0.0);
  system_->to_scaled_force(load_case.vector, force_);
  if (start != nullptr) {
    // What the linear forces make unstable is called so wherever the search starts.
    stress_state(*system_, load_case, linear, state_);
    if (n_negative(load_case) != 0) return SolveStatus::unstable;
    stress_state(*system_, load_case, *start, state_);
    const int most = std::min(kMostFromStart, options.max_iterations);
    if (iterate(load_case, options, most) == SolveStatus::converged) return SolveStatus::converged;
  }
  stress_state(*system_, load_case, linear, state_);
  return iterate(load_case, options, options.max_iterations);
}

/// Negative eigenvalues of K + Kg with the forces of state_.
std::optional<int> SecondOrder::n_negative(const LoadCase& load_case) {
  geometric_stiffness(*system_, load_case, state_, geometric_);
  ++n_factored_;
  return tangent_.n_negative(geometric_, 1.0);
}

SolveStatus SecondOrder::iterate(const LoadCase& load_case, const SolveOptions& options, int most) {
  const double lever = system_->typical_length();
  for (int i = 0; i < most; ++i) {
    if (n_negative(load_case) != 0) return SolveStatus::unstable;
    if (imposes_) system_->to_scaled_force(to_balance(*system_, load_case, geometric_), force_);
    answer_ = force_;
    tangent_.factor().solve_in_place(answer_);
    system_->from_scaled_motion(answer_, motion_);
    motion_ += load_case.imposed;
    stress_state(*system_, load_case, motion_, next_);
    if (settled(state_, next_, lever, options.tolerance)) return SolveStatus::converged;
    std::swap(state_, next_);
  }
  return SolveStatus::not_converged;
}

}  // namespace fea
