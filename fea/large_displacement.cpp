#include "fea/large_displacement.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "fea/labels.hpp"
#include "fea/model_check.hpp"
#include "fea/moved_solution.hpp"
#include "fea/newton.hpp"
#include "fea/solution.hpp"

namespace fea {
namespace {

constexpr double kAllButAll = 1.0e-5;  // of the load: what is left goes with the last step
constexpr double kTouching = 1.0e-12;  // an overlap below is none, per m of the frame
constexpr int kEasy = 6;               // iterations after which the next step may be longer
constexpr double kShorter = 0.4;
constexpr double kFine = 0.03;     // of the load: a step that does not miss a turn of the path
constexpr int kMostChanges = 400;  // gaps that open and close without end

std::vector<bool> closed_at(const std::vector<double>& overlaps, double touching) {
  std::vector<bool> out;
  for (const double overlap : overlaps) out.push_back(overlap > touching);
  return out;
}

/// "point `tip` moves on along z": the node that moves most, or that turns most where nothing
/// moves.
std::string where_it_goes(const System& system, const Eigen::VectorXd& motion) {
  NodeId shifts{0};
  NodeId turns{0};
  double shift = 0.0;
  double turn = 0.0;
  for (int i = 0; i < static_cast<int>(system.model().nodes.size()); ++i) {
    const Vector6 of_node = motion.segment<6>(first_unknown(NodeId{i}));
    if (of_node.head<3>().norm() > shift) {
      shift = of_node.head<3>().norm();
      shifts = NodeId{i};
    }
    if (of_node.tail<3>().norm() > turn) {
      turn = of_node.tail<3>().norm();
      turns = NodeId{i};
    }
  }
  constexpr double kTurnsAlone = 4.0;  // an arc this many times the shift
  if (turn * system.typical_length() > kTurnsAlone * shift) {
    const Vector3 about = motion.segment<3>(first_unknown(turns) + 3);
    return label(system.model(), turns) + " turns on about " + direction_words(about);
  }
  const Vector3 along = motion.segment<3>(first_unknown(shifts));
  return label(system.model(), shifts) + " moves on along " + direction_words(along);
}

/// The steps from the start to the loads.
class Steps {
 public:
  Steps(const MovedFrame& frame, const SolveOptions& options, MovedMemory& memory)
      : frame_(frame),
        options_(options),
        memory_(memory),
        tangent_(*memory.factor),
        touching_(kTouching * std::max(1.0, frame.system().typical_length())),
        state_(options.start ? *options.start : MovedState::at_rest(frame.system())),
        closed_(closed_at(frame.overlaps(state_), touching_)),
        problem_{.frame = frame,
                 .held = Eigen::VectorXd::Zero(frame.system().n_unknowns()),
                 .tolerance = options.tolerance,
                 .beyond = [this](const MovedState& s) { return first_contact(s).has_value(); }},
        step_(std::min(1.0, options.largest_step)) {}

  Solution run(const std::shared_ptr<const System>& system, const LoadCase& load_case) {
    if (options_.largest_step >= 1.0) {
      const Eigen::VectorXd near = near_motion();
      const bool touching =
          options_.touching.size() == closed_.size() && options_.touching != closed_;
      if (touching || near.size() > 0) {
        go_straight(touching ? options_.touching : closed_, near.size() > 0 ? &near : nullptr);
      }
      if (!at_loads_) {
        // A first step of all the load would be the same again.
        if (const auto missed = go_straight(closed_, nullptr)) shorten(*missed);
      }
    }
    if (!at_loads_) problem_.held = frame_.forces(state_, 0.0, closed_).unbalanced;
    while (!at_loads_) {
      if (!advance()) {
        return make_failed_with_words(*system, SolveStatus::not_converged, words_);
      }
    }
    if (!stable_) {
      return make_failed_with_words(
          *system, SolveStatus::unstable,
          where_it_goes(*system, tangent_.weakest_shape()) +
              " at the least touch: the equilibrium under these loads is not stable");
    }
    Solution solution = make_moved_solution(frame_, load_case, state_, closed_, forces_);
    memory_.forces.push_back(std::move(forces_));
    return solution;
  }

