#pragma once

#include <memory>
#include <optional>

#include "fea/stress_state.hpp"
#include "fea/tangent.hpp"

namespace fea {

/// Second-order solutions of one system, one after another in the same memory: after the first,
/// no more is asked for.
///
/// (K + Kg(f)) u = F with f from the u before, until f settles. A matrix with a negative pivot on
/// the way from the linear solution means unstable.
class SecondOrder {
 public:
  explicit SecondOrder(std::shared_ptr<const System> system);

  /// @param linear  the solution without Kg, full
  /// @param start   full; where to look first; null = at `linear`
  SolveStatus run(const LoadCase& load_case, const Eigen::VectorXd& linear,
                  const Eigen::VectorXd* start, const SolveOptions& options);

  // Of the last run, when it converged:
  [[nodiscard]] const Eigen::VectorXd& motion() const { return motion_; }  ///< full
  [[nodiscard]] const Blocks& geometric() const { return geometric_; }     ///< it was solved with
  [[nodiscard]] const StressState& state() const { return state_; }        ///< they were made of
  [[nodiscard]] int n_factored() const { return n_factored_; }

  [[nodiscard]] const System& system() const { return *system_; }

 private:
  std::optional<int> n_negative(const LoadCase& load_case);
  SolveStatus iterate(const LoadCase& load_case, const SolveOptions& options, int most);

  std::shared_ptr<const System> system_;
  Tangent tangent_;
  Eigen::VectorXd force_;   // scaled
  Eigen::VectorXd answer_;  // scaled
  Eigen::VectorXd motion_;  // full
  StressState state_;
  StressState next_;
  Blocks geometric_;
  bool imposes_ = false;  // whether supports are moved, so that Kg has a say in force_
  int n_factored_ = 0;
};

}  // namespace fea
