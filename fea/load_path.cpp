#include "fea/load_path.hpp"

#include <cmath>
#include <utility>

#include "fea/model_check.hpp"
#include "fea/newton.hpp"

namespace fea {
namespace {

constexpr double kShortestPart = 1.0e-4;  // of the way to the next value

/// Follows the path from point to point.
class Follower {
 public:
  Follower(const MovedFrame& frame, const Drive& drive)
      : frame_(frame),
        drive_(drive),
        tangent_(frame),
        problem_{.frame = frame, .held = Eigen::VectorXd::Zero(frame.system().n_unknowns())},
        state_(MovedState::at_rest(frame.system())) {}

  /// Whether the driven displacement could be brought to `value`.
  bool reach(double value) {
    const double from = driven(state_);
    double done = 0.0;
    double step = 1.0;
    while (done < 1.0) {
      const double to = std::min(1.0, done + step);
      if (go(from + to * (value - from))) {
        done = to;
        step *= 2.0;
      } else {
        step *= 0.5;
        if (step < kShortestPart) return false;
      }
    }
    return true;
  }

  [[nodiscard]] PathPoint point() {
    const MovedForces forces = frame_.forces(state_, factor_, closed(state_));
    return {.value = driven(state_),
            .factor = factor_,
            .stable = tangent_.n_negative(forces.tangent) == 0,
            .state = state_};
  }

 private:
  [[nodiscard]] double driven(const MovedState& state) const {
    return frame_.placed(state, drive_.node).displacement_g(drive_.freedom);
  }

  [[nodiscard]] std::vector<bool> closed(const MovedState& state) const {
    std::vector<bool> out;
    for (const double overlap : frame_.overlaps(state)) out.push_back(overlap > 0.0);
    return out;
  }

  /// Goes on with the gaps as they are until they are as they should be.
  bool go(double value) {
    constexpr int kMostRounds = 20;
    const Eigen::VectorXd unit = Eigen::VectorXd::Unit(frame_.system().n_unknowns(),
                                                       first_unknown(drive_.node) + drive_.freedom);
    const Aim aim{.miss = [&](const MovedState& s) { return driven(s) - value; },
                  .slope = [&](const MovedState&) { return unit; },
                  .tolerance = 1.0e-12 * std::max(1.0, std::abs(value))};
    std::vector<bool> assumed = closed(state_);
    for (int i = 0; i < kMostRounds; ++i) {
      NewtonResult trial = newton(problem_, tangent_, state_, factor_, assumed, &aim);
      if (trial.end != NewtonEnd::converged) return false;
      const std::vector<bool> found = closed(trial.state);
      if (found == assumed) {
        state_ = std::move(trial.state);
        factor_ = trial.factor;
        return true;
      }
      assumed = found;
    }
    return false;
  }

  const MovedFrame& frame_;
  const Drive& drive_;
  MovedFactor tangent_;
  Equilibrium problem_;
  MovedState state_;
  double factor_ = 0.0;
};

}  // namespace

std::vector<PathPoint> follow(const Factored& factored, const Loads& loads, const Drive& drive) {
  require_valid(factored.model(), loads);
  const MovedFrame frame(std::make_shared<const MovedModel>(factored.share()), loads);
  Follower follower(frame, drive);
  std::vector<PathPoint> out;
  for (const double value : drive.values) {
    if (!follower.reach(value)) break;
    out.push_back(follower.point());
  }
  return out;
}

}  // namespace fea
