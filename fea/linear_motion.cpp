#include "fea/linear_motion.hpp"

namespace fea {

Eigen::VectorXd to_balance(const System& system, const LoadCase& load_case,
                           const Blocks& geometric) {
  Eigen::VectorXd force = load_case.vector;
  if (load_case.imposed.isZero(0.0)) return force;
  for (std::size_t b = 0; b < system.n_blocks(); ++b) {
    const Eigen::VectorXi& unknowns = system.unknowns(b);
    const Eigen::VectorXd q = load_case.imposed(unknowns);
    if (q.isZero(0.0)) continue;
    if (system.stiffness(b).size() > 0) force(unknowns) -= system.stiffness(b) * q;
    if (!geometric.empty() && geometric[b].size() > 0) force(unknowns) -= geometric[b] * q;
  }
  return force;
}

Eigen::VectorXd linear_motion(const System& system, const LoadCase& load_case) {
  if (system.n_free() == 0) return load_case.imposed;
  const Eigen::VectorXd force = system.to_scaled_force(to_balance(system, load_case, {}));
  return system.from_scaled_motion(system.factor().solve(force)) + load_case.imposed;
}

}  // namespace fea
