#pragma once

#include "fea/stress_state.hpp"

namespace fea {

/// Adds Kg times a motion without putting Kg together, for a fraction of the time.
/// @param state   the forces that Kg is made of
/// @param motion  full
/// @param out     full; right in unknowns that nothing holds
void add_geometric_force(const System& system, const LoadCase& load_case, const StressState& state,
                         const Eigen::VectorXd& motion, Eigen::VectorXd& out);

}  // namespace fea
