#include "fea/internal_force.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "fea/geometric_stiffness.hpp"

namespace fea {
namespace {

/// Adds up what is put on each unknown, and sees how large it is.
class Gather {
 public:
  Gather(const System& system, Eigen::VectorXd& out, Contributions* largest)
      : system_(system), out_(out), largest_(largest) {}

  void operator()(Eigen::Index unknown, double force) const {
    out_(unknown) += force;
    if (largest_ != nullptr) largest_->take(force, system_.turns(static_cast<int>(unknown)));
  }

 private:
  const System& system_;
  Eigen::VectorXd& out_;
  Contributions* largest_;
};

void add_beam(const BeamPart& beam, const StressState* state, std::size_t index,
              const Eigen::VectorXd& motion, const Gather& gather) {
  const std::array<EndMotion, 2> ends = {end_motion(beam.ends[0], motion),
                                         end_motion(beam.ends[1], motion)};
  const Vector12 force_l = force_between_ends(
      beam, state != nullptr ? &state->elastic_l[index] : nullptr, seen_by_member(beam, ends));
  for (std::size_t end = 0; end < 2; ++end) {
    Sides on{.near = Vector6::Zero(), .far = wrench_at(beam, force_l, end)};
    if (state != nullptr && has_own_terms(beam.ends[end])) {
      const Sides more =
          connection_force({.near = ends[end].near_g, .far = ends[end].far_g}, beam.ends[end].arm_g,
                           Vector3::Zero(), -wrench_at(beam, state->ends_l[index], end));
      on.near += more.near;
      on.far += more.far;
    }
    for_each_force(beam.ends[end], ends[end], on.near, on.far, gather);
  }
}

}  // namespace

void Contributions::take(double value, bool is_moment) {
  double& kept = is_moment ? moment : force;
  kept = std::max(kept, std::abs(value));
}

Vector12 force_between_ends(const BeamPart& beam, const Vector12* elastic_l, const Vector12& q_l) {
  Vector12 out = beam_elastic_force(beam.stiffness_l, q_l);
  if (elastic_l != nullptr) {
    add_beam_geometric_force(*elastic_l, beam.flex, beam.length, beam.polar, q_l, out);
  }
  return out;
}

BlockVector internal_force(const SpringPart& spring, const Vector6* wrench_g,
                           const Eigen::VectorXd& motion) {
  const Sides at = sides_of(spring, motion);
  const Vector6 elastic = spring.stiffness_g * (at.far - at.near);
  Sides on{.near = -elastic, .far = elastic};
  if (wrench_g != nullptr) {
    const Sides more = connection_force(at, spring.near_arm_g, spring.far_arm_g, *wrench_g);
    on.near += more.near;
    on.far += more.far;
  }
  return on_unknowns(spring, on);
}

void add_internal_force(const System& system, const LoadCase& load_case, const StressState* state,
                        const Eigen::VectorXd& motion, Eigen::VectorXd& out,
                        Contributions* largest) {
  const Gather gather(system, out, largest);
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    add_beam(system.beams()[i], state, i, motion, gather);
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    const SpringPart& spring = system.springs()[i];
    const BlockVector force =
        internal_force(spring, state != nullptr ? &state->springs_g[i] : nullptr, motion);
    for (Eigen::Index k = 0; k < force.size(); ++k) gather(spring.unknowns(k), force(k));
  }
  if (state == nullptr) return;
  for (const NodeLoad& load : load_case.loads.nodes) {
    const Eigen::Index first = first_unknown(load.node) + 3;
    const Vector3 turn = motion.segment<3>(first);
    const Vector3 moment = arm_geometric(load.force_g, load.offset_g) * turn;
    for (Eigen::Index i = 0; i < 3; ++i) gather(first + i, -moment(i));
  }
}

}  // namespace fea
