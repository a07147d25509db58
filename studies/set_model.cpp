#include "studies/set_model.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <utility>
#include <variant>

#include <Eigen/Geometry>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "fea/rotation.hpp"

namespace studies {

namespace {

// Of the ground that holds the axle in its place: so stiff that it gives some hundredths of a
// millimeter.
constexpr double kHeldHeave = 1.0e9;  // [N/m]
constexpr double kHeldRoll = 1.0e9;   // [N m/rad]

fea::Spring ground_spring(fea::NodeId axle, Contacts held) {
  fea::Spring spring{.a = axle, .b = {}, .name = "ground, for the place of the axle"};
  if ((held & kHeaveHeld) != 0) spring.stiffness(2, 2) = kHeldHeave;
  if ((held & kRollHeld) != 0) spring.stiffness(3, 3) = kHeldRoll;
  return spring;
}

/// What the ground holds from the start; in bump and droop the loads go there first, by themselves.
Contacts held_from_start(const parts::DesignCase& load_case) {
  using loads::Posture;
  const bool by_itself = load_case.posture == Posture::bump || load_case.posture == Posture::droop;
  Contacts held = 0;
  if (!std::isnan(load_case.place.heave) && !by_itself) held |= kHeaveHeld;
  if (!std::isnan(load_case.place.roll)) held |= kRollHeld;
  return held;
}

/// Whether coils leave their seat where they have nothing left to give.
bool only_push(const parts::DesignCase& load_case) {
  return load_case.place.given() || load_case.posture == loads::Posture::droop;
}

/// Whether the loads alone leave the axle short of the posture's heave.
bool falls_short(const parts::DesignCase& load_case, const parts::Assembly& assembly,
                 const CaseSolution& solved) {
  if (std::isnan(load_case.place.heave) || (solved.closed_stops & kHeaveHeld) != 0) return false;
  if (solved.solution.status() != fea::SolveStatus::converged) return true;
  const double heave = solved.solution.placement(*assembly.axle)[2];
  return load_case.posture == loads::Posture::bump ? heave < load_case.place.heave
                                                   : heave > load_case.place.heave;
}

/// What is between a point of the axle and the ground above or below it.
fea::Gap upright_gap(const fea::Model& model, fea::NodeId node, const fea::Vector3& offset_g) {
  const fea::Vector3 at_g = model[node].at_g + offset_g;
  return {.a = {.node = {}, .at_g = at_g},
          .b = {.node = node, .at_g = at_g},
          .axis_g = fea::Vector3::UnitZ()};
}

fea::Gap gap_of(const parts::TravelStop& stop, const fea::Model& model) {
  fea::Gap gap = upright_gap(model, stop.node, stop.offset_g);
  gap.contact =
      stop.sense() > 0.0 ? fea::Gap::Contact::when_longer : fea::Gap::Contact::when_shorter;
  gap.stiffness = stop.rate;
  gap.clearance = stop.travel;
  gap.name = stop.name;
  return gap;
}

/// Where a coil has nothing left to give, it leaves its seat: it pushes, and does not pull.
fea::Gap gap_of(const parts::CoilSeat& seat, const fea::Model& model) {
  fea::Gap gap = upright_gap(model, seat.node, seat.offset_g);
  gap.contact = fea::Gap::Contact::when_shorter;
  gap.stiffness = -seat.rate;
  gap.clearance = std::fmax(0.0, seat.leaves_at());
  gap.name = seat.name;
  return gap;
}

}  // namespace

fea::Vector3 shift_of(fea::NodeId node, const fea::Vector3& offset_g,
                      const fea::Solution& solution) {
  const fea::Vector6 at = solution.placement(node);
  const fea::Vector3 turn = at.tail<3>();
  if (solution.state() == nullptr) return at.head<3>() + turn.cross(offset_g);
  return at.head<3>() + fea::rotation_of(turn) * offset_g - offset_g;
}

double rise_of(fea::NodeId node, const fea::Vector3& offset_g, const fea::Solution& solution) {
  return shift_of(node, offset_g, solution).z();
}

double overlap_of(const parts::TravelStop& stop, const fea::Solution& solution) {
  return stop.sense() * rise_of(stop.node, stop.offset_g, solution) - stop.travel;
}

fea::Spring spring_of(const parts::TravelStop& stop) {
  fea::Spring spring{.a = stop.node, .b = {}, .offset_a_g = stop.offset_g, .name = stop.name};
  spring.stiffness(2, 2) = stop.rate;
  return spring;
}

fea::NodeLoad gap_load_of(const parts::TravelStop& stop) {
  return {.node = stop.node,
          .offset_g = stop.offset_g,
          .force_g = {0.0, 0.0, stop.sense() * stop.rate * stop.travel},
          .moment_g = {0.0, 0.0, 0.0}};
}

std::vector<fea::NodeLoad> ground_loads(const parts::Assembly& assembly, const loads::Place& place,
                                        Contacts closed) {
  if ((closed & (kHeaveHeld | kRollHeld)) == 0) return {};
  fea::NodeLoad ground{.node = *assembly.axle,
                       .offset_g = fea::Vector3::Zero(),
                       .force_g = fea::Vector3::Zero(),
                       .moment_g = fea::Vector3::Zero()};
  if ((closed & kHeaveHeld) != 0) ground.force_g.z() = kHeldHeave * place.heave;
  if ((closed & kRollHeld) != 0) ground.moment_g.x() = kHeldRoll * place.roll;
  return {ground};
}

double force_of(const parts::TravelStop& stop, const fea::Solution& solution) {
  return stop.known() ? stop.rate * std::fmax(0.0, overlap_of(stop, solution)) : 0.0;
}

GroundHold ground_hold(const parts::Assembly& assembly, const loads::Place& place, Contacts closed,
                       const fea::Solution& solution) {
  GroundHold out;
  if (!assembly.axle || solution.status() != fea::SolveStatus::converged) return out;
  const fea::Vector6 at = solution.placement(*assembly.axle);
  if ((closed & kHeaveHeld) != 0) out.force = kHeldHeave * (place.heave - at[2]);
  if ((closed & kRollHeld) != 0) out.moment = kHeldRoll * (place.roll - at[3]);
  return out;
}

GroundHold ground_hold(const parts::Assembly& assembly, const loads::Place& place,
                       const CaseSolution& solved) {
  GroundHold out = ground_hold(assembly, place, solved.closed_stops, solved.solution);
  if (solved.method == fea::Method::large_displacement) out.moment = solved.ground_moment;
  return out;
}

SetModel::SetModel(const parts::Design& design, parts::StiffnessSet set, BuiltFrames* built)
    : design_(design),
      set_(std::move(set)),
      assembly_(parts::assemble(design, set_)),
      built_(built) {}

/// With no stop or strap closed.
fea::Factored SetModel::factor_open() const {
  const fea::Factored* like = built_ != nullptr ? built_->alike(assembly_.model) : nullptr;
  std::variant<fea::Factored, fea::Mechanism> made = fea::factor_if_held(assembly_.model, like);
  if (const auto* loose = std::get_if<fea::Mechanism>(&made)) {
    throw base::InputError(assembly_.node_keys.at(static_cast<std::size_t>(loose->node.index)),
                           loose->words + ": no part or support holds it");
  }
  fea::Factored& factored = std::get<fea::Factored>(made);
  if (built_ != nullptr) built_->add(factored);
  return std::move(factored);
}

SetModel::Ready& SetModel::ready(Contacts closed_stops) const {
  const auto found = ready_.find(closed_stops);
  if (found != ready_.end()) return found->second;
  if (closed_stops == 0) {
    return ready_.emplace(0U, Ready{factor_open(), {}, {}}).first->second;
  }
  fea::Added added;
  if ((closed_stops & (kHeaveHeld | kRollHeld)) != 0) {
    added.springs.push_back(ground_spring(*assembly_.axle, closed_stops));
  }
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    if ((closed_stops & (1U << i)) == 0) continue;
    added.springs.push_back(spring_of(assembly_.stops[i]));
  }
  return ready_.emplace(closed_stops, Ready{fea::with_added(ready(0).factored, added), {}, {}})
      .first->second;
}

