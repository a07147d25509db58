#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "fea/moved_factor.hpp"
#include "fea/solver.hpp"

/// Equilibrium with finite displacements and rotations.
namespace fea {

/// What is used again from one solution of a model to the next.
struct MovedMemory {
  std::shared_ptr<const MovedModel> shared;
  std::optional<MovedFactor> factor;
  std::vector<MovedForces> forces;  ///< of solutions no longer looked at

  [[nodiscard]] MovedForces spare_forces();
};

/// Newton's method along the load, in as few steps as converge; a step ends where the first gap
/// closes or opens. What is found is judged by the inertia of the tangent there.
[[nodiscard]] Solution large_displacement(MovedMemory& memory, const Loads& loads,
                                          const SolveOptions& options);

}  // namespace fea
