#include "fea/deformed_frame.hpp"

#include <array>
#include <utility>

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"
#include "fea/rotation.hpp"
#include "fea/tangent.hpp"

namespace fea {
namespace {

// Beyond these small rotations say nothing.
constexpr double kMostTurn = 0.5;   // of a node  [rad]
constexpr double kMostApart = 0.5;  // motion of a beam's ends from each other, of its length

Vector3 turn_of(const Eigen::VectorXd& motion, NodeId node) {
  return motion.segment<3>(first_unknown(node) + 3);
}

/// As the equations move arms: along the tangent.
void swing(Vector3& arm_g, const Vector3& turn_g) {
  arm_g += turn_g.cross(arm_g).eval();
}

/// Displacements and rotations of a beam's ends, global axes.
std::array<Vector6, 2> ends_of(const BeamPart& beam, const Eigen::VectorXd& motion) {
  const Vector12 q_l = end_freedoms(beam, motion);
  std::array<Vector6, 2> out;
  for (std::size_t end = 0; end < 2; ++end) {
    const Eigen::Index first = 6 * static_cast<Eigen::Index>(end);
    out[end] << beam.axes_lg.transpose() * q_l.segment<3>(first),
        beam.axes_lg.transpose() * q_l.segment<3>(first + 3);
  }
  return out;
}

void move_beam(Model& moved, const System& system, const Eigen::VectorXd& motion,
               std::size_t index) {
  const Model& model = system.model();
  const BeamPart& part = system.beams()[index];
  Beam& beam = moved.beams[index];
  const std::array<Vector6, 2> ends = ends_of(part, motion);
  const std::array<Vector3, 2> at = {end_a_g(model, beam), end_b_g(model, beam)};
  for (std::size_t i = 0; i < 2; ++i) {
    BeamEnd& end = i == 0 ? beam.a : beam.b;
    // Where the end itself has gone, the give of its joint included.
    end.offset_g = at[i] + ends[i].head<3>() - moved[end.node].at_g;
    if (end.joint) {
      end.joint->axes_g = rotation_of(turn_of(motion, end.node)) * end.joint->axes_g;
    }
  }
  const Vector3 z = part.axes_lg.row(2);
  beam.z_toward_g = rotation_of(0.5 * (ends[0].tail<3>() + ends[1].tail<3>())) * z;
}

Model moved_model(const System& system, const Eigen::VectorXd& motion) {
  Model moved = system.model();
  for (std::size_t i = 0; i < moved.nodes.size(); ++i) {
    moved.nodes[i].at_g += motion.segment<3>(first_unknown(NodeId{static_cast<int>(i)}));
  }
  for (std::size_t i = 0; i < moved.beams.size(); ++i) move_beam(moved, system, motion, i);
  for (Spring& spring : moved.springs) {
    swing(spring.offset_a_g, turn_of(motion, spring.a));
    if (!spring.b) continue;
    swing(spring.offset_b_g, turn_of(motion, *spring.b));
    // Its force acts where the far point is, also on a, with which its axes turn.
    spring.offset_a_g = moved[*spring.b].at_g + spring.offset_b_g - moved[spring.a].at_g;
    spring.axes_g = rotation_of(turn_of(motion, spring.a)) * spring.axes_g;
  }
  return moved;
}

/// What acts between a moved beam's ends, in its moved axes: the end forces that balance at the
/// nodes, and the elastic moments with what makes them balance the shears along the moved chord.
Vector12 between_ends(const BeamPart& before, const BeamPart& now, const Vector12& elastic_l,
                      const Vector12& q_l) {
  const Vector12 balanced_l = elastic_l + geometric_between_ends(before, elastic_l) * q_l;
  const Vector3 at_b = now.axes_lg * (before.axes_lg.transpose() * balanced_l.segment<3>(6));
  Vector12 out = elastic_l;
  out.segment<3>(0) = -at_b;
  out.segment<3>(6) = at_b;
  const double open_y = now.length * at_b.z() - (out(4) + out(10));
  const double open_z = -now.length * at_b.y() - (out(5) + out(11));
  for (const Eigen::Index end : {0, 6}) {
    out(end + 4) += 0.5 * open_y;
    out(end + 5) += 0.5 * open_z;
  }
  return out;
}

StressState moved_state(const System& system, const System& now, const LoadCase& load_case,
                        const Eigen::VectorXd& motion, const StressState& state) {
  StressState out = state;
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    const BeamPart& before = system.beams()[i];
    const BeamPart& after = now.beams()[i];
    out.elastic_l[i] =
        between_ends(before, after, state.elastic_l[i], end_freedoms(before, motion));
    const Matrix3 over = after.axes_lg * before.axes_lg.transpose();
    out.ends_l[i] = out.elastic_l[i];
    for (const Eigen::Index first : {0, 3, 6, 9}) {
      out.ends_l[i].segment<3>(first) -= over * load_case.members[i].equivalent_l.segment<3>(first);
    }
  }
  for (std::size_t i = 0; i < system.springs().size(); ++i) {
    const Spring& spring = system.model().springs[i];
    if (!spring.b) continue;
    const Vector3 turn = turn_of(motion, spring.a);
    Vector6& wrench = out.springs_g[i];
    wrench.head<3>() += turn.cross(state.springs_g[i].head<3>());
    wrench.tail<3>() += turn.cross(state.springs_g[i].tail<3>());
  }
  return out;
}

}  // namespace

bool turns_little(const System& system, const Eigen::VectorXd& motion) {
  for (int i = 0; i < static_cast<int>(system.model().nodes.size()); ++i) {
    if (!(turn_of(motion, NodeId{i}).norm() < kMostTurn)) return false;
  }
  for (const BeamPart& beam : system.beams()) {
    const Vector12 q_l = end_freedoms(beam, motion);
    const double apart = (q_l.segment<3>(6) - q_l.segment<3>(0)).norm();
    if (!(apart < kMostApart * beam.length)) return false;
  }
  return true;
}

std::optional<int> n_negative_deformed(const System& system, const LoadCase& load_case,
                                       const Eigen::VectorXd& motion, const StressState& state) {
  const System now(moved_model(system, motion), &system);
  LoadCase moved_case;
  moved_case.loads.nodes = load_case.loads.nodes;
  for (NodeLoad& load : moved_case.loads.nodes) swing(load.offset_g, turn_of(motion, load.node));
  const StressState moved = moved_state(system, now, load_case, motion, state);
  const Sparse geometric = now.scaled_sum(geometric_stiffness(now, moved_case, moved));
  return Tangent(now).n_negative(geometric.coeffs().matrix(), 1.0);
}

}  // namespace fea