fea::Loads SetModel::loads(const parts::DesignCase& load_case, double multiple,
                           Contacts closed_stops) const {
  fea::Loads loads = parts::put(assembly_, design_, load_case) * multiple;
  for (const fea::NodeLoad& ground : ground_loads(assembly_, load_case.place, closed_stops)) {
    loads.nodes.push_back(ground);
  }
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    if ((closed_stops & (1U << i)) == 0) continue;
    loads.nodes.push_back(gap_load_of(assembly_.stops[i]));
  }
  return loads;
}

Contacts SetModel::known_stops(parts::TravelStop::Kind kind) const {
  Contacts known = 0;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    const parts::TravelStop& stop = assembly_.stops[i];
    if (stop.kind == kind && stop.known()) known |= 1U << i;
  }
  return known;
}

Contacts SetModel::most_wrong_stop(const fea::Solution& solution, Contacts closed) const {
  Contacts wrong = 0;
  double most = 0.0;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    const Contacts bit = 1U << i;
    if (!assembly_.stops[i].known()) continue;
    const double overlap = overlap_of(assembly_.stops[i], solution);
    const double miss = (closed & bit) == 0 ? overlap : -overlap;
    if (miss > most) {
      most = miss;
      wrong = bit;
    }
  }
  return wrong;
}

