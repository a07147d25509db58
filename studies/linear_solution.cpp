#include "studies/linear_solution.hpp"

#include <cmath>
#include <optional>
#include <utility>

#include "studies/set_model.hpp"

namespace studies {

struct LinearSolution::Kept {
  fea::Factored factored;
  fea::Loads loads;
  std::vector<parts::CoilSeat> only_push;
  std::optional<fea::Solution> with_all = {};  // coils pulling; may be at hand
  std::optional<fea::Solution> solution = {};
  std::vector<double> let_go = {};
};

LinearSolution::LinearSolution(fea::Factored factored, fea::Loads loads,
                               std::vector<parts::CoilSeat> only_push,
                               std::optional<fea::Solution> solution)
    : kept_(std::make_shared<Kept>(Kept{std::move(factored), std::move(loads), std::move(only_push),
                                        std::move(solution)})) {}

const fea::Solution& LinearSolution::operator()() const {
  if (!kept_->solution) solve();
  return *kept_->solution;
}

const std::vector<double>& LinearSolution::let_go() const {
  if (!kept_->solution) solve();
  return kept_->let_go;
}

void LinearSolution::solve() const {
  // Straps and ground are stiffer than coils: each round leaves a small part of what was wrong.
  // Where nothing else holds the axle there is no such answer, and none is looked for long.
  constexpr int kMostRounds = 40;
  constexpr double kSettled = 1e-9;
  const auto under = [&](const fea::Loads& loads) {
    return fea::solve(kept_->factored, loads, {.method = fea::Method::linear});
  };
  kept_->solution = kept_->with_all ? *kept_->with_all : under(kept_->loads);
  const std::vector<parts::CoilSeat>& seats = kept_->only_push;
  std::vector<double> let_go(seats.size(), 0.0);
  fea::Solution linear = *kept_->solution;
  for (int round = 0; round < kMostRounds && !seats.empty(); ++round) {
    fea::Loads now = kept_->loads;
    double changed = 0.0;
    double largest = 0.0;
    for (std::size_t i = 0; i < let_go.size(); ++i) {
      const parts::CoilSeat& seat = seats[i];
      const double push = seat.preload + seat.rate * rise_of(seat.node, seat.offset_g, linear);
      const double pull = std::fmax(0.0, -push);
      changed = std::fmax(changed, std::abs(pull - let_go[i]));
      largest = std::fmax(largest, pull);
      let_go[i] = pull;
      now.nodes.push_back({.node = seat.node,
                           .offset_g = seat.offset_g,
                           .force_g = {0.0, 0.0, -pull},
                           .moment_g = {0.0, 0.0, 0.0}});
    }
    if (changed <= kSettled * largest) {
      kept_->solution = std::move(linear);
      if (largest > 0.0) kept_->let_go = std::move(let_go);
      return;
    }
    linear = under(now);
    if (linear.status() != fea::SolveStatus::converged) return;
  }
}

}  // namespace studies
