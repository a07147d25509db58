#include "fea/stress_state.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "fea/geometric_stiffness.hpp"

namespace fea {
namespace {

constexpr double kRounding = 64.0 * std::numeric_limits<double>::epsilon();

void grow(StressState::Size& size, const Vector3& force, const Vector3& moment) {
  size.force = std::max(size.force, force.cwiseAbs().maxCoeff());
  size.moment = std::max(size.moment, moment.cwiseAbs().maxCoeff());
}

/// Grows what rounding can make of zero in K q.
void grow_rounding(const Matrix12& k, const Vector12& q, StressState::Size& rounding) {
  const auto both = [&q](Eigen::Index i) { return std::abs(q(i)) + std::abs(q(i + 6)); };
  const auto bend = [&](Eigen::Index v, Eigen::Index r) {
    const double lever = std::abs(k(v, r));
    rounding.force = std::max(rounding.force, kRounding * (k(v, v) * both(v) + lever * both(r)));
    rounding.moment = std::max(rounding.moment, kRounding * (lever * both(v) + k(r, r) * both(r)));
  };
  rounding.force = std::max(rounding.force, kRounding * k(0, 0) * both(0));
  rounding.moment = std::max(rounding.moment, kRounding * k(3, 3) * both(3));
  bend(1, 5);
  bend(2, 4);
}

/// What the motion of a spring's two sides is made of, whatever of it cancels.
Vector6 size_of_sides(const SpringPart& spring, const Eigen::VectorXd& motion) {
  Vector6 out = Vector6::Zero();
  const auto add = [&](Eigen::Index first, const Vector3& arm_g) {
    const Vector6 q = motion.segment<6>(spring.unknowns(first)).cwiseAbs();
    const Vector3 arm = arm_g.cwiseAbs();
    out += q;
    out.head<3>() += Vector3(arm.y() * q(5) + arm.z() * q(4), arm.z() * q(3) + arm.x() * q(5),
                             arm.x() * q(4) + arm.y() * q(3));
  };
  if (!spring.to_ground()) add(0, spring.near_arm_g);
  add(spring.to_ground() ? 0 : 6, spring.far_arm_g);
  return out;
}

/// Turns of a node that a load at an arm makes felt.
Matrix6 turns_of(const NodeLoad& load) {
  Matrix6 out = Matrix6::Zero();
  out.bottomRightCorner<3, 3>() = -arm_geometric(load.force_g, load.offset_g);
  return out;
}

}  // namespace

StressState::Size StressState::size(double lever) const {
  Size raw;
  for (const Vector12& f : elastic_l) {
    grow(raw, f.segment<3>(0), f.segment<3>(3));
    grow(raw, f.segment<3>(6), f.segment<3>(9));
  }
  for (const Vector6& f : springs_g) grow(raw, f.head<3>(), f.tail<3>());
  return {.force = std::max(raw.force, raw.moment / lever),
          .moment = std::max(raw.moment, raw.force * lever)};
}

StressState stress_state(const System& system, const LoadCase& load_case,
                         const Eigen::VectorXd& motion) {
  StressState state;
  stress_state(system, load_case, motion, state);
  return state;
}

void stress_state(const System& system, const LoadCase& load_case, const Eigen::VectorXd& motion,
                  StressState& state) {
  state.elastic_l.resize(system.beams().size());
  state.ends_l.resize(system.beams().size());
  state.springs_g.resize(system.springs().size());
  state.rounding = {};
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    const BeamPart& beam = system.beams()[i];
    const Vector12 q_l = end_freedoms(beam, motion);
    grow_rounding(beam.stiffness_l, q_l, state.rounding);
    state.elastic_l[i] =
        beam_elastic_force(beam.stiffness_l, q_l) - load_case.members[i].strained_l;
    state.ends_l[i] = state.elastic_l[i] - load_case.members[i].equivalent_l;
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    const SpringPart& spring = system.springs()[i];
    const Sides at = sides_of(spring, motion);
    const Vector6 size = size_of_sides(spring, motion);
    const Vector6 noise = kRounding * (spring.stiffness_g.cwiseAbs() * size);
    grow(state.rounding, noise.head<3>(), noise.tail<3>());
    state.springs_g[i] = spring.stiffness_g * (at.far - at.near);
  }
}

double change(const StressState& before, const StressState& after, double lever) {
  StressState::Size moved;
  for (std::size_t i = 0; i < after.elastic_l.size(); ++i) {
    const Vector12 d = after.elastic_l[i] - before.elastic_l[i];
    grow(moved, d.segment<3>(0), d.segment<3>(3));
    grow(moved, d.segment<3>(6), d.segment<3>(9));
  }
  for (std::size_t i = 0; i < after.springs_g.size(); ++i) {
    const Vector6 d = after.springs_g[i] - before.springs_g[i];
    grow(moved, d.head<3>(), d.tail<3>());
  }
  const StressState::Size size = after.size(lever);
  const double force = moved.force - after.rounding.force;
  const double moment = moved.moment - after.rounding.moment;
  // What is over its rounding has a size.
  return std::max({0.0, force > 0.0 ? force / size.force : force,
                   moment > 0.0 ? moment / size.moment : moment});
}

Blocks geometric_stiffness(const System& system, const LoadCase& load_case,
                           const StressState& state) {
  Blocks blocks(system.n_blocks());
  const std::size_t n_beams = system.beams().size();
  const std::size_t first_node = n_beams + system.springs().size();
  for (std::size_t i = 0; i < n_beams; ++i) {
    geometric_block(system.beams()[i], state.elastic_l[i], state.ends_l[i], blocks[i]);
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    blocks[n_beams + i] = geometric_block(system.springs()[i], state.springs_g[i]);
  }
  for (const NodeLoad& load : load_case.loads.nodes) {
    Eigen::MatrixXd& block = blocks[first_node + static_cast<std::size_t>(load.node.index)];
    if (block.size() == 0) block.setZero(6, 6);
    block += turns_of(load);
  }
  return blocks;
}

void scaled_geometric_stiffness(const System& system, const LoadCase& load_case,
                                const StressState& state, Eigen::VectorXd& values) {
  const std::size_t n_beams = system.beams().size();
  const std::size_t first_node = n_beams + system.springs().size();
  values.setZero(system.scaled_values().size());
  const auto add = [&](std::size_t block, const Triangle& lower) {
    system.assembly().add(block, lower, values.data());
  };
  for (std::size_t i = 0; i < n_beams; ++i) {
    add(i, geometric_triangle(system.beams()[i], state.elastic_l[i], state.ends_l[i]));
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    add(n_beams + i, lower_triangle(geometric_block(system.springs()[i], state.springs_g[i])));
  }
  for (const NodeLoad& load : load_case.loads.nodes) {
    add(first_node + static_cast<std::size_t>(load.node.index), lower_triangle(turns_of(load)));
  }
}

}  // namespace fea