fea::Solution SetModel::solve(const fea::Loads& loads, double multiple, Contacts closed_stops,
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
                                   Contacts closed_stops, bool settled,
                                   bool coils_only_push) const {
  const auto only_push = coils_only_push ? assembly_.coil_seats : std::vector<parts::CoilSeat>();
  return {std::move(solution), LinearSolution(ready(closed_stops).factored, loads, only_push),
          closed_stops, settled, fea::Method::second_order};
}

CaseSolution SetModel::solve(const parts::DesignCase& load_case, double multiple,
                             const NearSolution& near, Contacts touching) const {
  if (near.solved != nullptr) touching = near.solved->closed_stops;
  const Contacts held = held_from_start(load_case);
  CaseSolution out = solve_from(load_case, multiple, held, near, touching);
  if (!falls_short(load_case, assembly_, out)) return out;
  return solve_from(load_case, multiple, held | kHeaveHeld, near, touching);
}

CaseSolution SetModel::solve_from(const parts::DesignCase& load_case, double multiple,
                                  Contacts held, const NearSolution& near,
                                  Contacts touching) const {
  using Kind = parts::TravelStop::Kind;
  Contacts first = held | (touching & ~(kHeaveHeld | kRollHeld));
  if (near.solved == nullptr && first == held) {
    const Touching there = touching_at_first(load_case, multiple, held);
    if (there.settled) first = there.closed;
  }
  if (first != held) {
    CaseSolution there = settle(load_case, multiple, held, first, {}, near);
    const bool found = there.solution.status() == fea::SolveStatus::converged;
    if (found && there.contact_settled) return there;
  }
  return settle(load_case, multiple, held, held,
                {known_stops(Kind::limit_strap), known_stops(Kind::bump_stop)}, near);
}

SetModel::Touching SetModel::touching_at_first(const parts::DesignCase& load_case, double multiple,
                                               Contacts held, Contacts tried) const {
  constexpr int kMostRounds = 8;
  Contacts closed = held | (tried & ~(kHeaveHeld | kRollHeld));
  for (int round = 0;; ++round) {
    fea::Solution linear = fea::solve(ready(closed).factored, loads(load_case, multiple, closed),
                                      {.method = fea::Method::linear});
    const Contacts wrong = most_wrong_stop(linear, closed);
    if (wrong == 0 || round == kMostRounds) return {closed, wrong == 0, std::move(linear)};
    closed ^= wrong;
  }
}

