#include "fea/geometric_force.hpp"

#include "fea/geometric_stiffness.hpp"

namespace fea {
namespace {

void scatter(const BlockVector& part, const Eigen::VectorXi& unknowns, Eigen::VectorXd& full) {
  for (Eigen::Index i = 0; i < part.size(); ++i) full(unknowns(i)) += part(i);
}

void add_beam(const BeamPart& beam, const Vector12& elastic_l, const Vector12& ends_l,
              const Eigen::VectorXd& motion, Eigen::VectorXd& out) {
  const Vector12 q_l = end_freedoms(beam, motion);
  const Vector12 force_l = geometric_between_ends(beam, elastic_l) * q_l;
  if (beam.plain) {
    for (const Eigen::Index first : {0, 6}) {
      const Eigen::Index unknown = beam.map.unknowns(first);
      out.segment<3>(unknown) += beam.axes_lg.transpose() * force_l.segment<3>(first);
      out.segment<3>(unknown + 3) += beam.axes_lg.transpose() * force_l.segment<3>(first + 3);
    }
    return;
  }
  const BlockVector q = gathered(motion, beam.map.unknowns);
  BlockVector force = beam.ends_l.transpose().lazyProduct(force_l);
  for (std::size_t end = 0; end < 2; ++end) {
    if (!has_own_terms(beam, end)) continue;
    add_connection_force(beam.map.ends[end], -wrench_at(beam, ends_l, end), q, force);
  }
  scatter(force, beam.map.unknowns, out);
}

}  // namespace

void add_geometric_force(const System& system, const LoadCase& load_case, const StressState& state,
                         const Eigen::VectorXd& motion, Eigen::VectorXd& out) {
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    add_beam(system.beams()[i], state.elastic_l[i], state.ends_l[i], motion, out);
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    const SpringPart& spring = system.springs()[i];
    const BlockVector q = gathered(motion, spring.unknowns);
    BlockVector force = BlockVector::Zero(q.size());
    add_connection_force(spring.connection, state.springs_g[i], q, force);
    scatter(force, spring.unknowns, out);
  }
  const std::size_t first_node = system.beams().size() + system.springs().size();
  for (const NodeLoad& load : load_case.loads.nodes) {
    const auto block = first_node + static_cast<std::size_t>(load.node.index);
    const Eigen::VectorXi& unknowns = system.block_unknowns()[block];
    const Vector3 turn(motion(unknowns(3)), motion(unknowns(4)), motion(unknowns(5)));
    const Vector3 moment = arm_geometric(load.force_g, load.offset_g) * turn;
    for (Eigen::Index i = 0; i < 3; ++i) out(unknowns(3 + i)) -= moment(i);
  }
}

}  // namespace fea
