#include "studies/set_model.hpp"

#include <cmath>
#include <utility>
#include <variant>

#include <Eigen/Geometry>

#include "base/input_error.hpp"

namespace studies {

namespace {

/// A bump stop as what is between its seat and the ground.
fea::Gap gap_of(const parts::BumpStop& stop, const fea::Model& model) {
  const fea::Vector3 seat = model[stop.node].at_g + stop.offset_g;
  return {.a = {.node = {}, .at_g = seat},
          .b = {.node = stop.node, .at_g = seat},
          .axis_g = fea::Vector3::UnitZ(),
          .contact = fea::Gap::Contact::when_longer,
          .stiffness = stop.rate,
          .clearance = stop.travel,
          .name = stop.name};
}

}  // namespace

double seat_travel(const parts::BumpStop& stop, const fea::Solution& solution) {
  const fea::Vector6 at = solution.placement(stop.node);
  const fea::Vector3 turned = at.tail<3>().cross(stop.offset_g);
  return at[2] + turned.z();
}

SetModel::SetModel(const parts::Design& design, parts::StiffnessSet set)
    : design_(design), set_(std::move(set)), assembly_(parts::assemble(design, set_)) {
  std::variant<fea::Factored, fea::Mechanism> made = fea::factor_if_held(assembly_.model);
  if (const auto* loose = std::get_if<fea::Mechanism>(&made)) {
    throw base::InputError(assembly_.node_keys.at(static_cast<std::size_t>(loose->node.index)),
                           loose->words + ": no part or support holds it");
  }
  ready_.emplace(0U, Ready{std::get<fea::Factored>(std::move(made)), {}});
}

SetModel::Ready& SetModel::ready(unsigned closed_stops) const {
  const auto found = ready_.find(closed_stops);
  if (found != ready_.end()) return found->second;
  fea::Model model = assembly_.model;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    if ((closed_stops & (1U << i)) == 0) continue;
    const parts::BumpStop& stop = assembly_.stops[i];
    fea::Spring spring{.a = stop.node, .b = {}, .offset_a_g = stop.offset_g, .name = stop.name};
    spring.stiffness(2, 2) = stop.rate;
    model.add(spring);
  }
  return ready_.emplace(closed_stops, Ready{fea::factor(model), {}}).first->second;
}

fea::Loads SetModel::loads(const parts::DesignCase& load_case, double multiple,
                           unsigned closed_stops) const {
  fea::Loads loads = parts::put(assembly_, design_, load_case) * multiple;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    if ((closed_stops & (1U << i)) == 0) continue;
    // The stop's spring starts at its gap: the part of its force that the gap takes back.
    const parts::BumpStop& stop = assembly_.stops[i];
    loads.nodes.push_back({.node = stop.node,
                           .offset_g = stop.offset_g,
                           .force_g = {0.0, 0.0, stop.rate * stop.travel},
                           .moment_g = {0.0, 0.0, 0.0}});
  }
  return loads;
}

unsigned SetModel::usable_stops() const {
  unsigned usable = 0;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    const parts::BumpStop& stop = assembly_.stops[i];
    if (!std::isnan(stop.travel) && !std::isnan(stop.rate)) usable |= 1U << i;
  }
  return usable;
}

unsigned SetModel::most_wrong_stop(const fea::Solution& solution, unsigned closed) const {
  unsigned wrong = 0;
  double most = 0.0;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    const unsigned bit = 1U << i;
    if ((usable_stops() & bit) == 0) continue;
    const parts::BumpStop& stop = assembly_.stops[i];
    const double overlap = seat_travel(stop, solution) - stop.travel;
    const double miss = (closed & bit) == 0 ? overlap : -overlap;
    if (miss > most) {
      most = miss;
      wrong = bit;
    }
  }
  return wrong;
}

