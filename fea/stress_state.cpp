#include "fea/stress_state.hpp"

#include <algorithm>
#include <limits>

#include "fea/geometric_stiffness.hpp"

namespace fea {
namespace {

constexpr double kRounding = 64.0 * std::numeric_limits<double>::epsilon();

void grow(StressState::Size& size, const Vector3& force, const Vector3& moment) {
  size.force = std::max(size.force, force.cwiseAbs().maxCoeff());
  size.moment = std::max(size.moment, moment.cwiseAbs().maxCoeff());
}

/// K q, and what rounding can make of zero in it.
Vector12 elastic_forces(const Matrix12& k, const Vector12& q, StressState::Size& rounding) {
  const Vector12 noise = kRounding * (k.cwiseAbs() * q.cwiseAbs());
  grow(rounding, noise.segment<3>(0), noise.segment<3>(3));
  grow(rounding, noise.segment<3>(6), noise.segment<3>(9));
  return k * q;
}

StressState::Size raw_size(const StressState& state) {
  StressState::Size size;
  for (const Vector12& f : state.elastic_l) {
    grow(size, f.segment<3>(0), f.segment<3>(3));
    grow(size, f.segment<3>(6), f.segment<3>(9));
  }
  for (const Vector6& f : state.springs_g) grow(size, f.head<3>(), f.tail<3>());
  return size;
}

Eigen::MatrixXd beam_block(const BeamPart& beam, const Vector12& elastic_l,
                           const Vector12& ends_l) {
  Eigen::MatrixXd block =
      beam.ends_l.transpose() * geometric_between_ends(beam, elastic_l) * beam.ends_l;
  for (std::size_t end = 0; end < 2; ++end) {
    const Connection& joint = beam.map.ends[end];
    Vector6 wrench_g;  // gradient with respect to the beam's end, of the joint alone
    const Eigen::Index first = 6 * static_cast<Eigen::Index>(end);
    wrench_g << beam.axes_lg.transpose() * ends_l.segment<3>(first),
        beam.axes_lg.transpose() * ends_l.segment<3>(first + 3);
    const bool welded_at_node = beam.map.unknowns.size() == 12 && joint.near_arm_g.isZero(0.0);
    if (!welded_at_node) block += connection_geometric(joint, -wrench_g);
  }
  return block;
}

}  // namespace

StressState::Size StressState::size(double lever) const {
  const Size raw = raw_size(*this);
  return {.force = std::max(raw.force, raw.moment / lever),
          .moment = std::max(raw.moment, raw.force * lever)};
}

StressState stress_state(const System& system, const LoadCase& load_case,
                         const Eigen::VectorXd& motion) {
  StressState state;
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    const BeamPart& beam = system.beams()[i];
    const Vector12 q_l = beam.ends_l * motion(beam.map.unknowns);
    state.elastic_l.push_back(elastic_forces(beam.stiffness_l, q_l, state.rounding) -
                              load_case.members[i].strained_l);
    state.ends_l.push_back(state.elastic_l.back() - load_case.members[i].equivalent_l);
  }
  for (const SpringPart& spring : system.springs()) {
    const Connection& ends = spring.connection;
    const Eigen::VectorXd q = motion(spring.unknowns);
    const Vector6 apart = (ends.far_g - ends.near_g) * q;
    const Vector6 noise =
        kRounding * (spring.stiffness_g.cwiseAbs() *
                     ((ends.far_g.cwiseAbs() + ends.near_g.cwiseAbs()) * q.cwiseAbs()));
    grow(state.rounding, noise.head<3>(), noise.tail<3>());
    state.springs_g.push_back(spring.stiffness_g * apart);
  }
  return state;
}

bool settled(const StressState& before, const StressState& after, double lever, double tolerance) {
  StressState difference = after;
  for (std::size_t i = 0; i < after.elastic_l.size(); ++i) {
    difference.elastic_l[i] -= before.elastic_l[i];
  }
  for (std::size_t i = 0; i < after.springs_g.size(); ++i) {
    difference.springs_g[i] -= before.springs_g[i];
  }
  const StressState::Size moved = raw_size(difference);
  const StressState::Size size = after.size(lever);
  return moved.force <= tolerance * size.force + after.rounding.force &&
         moved.moment <= tolerance * size.moment + after.rounding.moment;
}

Matrix12 geometric_between_ends(const BeamPart& beam, const Vector12& elastic_l) {
  return beam_geometric(elastic_l, beam.flex, beam.length, beam.polar);
}

Blocks geometric_stiffness(const System& system, const LoadCase& load_case,
                           const StressState& state) {
  Blocks blocks;
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    blocks.push_back(beam_block(system.beams()[i], state.elastic_l[i], state.ends_l[i]));
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    blocks.push_back(connection_geometric(system.springs()[i].connection, state.springs_g[i]));
  }
  const std::size_t first_node = blocks.size();
  blocks.resize(first_node + system.model().nodes.size());
  for (const NodeLoad& load : load_case.loads.nodes) {
    Eigen::MatrixXd& block = blocks[first_node + static_cast<std::size_t>(load.node.index)];
    if (block.size() == 0) block = Eigen::MatrixXd::Zero(6, 6);
    block.bottomRightCorner<3, 3>() -= arm_geometric(load.force_g, load.offset_g);
  }
  return blocks;
}

}  // namespace fea
