#pragma once

#include <functional>

#include "fea/moved_factor.hpp"

/// Newton's method for a moved frame.
namespace fea {

/// What is wanted of the load factor besides equilibrium: `miss` must become zero.
struct Aim {
  std::function<double(const MovedState&)> miss;
  std::function<Eigen::VectorXd(const MovedState&)> slope;  ///< change with the unknowns, full
  double tolerance;
};

/// Equilibrium is looked for between a start, where it holds at factor 0, and the loads:
/// unbalanced(state, factor) = (1 - factor) held, with `held` what was unbalanced at the start. So
/// a start with preload or of another load case is let go of by the same amount as the loads come.
struct Equilibrium {
  const MovedFrame& frame;
  Eigen::VectorXd held;  ///< full
  double tolerance = 1.0e-10;
  double most_turn = 0.35;  ///< of the first iteration; a step beyond is too long  [rad]
  /// Whether a state is beyond what the step was for; none = never.
  std::function<bool(const MovedState&)> beyond = {};
};

enum class NewtonEnd {
  converged,
  beyond,    ///< near enough to see that it ends beyond; not settled
  too_long,  ///< the first iteration turns something by more than most_turn
  failed,    ///< no convergence, or away from the path: cut the step
};

struct NewtonResult {
  NewtonEnd end = NewtonEnd::failed;
  MovedState state;
  MovedForces forces;  ///< there, as far as the residual says
  double factor = 0.0;
  double residual = base::kUnset;  ///< largest unbalanced over largest force  [-]
  double first_turn = 0.0;         ///< largest rotation in the first iteration  [rad]
  std::vector<double> residuals;   ///< of each iteration
};

/// @param state  equilibrium at another factor, near enough
/// @param aim    none: at `factor`; else the factor is an unknown, starting from `factor`
/// @param first  the motion to begin with from rest, full; null = along the tangent
/// @param memory  for the forces of the result
[[nodiscard]] NewtonResult newton(const Equilibrium& problem, MovedFactor& factor_of_tangent,
                                  const MovedState& state, double factor,
                                  const std::vector<bool>& closed, const Aim* aim = nullptr,
                                  const Eigen::VectorXd* first = nullptr, MovedForces memory = {});

/// Largest unbalanced force over the largest force, held unknowns left out.  [-]
[[nodiscard]] double relative_residual(const System& system, const MovedForces& forces,
                                       const Eigen::VectorXd& unbalanced);

}  // namespace fea
