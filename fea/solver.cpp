#include "fea/solver.hpp"

#include <utility>

#include "base/input_error.hpp"
#include "fea/large_displacement.hpp"
#include "fea/linear_motion.hpp"
#include "fea/mechanism.hpp"
#include "fea/second_order.hpp"
#include "fea/solution.hpp"

namespace fea {

struct Workspace::Memory {
  std::optional<SecondOrder> second_order;
  MovedMemory moved;
  Eigen::VectorXd start;
};

Workspace::Workspace() = default;
Workspace::~Workspace() = default;
Workspace::Workspace(Workspace&&) noexcept = default;
Workspace& Workspace::operator=(Workspace&&) noexcept = default;

Workspace::Memory& Workspace::memory() {
  if (memory_ == nullptr) memory_ = std::make_unique<Memory>();
  return *memory_;
}

namespace {

Solution second_order(const std::shared_ptr<const System>& system, const LoadCase& load_case,
                      const Eigen::VectorXd& linear, const SolveOptions& options,
                      Workspace::Memory& memory) {
  if (!memory.second_order || &memory.second_order->system() != system.get()) {
    memory.second_order.emplace(system);
  }
  const Eigen::VectorXd* start = nullptr;
  if (options.near != nullptr && options.near->status() == SolveStatus::converged &&
      options.near->data().motion.size() == system->n_unknowns()) {
    memory.start = options.near_factor * options.near->data().motion;
    start = &memory.start;
  }
  SecondOrder& solver = *memory.second_order;
  const SolveStatus status = solver.run(load_case, linear, start, options);
  if (status != SolveStatus::converged) return make_failed(*system, status);
  return make_solution(*system, load_case, solver.motion(), &solver.state());
}

/// @param memory  starts anew with another system
Solution moved(const std::shared_ptr<const System>& system, const Loads& loads,
               const SolveOptions& options, MovedMemory& memory) {
  if (!memory.shared || memory.shared->system != system) {
    memory.factor.reset();
    memory.forces.clear();
    memory.shared = std::make_shared<const MovedModel>(system);
  }
  return large_displacement(memory, loads, options);
}

[[noreturn]] void refuse(const Mechanism& loose) {
  throw base::InputError("model", loose.words + "; nothing holds it");
}

void require_movable(const Loads& loads) {
  if (loads.strains.empty() && loads.moves.empty()) return;
  throw base::InputError("model", "large displacement takes no strains or settlements");
}

}  // namespace

const Model& Factored::model() const {
  return system_->model();
}

std::variant<Factored, Mechanism> factor_if_held(Model model, const Factored* like) {
  const System* held = like != nullptr ? &like->system() : nullptr;
  auto system = std::make_shared<const System>(std::move(model), held);
  if (std::optional<Mechanism> mechanism = mechanism_of(*system, held)) {
    return *std::move(mechanism);
  }
  return Factored(std::move(system));
}

Factored factor(Model model, const Factored* like) {
  std::variant<Factored, Mechanism> made = factor_if_held(std::move(model), like);
  if (const auto* loose = std::get_if<Mechanism>(&made)) refuse(*loose);
  return std::get<Factored>(std::move(made));
}

Factored with_added(const Factored& factored, const Added& added) {
  auto system = std::make_shared<const System>(factored.system(), added);
  if (const std::optional<Mechanism> loose = mechanism_of(*system, &factored.system())) {
    refuse(*loose);
  }
  return Factored(std::move(system));
}

Solution solve(const Factored& factored, const Loads& loads, const SolveOptions& options) {
  const std::shared_ptr<const System> system = factored.share();
  if (options.method == Method::large_displacement) {
    require_movable(loads);
    MovedMemory memory;
    return moved(system, loads, options,
                 options.workspace != nullptr ? options.workspace->memory().moved : memory);
  }
  const LoadCase load_case = prepare(*system, loads);
  const Eigen::VectorXd motion = linear_motion(*system, load_case);
  if (options.method == Method::linear || system->n_free() == 0) {
    return make_solution(*system, load_case, motion, nullptr);
  }
  if (options.workspace != nullptr) {
    return second_order(system, load_case, motion, options, options.workspace->memory());
  }
  Workspace::Memory memory;
  return second_order(system, load_case, motion, options, memory);
}

}  // namespace fea
