#pragma once

#include "fea/moved_frame.hpp"
#include "fea/solver.hpp"

/// Equilibrium with finite displacements and rotations.
namespace fea {

/// Newton's method along the load, in as few steps as converge; a step ends where the first gap
/// closes or opens. What is found is judged by the inertia of the tangent there.
[[nodiscard]] Solution large_displacement(const std::shared_ptr<const MovedModel>& shared,
                                          const Loads& loads, const SolveOptions& options);

}  // namespace fea