fea::Solution SetModel::solve(const fea::Loads& loads, double multiple, unsigned closed_stops,
                              const NearSolution& near) const {
  Ready& now = ready(closed_stops);
  // Forces settled to 1e-7 leave a safety factor good to six digits.
  fea::SolveOptions options{.tolerance = 1.0e-7, .workspace = &now.workspace};
  if (near.solved != nullptr) {
    options.near = &near.solved->solution;
    options.near_factor = multiple / near.multiple;
  }
  return fea::solve(now.factored, loads, options);
}

CaseSolution SetModel::with_linear(fea::Solution solution, const fea::Loads& loads,
                                   unsigned closed_stops, bool settled) const {
  return {std::move(solution),
          fea::solve(ready(closed_stops).factored, loads, {.method = fea::Method::linear}),
          closed_stops, settled, fea::Method::second_order};
}

CaseSolution SetModel::solve(const parts::DesignCase& load_case, double multiple,
                             const NearSolution& near) const {
  constexpr int kMostContactRounds = 8;
  unsigned closed = 0;
  bool tried_all = false;
  for (int round = 0;; ++round) {
    const fea::Loads now = loads(load_case, multiple, closed);
    const bool same_stops = near.solved != nullptr && near.solved->closed_stops == closed;
    fea::Solution solution = solve(now, multiple, closed, same_stops ? near : NearSolution{});
    if (solution.status() != fea::SolveStatus::converged && !tried_all && usable_stops() != 0) {
      // On open stops the axle may tip, or go too far for an answer, where closed ones hold it.
      tried_all = true;
      closed = usable_stops();
      continue;
    }
    if (solution.status() != fea::SolveStatus::converged) {
      return with_linear(std::move(solution), now, closed, true);
    }
    // One at a time: two stops that change together can go on changing for ever.
    const unsigned wrong = most_wrong_stop(solution, closed);
    if (wrong == 0 || round == kMostContactRounds) {
      return with_linear(std::move(solution), now, closed, wrong == 0);
    }
    closed ^= wrong;
  }
}

bool SetModel::can_move(const parts::DesignCase& load_case) const {
  const fea::Loads all = loads(load_case, 1.0, 0);
  return all.strains.empty() && all.moves.empty();
}

CaseSolution SetModel::solve_moved(const parts::DesignCase& load_case, double multiple,
                                   const NearSolution& near) const {
  if (!with_gaps_) {
    fea::Model model = assembly_.model;
    for (const parts::BumpStop& stop : assembly_.stops) {
      if (!std::isnan(stop.travel) && !std::isnan(stop.rate)) model.add(gap_of(stop, model));
    }
    with_gaps_ = fea::factor(model);
  }
  fea::SolveOptions options{.method = fea::Method::large_displacement, .tolerance = 1.0e-8};
  if (near.solved != nullptr && near.solved->method == options.method) {
    options.start = near.solved->solution.state();
  }
  const fea::Loads now = loads(load_case, multiple, 0);
  fea::Solution solution = fea::solve(*with_gaps_, now, options);
  unsigned closed = 0;
  int gap = 0;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    if ((usable_stops() & (1U << i)) == 0) continue;
    if (solution.gap_force(fea::GapId{gap++}) > 0.0) closed |= 1U << i;
  }
  CaseSolution out =
      with_linear(std::move(solution), loads(load_case, multiple, closed), closed, true);
  out.method = options.method;
  return out;
}

fea::BucklingResult SetModel::buckle(const parts::DesignCase& load_case, const CaseSolution& at,
                                     const fea::BucklingOptions& options) const {
  return fea::buckle(ready(at.closed_stops).factored, loads(load_case, 1.0, at.closed_stops),
                     options);
}

const fea::Condition& SetModel::condition(unsigned closed_stops) const {
  const auto found = conditions_.find(closed_stops);
  if (found != conditions_.end()) return found->second;
  return conditions_.emplace(closed_stops, fea::condition(ready(closed_stops).factored))
      .first->second;
}

fea::FactorSize SetModel::factor_size(unsigned closed_stops) const {
  return fea::factor_size(ready(closed_stops).factored);
}

}  // namespace studies
