#pragma once

#include "fea/stress_state.hpp"

namespace fea {

/// Largest single contributions to an internal force.
struct Contributions {
  double force = 0.0;   ///< [N]
  double moment = 0.0;  ///< [N m]

  void take(double value, bool is_moment);
};

/// Adds (K + Kg) u to `out`, Kg the geometric stiffness that `state` gives (see
/// geometric_stiffness); null = K u alone. One beam after another, without a matrix.
/// @param motion   u, full
/// @param out      full
/// @param largest  grown by what single beams and springs put on an unknown; may be null
void add_internal_force(const System& system, const LoadCase& load_case, const StressState* state,
                        const Eigen::VectorXd& motion, Eigen::VectorXd& out,
                        Contributions* largest = nullptr);

/// One spring's part of it, over its unknowns.
[[nodiscard]] BlockVector internal_force(const SpringPart& spring, const Vector6* wrench_g,
                                         const Eigen::VectorXd& motion);

/// K q of a beam between its ends, with its geometric part if there are forces to give it, member
/// axes.
/// @param elastic_l  of the state that gives Kg; may be null
[[nodiscard]] Vector12 force_between_ends(const BeamPart& beam, const Vector12* elastic_l,
                                          const Vector12& q_l);

}  // namespace fea
