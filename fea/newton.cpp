#include "fea/newton.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fea {
namespace {

constexpr int kMostIterations = 12;
constexpr int kLate = 6;                // iterations after which a path that is to be found is near
constexpr double kFarOff = 0.2;         // residual of one that is not
constexpr double kNear = 1.0e-2;        // residual from which a state is near its end
constexpr double kMostTurnLater = 1.0;  // of one iteration  [rad]
constexpr double kMostOffTangent = 3.0;  // length of a step over that along the tangent

/// Largest unbalanced force and moment of what is free.
struct Left {
  double force = 0.0;
  double moment = 0.0;
};

Left left_of(const System& system, const Eigen::VectorXd& unbalanced) {
  Left out;
  for (int i = 0; i < system.n_unknowns(); ++i) {
    if (system.held(i)) continue;
    double& kept = system.turns(i) ? out.moment : out.force;
    kept = std::max(kept, std::abs(unbalanced(i)));
  }
  return out;
}

/// Whether what is left could be rounding.
bool is_rounding(const System& system, const MovedForces& forces,
                 const Eigen::VectorXd& unbalanced) {
  const Left left = left_of(system, unbalanced);
  const double lever = system.typical_length();
  const double force = std::max(forces.rounding_force, forces.rounding_moment / lever);
  const double moment = std::max(forces.rounding_moment, forces.rounding_force * lever);
  return left.force <= force && left.moment <= moment;
}

double largest_turn(const System& system, const Eigen::VectorXd& motion) {
  double largest = 0.0;
  for (int i = 0; i < system.n_unknowns(); ++i) {
    if (system.turns(i)) largest = std::max(largest, std::abs(motion(i)));
  }
  return largest;
}

/// Length of a motion, rotations with the typical length as their lever.
double length_of(const System& system, const Eigen::VectorXd& motion) {
  double sum = 0.0;
  for (int i = 0; i < system.n_unknowns(); ++i) {
    const double part = system.turns(i) ? motion(i) * system.typical_length() : motion(i);
    sum += part * part;
  }
  return std::sqrt(sum);
}

/// Follows one solution; keeps what its end is judged by.
class Iteration {
 public:
  Iteration(const Equilibrium& problem, MovedFactor& tangent, const std::vector<bool>& closed,
            const Aim* aim, const Eigen::VectorXd* first)
      : problem_(problem), tangent_(tangent), closed_(closed), aim_(aim), first_(first) {}

  NewtonResult run(const MovedState& state, double factor, MovedForces memory) {
    result_.state = state;
    result_.forces = std::move(memory);
    result_.factor = factor;
    iterate();
    return std::move(result_);
  }

 private:
  [[nodiscard]] const System& system() const { return problem_.frame.system(); }

  void iterate() {
    total_ = Eigen::VectorXd::Zero(system().n_unknowns());
    if (first_ != nullptr) {
      if (!may_move(*first_, 0)) return;
      assumed_ = problem_.frame.deformation_from_rest(*first_);
      move(*first_);
    }
    for (int i = first_ != nullptr ? 1 : 0; i <= kMostIterations; ++i) {
      problem_.frame.forces(result_.state, result_.factor, closed_, result_.forces,
                            i > 0 ? &assumed_ : nullptr);
      const MovedForces& forces = result_.forces;
      if (!forces.usable) return;
      const Eigen::VectorXd unbalanced = forces.unbalanced - (1.0 - result_.factor) * problem_.held;
      if (is_done(forces, unbalanced)) {
        if (i > 1 && length_of(system(), total_) > kMostOffTangent * first_length_ + 1.0e-9) {
          return;
        }
        result_.end = NewtonEnd::converged;
        return;
      }
      if (aim_ == nullptr && result_.residual < kNear && problem_.beyond &&
          problem_.beyond(result_.state)) {
        result_.end = NewtonEnd::beyond;
        return;
      }
      if (i >= kLate && result_.residual > kFarOff) return;
      if (i == kMostIterations || !step(forces, unbalanced, i)) return;
    }
  }

  bool is_done(const MovedForces& forces, const Eigen::VectorXd& unbalanced) {
    const double before = result_.residual;
    result_.residual = relative_residual(system(), forces, unbalanced);
    result_.residuals.push_back(result_.residual);
    if (aim_ != nullptr && !(std::abs(aim_->miss(result_.state)) <= aim_->tolerance)) return false;
    if (result_.residual <= problem_.tolerance) return true;
    return result_.residual > 0.5 * before && is_rounding(system(), forces, unbalanced);
  }

  bool step(const MovedForces& forces, const Eigen::VectorXd& unbalanced, int i) {
    if (!tangent_.factor(forces.tangent)) return false;
    Eigen::VectorXd motion = tangent_.solve(-unbalanced);
    if (aim_ != nullptr) {
      const Eigen::VectorXd more =
          tangent_.solve(problem_.frame.loads(result_.state) - problem_.held);
      const Eigen::VectorXd slope = aim_->slope(result_.state);
      const double rate = slope.dot(more);
      if (rate == 0.0) return false;
      const double change = -(aim_->miss(result_.state) + slope.dot(motion)) / rate;
      motion += change * more;
      result_.factor += change;
    }
    if (!may_move(motion, i)) return false;
    problem_.frame.carry_on(forces, motion, assumed_);
    move(motion);
    return true;
  }

  /// Whether a motion is one to follow.
  bool may_move(const Eigen::VectorXd& motion, int i) {
    const double turn = largest_turn(system(), motion);
    if (!std::isfinite(turn) || !motion.allFinite()) return false;
    if (i == 0) {
      result_.first_turn = turn;
      first_length_ = length_of(system(), motion);
      if (turn > problem_.most_turn) {
        result_.end = NewtonEnd::too_long;
        return false;
      }
    }
    return turn <= kMostTurnLater;
  }

  void move(const Eigen::VectorXd& motion) {
    total_ += motion;
    result_.state = problem_.frame.moved(result_.state, motion);
  }

  const Equilibrium& problem_;
  MovedFactor& tangent_;
  const std::vector<bool>& closed_;
  const Aim* aim_;
  const Eigen::VectorXd* first_;  // the first motion; null = along the tangent
  NewtonResult result_;
  std::vector<Deformation> assumed_;  // of each beam, along the tangents
  Eigen::VectorXd total_;
  double first_length_ = 0.0;
};

}  // namespace

double relative_residual(const System& system, const MovedForces& forces,
                         const Eigen::VectorXd& unbalanced) {
  const Left left = left_of(system, unbalanced);
  const double lever = system.typical_length();
  const double force = std::max(forces.force, forces.moment / lever);
  const double moment = std::max(forces.moment, forces.force * lever);
  return force > 0.0 ? std::max(left.force / force, left.moment / moment) : 0.0;
}

NewtonResult newton(const Equilibrium& problem, MovedFactor& factor_of_tangent,
                    const MovedState& state, double factor, const std::vector<bool>& closed,
                    const Aim* aim, const Eigen::VectorXd* first, MovedForces memory) {
  return Iteration(problem, factor_of_tangent, closed, aim, first)
      .run(state, factor, std::move(memory));
}

}  // namespace fea
