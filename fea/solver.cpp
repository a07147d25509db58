#include "fea/solver.hpp"

#include <utility>

#include "base/input_error.hpp"
#include "fea/large_displacement.hpp"
#include "fea/linear_motion.hpp"
#include "fea/mechanism.hpp"
#include "fea/solution.hpp"
#include "fea/tangent.hpp"

namespace fea {
namespace {

/// (K + Kg(f)) u = F, with f from the u before, until f settles.
Solution second_order(const std::shared_ptr<const System>& system, const LoadCase& load_case,
                      const Eigen::VectorXd& first, const SolveOptions& options) {
  const double lever = system->typical_length();
  Tangent tangent(*system);
  StressState state = stress_state(*system, load_case, first);
  for (int i = 0; i < options.max_iterations; ++i) {
    const Blocks geometric = geometric_stiffness(*system, load_case, state);
    const std::optional<int> n_negative = tangent.n_negative(system->scaled_sum(geometric), 1.0);
    if (n_negative != 0) return make_failed(system, SolveStatus::unstable);
    const Eigen::VectorXd motion =
        tangent.solve(to_balance(*system, load_case, geometric)) + load_case.imposed;
    StressState next = stress_state(*system, load_case, motion);
    if (settled(state, next, lever, options.tolerance)) {
      return make_solution(system, load_case, motion, geometric, state);
    }
    state = std::move(next);
  }
  return make_failed(system, SolveStatus::not_converged);
}

void require_movable(const Model& model, const Loads& loads) {
  if (model.rigid.empty() && loads.strains.empty() && loads.moves.empty() &&
      loads.gravity_g.isZero(0.0)) {
    return;
  }
  throw base::InputError("model",
                         "large displacement takes no rigid bodies, strains, settlements or own "
                         "weight");
}

}  // namespace

const Model& Factored::model() const {
  return system_->model();
}

Factored factor(const Model& model) {
  auto system = std::make_shared<const System>(model);
  if (const std::optional<Mechanism> mechanism = mechanism_of(*system)) {
    throw base::InputError("model", mechanism->words + "; nothing holds it");
  }
  return Factored(std::move(system));
}

Solution solve(const Factored& factored, const Loads& loads, const SolveOptions& options) {
  const std::shared_ptr<const System> system = factored.share();
  if (options.method == Method::large_displacement) {
    require_movable(system->model(), loads);
    return large_displacement(system, loads, options);
  }
  const LoadCase load_case = prepare(*system, loads);
  const Eigen::VectorXd motion = linear_motion(*system, load_case);
  if (options.method == Method::linear || system->n_free() == 0) {
    return make_solution(system, load_case, motion, {}, {});
  }
  return second_order(system, load_case, motion, options);
}

}  // namespace fea