/// @param closed   tried first
/// @param untried  tried instead where there is no answer, the last one first
CaseSolution SetModel::settle(const parts::DesignCase& load_case, double multiple, Contacts held,
                              Contacts closed, std::vector<Contacts> untried,
                              const NearSolution& near) const {
  constexpr int kMostContactRounds = 16;
  for (int round = 0;; ++round) {
    const fea::Loads now = loads(load_case, multiple, closed);
    const bool same_stops = near.solved != nullptr && near.solved->closed_stops == closed;
    fea::Solution solution = solve(now, multiple, closed, same_stops ? near : NearSolution{});
    if (solution.status() != fea::SolveStatus::converged && !untried.empty()) {
      // On open stops the axle may tip, or go too far for an answer, where closed ones hold it:
      // the bump stops, or the straps.
      closed = held | untried.back();
      untried.pop_back();
      continue;
    }
    if (solution.status() != fea::SolveStatus::converged) {
      return with_linear(std::move(solution), now, closed, true, only_push(load_case));
    }
    // One at a time: two stops that change together can go on changing for ever.
    const Contacts wrong = most_wrong_stop(solution, closed);
    if (wrong == 0 || round == kMostContactRounds) {
      return with_linear(std::move(solution), now, closed, wrong == 0, only_push(load_case));
    }
    closed ^= wrong;
  }
}

CaseSolution SetModel::first_order(const parts::DesignCase& load_case, Contacts touching) const {
  const Contacts held = held_from_start(load_case);
  CaseSolution out = first_order_from(load_case, held, touching);
  if (!falls_short(load_case, assembly_, out)) return out;
  return first_order_from(load_case, held | kHeaveHeld, touching);
}

CaseSolution SetModel::first_order_from(const parts::DesignCase& load_case, Contacts held,
                                        Contacts touching) const {
  Touching there = touching_at_first(load_case, 1.0, held, touching);
  const auto seats = only_push(load_case) ? assembly_.coil_seats : std::vector<parts::CoilSeat>();
  LinearSolution linear(ready(there.closed).factored, loads(load_case, 1.0, there.closed), seats,
                        std::move(there.linear));
  const fea::Solution& solution = linear();
  const bool settled = there.settled && most_wrong_stop(solution, there.closed) == 0;
  return {solution, linear, there.closed, settled, fea::Method::linear};
}

bool SetModel::can_start_from(const CaseSolution& solved) const {
  return solved.method == fea::Method::large_displacement &&
         solved.solution.can_start(ready(0).factored);
}

bool SetModel::can_move(const parts::DesignCase& load_case) const {
  const fea::Loads all = loads(load_case, 1.0, 0);
  return all.strains.empty() && all.moves.empty();
}

SetModel::Ready& SetModel::moved_model(const parts::DesignCase& load_case, Contacts held) const {
  const loads::Place& place = load_case.place;
  const bool heave = (held & kHeaveHeld) != 0;
  const std::pair key(heave ? place.heave : std::numeric_limits<double>::infinity(),
                      only_push(load_case));
  const auto found = moved_.find(key);
  if (found != moved_.end()) return found->second;
  const fea::Model& model = assembly_.model;
  fea::Added added;
  for (const parts::TravelStop& stop : assembly_.stops) {
    if (stop.known()) added.gaps.push_back(gap_of(stop, model));
  }
  for (const parts::CoilSeat& seat : assembly_.coil_seats) {
    if (only_push(load_case)) added.gaps.push_back(gap_of(seat, model));
  }
  if (heave) {
    fea::Spring ground = ground_spring(*assembly_.axle, kHeaveHeld);
    ground.preload[2] = -kHeldHeave * place.heave;
    added.springs.push_back(ground);
  }
  return moved_.emplace(key, Ready{fea::with_added(ready(0).factored, added), {}, {}})
      .first->second;
}

