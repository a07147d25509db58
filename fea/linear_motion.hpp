#pragma once

#include "fea/member_loads.hpp"

/// Equilibrium with supports that may be moved: the motion is what is imposed plus that of the free
/// unknowns, which balance what the imposed part leaves.
namespace fea {

/// Loads (full) less (K + Kg) times the imposed motion.
/// @param geometric  empty = none
[[nodiscard]] Eigen::VectorXd to_balance(const System& system, const LoadCase& load_case,
                                         const Blocks& geometric);

/// The motion (full) of a load case in equilibrium in the undeformed position.
[[nodiscard]] Eigen::VectorXd linear_motion(const System& system, const LoadCase& load_case);

}  // namespace fea