 private:
  /// The motion of small rotations to go to first; empty = none.
  [[nodiscard]] Eigen::VectorXd near_motion() const {
    if (options_.start != nullptr || options_.near == nullptr) return {};
    const Solution& near = *options_.near;
    const bool fits = near.status() == SolveStatus::converged && near.state() == nullptr &&
                      near.data().motion.size() == frame_.system().n_unknowns();
    return fits ? Eigen::VectorXd(options_.near_factor * near.data().motion) : Eigen::VectorXd();
  }

  /// All of the load at once, each gap that is not as it should be opened or closed on the way;
  /// changes nothing where that does not end in a stable equilibrium.
  /// @param closed  at first
  /// @param first   the first motion; null = along the tangent
  /// @return how it missed where that was from the start, no gap changed yet
  std::optional<NewtonResult> go_straight(std::vector<bool> closed, const Eigen::VectorXd* first) {
    constexpr int kMostFlips = 6;
    MovedState state = state_;
    const Equilibrium problem{
        .frame = frame_,
        .held = problem_.held,  // all of it let go of
        .tolerance = problem_.tolerance,
        .beyond = [&](const MovedState& s) {
          return most_against_its_kind(frame_.overlaps(s), closed).has_value();
        }};
    for (int flips = 0; flips <= kMostFlips; ++flips) {
      NewtonResult trial = newton(problem, tangent_, state, 1.0, closed, nullptr,
                                  flips == 0 ? first : nullptr, memory_.spare_forces());
      const bool ended = trial.end == NewtonEnd::converged || trial.end == NewtonEnd::beyond;
      const auto gap = ended ? most_against_its_kind(frame_.overlaps(trial.state), closed)
                             : std::optional<std::size_t>();
      if (gap) {
        closed[*gap] = !closed[*gap];
        state = std::move(trial.state);
        memory_.forces.push_back(std::move(trial.forces));
        continue;
      }
      if (!ended || tangent_.n_negative(trial.forces.tangent) != 0) {
        memory_.forces.push_back(std::move(trial.forces));
        return flips == 0 && !ended ? std::optional(std::move(trial)) : std::nullopt;
      }
      state_ = std::move(trial.state);
      forces_ = std::move(trial.forces);
      closed_ = std::move(closed);
      stable_ = at_loads_ = true;
      return std::nullopt;
    }
    return std::nullopt;
  }

  /// The gap that is farthest from being open or closed as it is taken to be.
  [[nodiscard]] std::optional<std::size_t> most_against_its_kind(
      const std::vector<double>& overlaps, const std::vector<bool>& closed) const {
    std::optional<std::size_t> worst;
    double most = touching_;
    for (std::size_t g = 0; g < overlaps.size(); ++g) {
      const double against = closed[g] ? -overlaps[g] : overlaps[g];
      if (against <= most) continue;
      most = against;
      worst = g;
    }
    return worst;
  }

  /// One step, or a part of one up to the first contact. False: the end, with words.
  bool advance() {
    if (++n_steps_ > options_.most_steps) return give_up();
    const double target = factor_ + step_ >= 1.0 - kAllButAll ? 1.0 : factor_ + step_;
    NewtonResult trial = newton(problem_, tangent_, state_, target, closed_);
    if (trial.end != NewtonEnd::converged && trial.end != NewtonEnd::beyond) return shorten(trial);
    const std::optional<GapId> first = first_contact(trial.state);
    if (first) return change(*first, trial);
    stable_ = tangent_.n_negative(trial.forces.tangent) == 0;
    if (!stable_ && step_ > kFine && !through_) {
      // A long step may have left the path for another one.
      step_ = kShorter * std::min(step_, 1.0 - factor_);
      return true;
    }
    through_ = !stable_;
    state_ = std::move(trial.state);
    forces_ = std::move(trial.forces);
    factor_ = target;
    at_loads_ = target == 1.0;
    const bool easy = static_cast<int>(trial.residuals.size()) <= kEasy;
    if (easy) step_ = std::min(options_.largest_step, 2.0 * step_);
    return true;
  }

  bool shorten(const NewtonResult& trial) {
    const double by = trial.end == NewtonEnd::too_long
                          ? std::clamp(0.9 * problem_.most_turn / trial.first_turn, 0.05, 0.7)
                          : kShorter;
    step_ = by * std::min(step_, 1.0 - factor_);
    return step_ >= options_.shortest_step || give_up();
  }