/// The gaps of a moved model that a solution of small rotations closes: stops and straps, then
/// coils that leave their seat.
std::vector<bool> SetModel::touching(const fea::Model& moved, const parts::DesignCase& load_case,
                                     const CaseSolution& second_order) const {
  std::vector<bool> out;
  for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
    if (assembly_.stops[i].known()) out.push_back((second_order.closed_stops & (1U << i)) != 0);
  }
  const bool converged = second_order.solution.status() == fea::SolveStatus::converged;
  for (const parts::CoilSeat& seat : assembly_.coil_seats) {
    if (!only_push(load_case)) break;
    out.push_back(converged && -rise_of(seat.node, seat.offset_g, second_order.solution) >
                                   std::fmax(0.0, seat.leaves_at()));
  }
  INVARIANT(out.size() == moved.gaps.size());
  return out;
}

CaseSolution SetModel::solve_moved(const parts::DesignCase& load_case, double multiple,
                                   const NearSolution& near) const {
  if (near.solved == nullptr) {
    const CaseSolution second_order = solve(load_case, multiple);
    return solve_moved(load_case, multiple, {&second_order, multiple});
  }
  const Contacts held = held_from_start(load_case);
  CaseSolution out = solve_moved_from(load_case, multiple, held, near);
  if (!falls_short(load_case, assembly_, out)) return out;
  CaseSolution there = solve_moved_from(load_case, multiple, held | kHeaveHeld, near);
  if (out.solution.status() == fea::SolveStatus::converged) return there;
  // Between a coil that has left its seat and a strap nothing holds the axle: it falls through
  // there, and stands when let go of where it is caught.
  CaseSolution let_go = solve_moved_from(load_case, multiple, held, {&there, multiple});
  return falls_short(load_case, assembly_, let_go) ? there : let_go;
}

CaseSolution SetModel::solve_moved_from(const parts::DesignCase& load_case, double multiple,
                                        Contacts held, const NearSolution& near) const {
  // Where nothing is found in so many steps, the frame is lost.
  fea::SolveOptions options{.method = fea::Method::large_displacement,
                            .tolerance = 1.0e-8,
                            .most_steps = 30,
                            .shortest_step = 0.05};
  Ready& now = moved_model(load_case, held);
  options.workspace = &now.workspace;
  if (near.solved->method != options.method) {
    options.touching = touching(now.factored.model(), load_case, *near.solved);
    options.near = &near.solved->solution;
    options.near_factor = multiple / near.multiple;
  } else if (near.solved->solution.can_start(now.factored)) {
    options.start = near.solved->solution.state();
  }
  if ((held & kRollHeld) != 0) return rolled(load_case, multiple, held, near, options);
  return finish_moved(fea::solve(now.factored, loads(load_case, multiple, 0), options), load_case,
                      multiple, held);
}

/// In small rotations, where the moment is a straight line over the roll, whatever the loads.
/// [N m/rad]
double SetModel::roll_rate(const parts::DesignCase& load_case, Contacts held) const {
  const auto found = roll_rates_.find(held);
  if (found != roll_rates_.end()) return found->second;
  parts::DesignCase at = load_case;
  std::array<double, 2> moments{};
  constexpr std::array<double, 2> kProbes = {0.0, 0.01};  // [rad]
  for (std::size_t i = 0; i < 2; ++i) {
    at.place.roll = kProbes[i];
    const fea::Solution linear =
        fea::solve(ready(held).factored, loads(at, 1.0, held), {.method = fea::Method::linear});
    moments[i] = ground_hold(assembly_, at.place, held, linear).moment;
  }
  return roll_rates_[held] = (moments[1] - moments[0]) / (kProbes[1] - kProbes[0]);
}

