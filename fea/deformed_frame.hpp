#pragma once

#include <optional>

#include "fea/stress_state.hpp"

namespace fea {

/// Whether a second-order answer's rotations are small enough for it to say anything: no node turns
/// by over half a radian, no beam's ends move apart by over half of its length.
/// @param motion  full
[[nodiscard]] bool turns_little(const System& system, const Eigen::VectorXd& motion);

/// Negative eigenvalues of K + Kg of the frame as it stands after a second-order solution: nodes
/// and beams' ends moved by `motion`, axes and arms turned, the forces those that balance there.
///
/// On the undeformed geometry the forces of a second-order solution are out of balance by Kg u.
/// A piece that little holds against a rigid motion t (a bent link between balls, about its chord)
/// takes that for a stiffness of that motion, of either sign. Here it is exactly
/// sum of (t x X) (t x F) over the loads F at their moved places X (derived; what the corotational
/// tangent has in equilibrium).
/// @param motion  full; answers (K + Kg) motion = loads, and turns little
/// @param state   its forces
/// @return nothing when a pivot is too small to trust
[[nodiscard]] std::optional<int> n_negative_deformed(const System& system,
                                                     const LoadCase& load_case,
                                                     const Eigen::VectorXd& motion,
                                                     const StressState& state);

}  // namespace fea
