#pragma once

#include <memory>
#include <optional>

#include "fea/mixing.hpp"
#include "fea/stress_state.hpp"
#include "fea/tangent.hpp"

namespace fea {

/// Second-order solutions of one system, one after another in the same memory: after the first,
/// no more is asked for, but to look at an answer that is in doubt.
///
/// (K + Kg(f)) u = F with f the forces of u itself. What is out of balance is solved for with one
/// factor, mixed so that it comes near to Newton's step, until f settles; then K + Kg(f) is
/// factored once more and answers. Negative pivots with the forces of the linear solution mean
/// unstable. With those of u they may be false (see n_negative_deformed): then the answer stands
/// when the frame is stable where it has gone to and the shapes that the matrix calls unstable have
/// no part in the answer's forces.
class SecondOrder {
 public:
  explicit SecondOrder(std::shared_ptr<const System> system);

  /// @param linear  the solution without Kg, full
  /// @param start   full; where to look first; null = at `linear`
  SolveStatus run(const LoadCase& load_case, const Eigen::VectorXd& linear,
                  const Eigen::VectorXd* start, const SolveOptions& options);

  // Of the last run, when it converged:
  [[nodiscard]] const Eigen::VectorXd& motion() const { return motion_; }  ///< full
  /// The forces whose Kg it was solved with.
  [[nodiscard]] const StressState& state() const { return state_; }
  [[nodiscard]] int n_factored() const { return n_factored_; }

  [[nodiscard]] const System& system() const { return *system_; }

 private:
  void factor(const LoadCase& load_case);
  bool approach(const LoadCase& load_case, const SolveOptions& options);
  bool settle(const LoadCase& load_case, const SolveOptions& options);
  [[nodiscard]] bool delicate() const;
  [[nodiscard]] bool falls(const LoadCase& load_case) const;
  [[nodiscard]] bool stands(const LoadCase& load_case) const;

  std::shared_ptr<const System> system_;
  Tangent tangent_;
  Eigen::VectorXd force_;   // scaled
  Eigen::VectorXd answer_;  // scaled
  Eigen::VectorXd step_;    // scaled
  Eigen::VectorXd motion_;  // full
  Eigen::VectorXd left_;    // full; out of balance
  Mixing mixing_;
  Eigen::VectorXd linear_pivots_;
  StressState state_;
  StressState next_;
  Eigen::VectorXd geometric_;  // scaled
  bool imposes_ = false;       // whether supports are moved, so that Kg has a say in force_
  int n_factored_ = 0;
  std::optional<int> n_negative_;  // of the matrix factored last
};

}  // namespace fea