/// The ground rolls the axle with one wheel up and the other down; how hard is looked for.
CaseSolution SetModel::rolled(const parts::DesignCase& load_case, double multiple, Contacts held,
                              const NearSolution& near, fea::SolveOptions options) const {
  constexpr double kCloseEnough = 1.0e-5;  // [rad]: a hundredth of a millimeter at the wheels
  constexpr int kMostRounds = 12;
  const double roll = load_case.place.roll;
  const CaseSolution& known = *near.solved;
  const bool converged = known.solution.status() == fea::SolveStatus::converged;
  double moment =
      converged
          ? ground_hold(assembly_, load_case.place, known).moment
          : ground_hold(assembly_, load_case.place, known.closed_stops, known.linear()).moment;
  const double small_rate = roll_rate(load_case, held);
  double rate = small_rate;
  if (std::isfinite(known.roll_rate_found)) {
    // Beside, in another set: what is stiffer here in small rotations is so by as much in large.
    rate *= known.roll_rate_found;
    moment += (small_rate - known.roll_rate) * known.roll_rate_found * roll;
  }
  const double track = parts::vehicle_of(design_).track;
  double last_roll = base::kUnset;
  double last_moment = base::kUnset;
  for (int round = 0;; ++round) {
    fea::Loads now = loads(load_case, multiple, 0);
    for (const double side : {0.5, -0.5}) {
      const fea::NodeId node = parts::axle_near(assembly_, side * track);
      now.nodes.push_back({.node = node,
                           .offset_g = {0.0, side * track - assembly_.model[node].at_g.y(), 0.0},
                           .force_g = {0.0, 0.0, 2.0 * side * moment / track},
                           .moment_g = {0.0, 0.0, 0.0}});
    }
    CaseSolution out = finish_moved(fea::solve(moved_model(load_case, held).factored, now, options),
                                    load_case, multiple, held);
    out.ground_moment = moment;
    out.roll_rate = small_rate;
    out.roll_rate_found = rate / small_rate;
    if (out.solution.status() != fea::SolveStatus::converged) return out;
    const double reached = out.solution.placement(*assembly_.axle)[3];
    if (std::abs(reached - roll) < kCloseEnough) return out;
    if (round == kMostRounds) {
      out.contact_settled = false;
      return out;
    }
    if (round > 0 && reached != last_roll) rate = (moment - last_moment) / (reached - last_roll);
    last_roll = reached;
    last_moment = moment;
    moment += rate * (roll - reached);
    options.start = out.solution.state();
  }
}

CaseSolution SetModel::finish_moved(fea::Solution solution, const parts::DesignCase& load_case,
                                    double multiple, Contacts held) const {
  Contacts closed = held;
  if (solution.status() == fea::SolveStatus::converged) {
    for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
      if (force_of(assembly_.stops[i], solution) > 0.0) closed |= 1U << i;
    }
  }
  CaseSolution out = with_linear(std::move(solution), loads(load_case, multiple, closed), closed,
                                 true, only_push(load_case));
  out.method = fea::Method::large_displacement;
  return out;
}

fea::BucklingResult SetModel::buckle(const parts::DesignCase& load_case, const CaseSolution& at,
                                     const fea::BucklingOptions& options) const {
  return buckling(at.closed_stops).run(loads(load_case, 1.0, at.closed_stops), options);
}

void SetModel::give_memory_back() const {
  const auto give_back = [](Ready& now) {
    now.workspace = {};
    now.buckling.reset();
  };
  for (auto& [closed, now] : ready_) give_back(now);
  for (auto& [place, now] : moved_) give_back(now);
}

bool SetModel::none_below(const parts::DesignCase& load_case, const CaseSolution& at,
                          double factor) const {
  const fea::Loads now = loads(load_case, 1.0, at.closed_stops);
  const bool at_hand = at.method == fea::Method::linear && at.linear.let_go().empty();
  return buckling(at.closed_stops).n_below(now, factor, at_hand ? &at.linear() : nullptr) == 0;
}

fea::Buckling& SetModel::buckling(Contacts closed_stops) const {
  Ready& now = ready(closed_stops);
  if (!now.buckling) now.buckling.emplace(now.factored);
  return *now.buckling;
}

const fea::Condition& SetModel::condition(Contacts closed_stops) const {
  const auto found = conditions_.find(closed_stops);
  if (found != conditions_.end()) return found->second;
  return conditions_.emplace(closed_stops, fea::condition(ready(closed_stops).factored))
      .first->second;
}

fea::FactorSize SetModel::factor_size(Contacts closed_stops) const {
  return fea::factor_size(ready(closed_stops).factored);
}

}  // namespace studies