  /// Says what moves on. @return false
  bool give_up() {
    const MovedForces forces = frame_.forces(state_, factor_, closed_);
    const std::string where =
        tangent_.factor(forces.tangent)
            ? where_it_goes(frame_.system(), tangent_.solve(frame_.loads(state_) - problem_.held))
            : std::string("the frame moves on");
    words_ = fmt::format("no equilibrium was found beyond {:.1f} % of the loads: {} without end",
                         100.0 * factor_, where);
    return false;
  }

  [[nodiscard]] bool against_its_kind(std::size_t gap, double overlap) const {
    return closed_[gap] ? overlap < -touching_ : overlap > touching_;
  }

  /// The gap that opens or closes first on the way to `next`.
  [[nodiscard]] std::optional<GapId> first_contact(const MovedState& next) const {
    const std::vector<double> before = frame_.overlaps(state_);
    const std::vector<double> after = frame_.overlaps(next);
    std::optional<GapId> first;
    double earliest = std::numeric_limits<double>::infinity();
    for (std::size_t g = 0; g < after.size(); ++g) {
      if (!against_its_kind(g, after[g])) continue;
      const double part = std::clamp(before[g] / (before[g] - after[g]), 0.0, 1.0);
      if (part < earliest) {
        earliest = part;
        first = GapId{static_cast<int>(g)};
      }
    }
    return first;
  }

  /// Ends the step where the gap is just touching, and opens or closes it.
  bool change(GapId gap, const NewtonResult& beyond) {
    const auto g = static_cast<std::size_t>(gap.index);
    if (++n_changes_ > kMostChanges) {
      words_ = fmt::format("{} opens and closes without end", label(frame_.model(), gap));
      return false;
    }
    const double before = frame_.overlaps(state_)[g];
    if (std::abs(before) <= 2.0 * touching_) {
      closed_[g] = !closed_[g];
      return true;
    }
    const Aim aim{.miss = [&](const MovedState& s) { return frame_.overlaps(s)[g]; },
                  .slope = [&](const MovedState& s) { return frame_.overlap_change(s, gap); },
                  .tolerance = touching_};
    const double after = frame_.overlaps(beyond.state)[g];
    const double guess = factor_ + (beyond.factor - factor_) * before / (before - after);
    NewtonResult at = newton(problem_, tangent_, state_, guess, closed_, &aim);
    const bool between = at.end == NewtonEnd::converged && at.factor >= factor_ - kTouching &&
                         at.factor <= beyond.factor + kTouching;
    if (!between) return shorten(at);
    if (const std::optional<GapId> other = first_contact(at.state); other && *other != gap) {
      return change(*other, at);
    }
    state_ = std::move(at.state);
    factor_ = std::clamp(at.factor, factor_, 1.0);
    closed_[g] = !closed_[g];
    return true;
  }

  const MovedFrame& frame_;
  const SolveOptions& options_;
  MovedMemory& memory_;
  MovedFactor& tangent_;
  double touching_;
  MovedState state_;
  std::vector<bool> closed_;
  Equilibrium problem_;
  double step_;
  double factor_ = 0.0;
  bool at_loads_ = false;
  MovedForces forces_;    // of the last step
  bool stable_ = false;   // at its end
  bool through_ = false;  // states that are not
  int n_changes_ = 0;
  int n_steps_ = 0;
  std::string words_;
};

}  // namespace

MovedForces MovedMemory::spare_forces() {
  if (forces.empty()) return {};
  MovedForces out = std::move(forces.back());
  forces.pop_back();
  return out;
}

Solution large_displacement(MovedMemory& memory, const Loads& loads, const SolveOptions& options) {
  const std::shared_ptr<const System>& system = memory.shared->system;
  const LoadCase load_case = prepare(*system, loads);
  const MovedFrame frame(memory.shared, load_case);
  if (memory.factor) {
    memory.factor->start_anew(frame);
  } else {
    memory.factor.emplace(frame);
  }
  return Steps(frame, options, memory).run(system, load_case);
}

}  // namespace fea
