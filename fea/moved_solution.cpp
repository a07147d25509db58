#include "fea/moved_solution.hpp"

#include <algorithm>
#include <utility>

#include <Eigen/Geometry>

#include "fea/moved_spring.hpp"
#include "fea/newton.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

Vector6 placement_of(const Placed& placed) {
  Vector6 out;
  out << placed.displacement_g, rotation_vector(placed.turn_g);
  return out;
}

LoadsBetween turned(const LoadsBetween& loads, const Matrix3& turn) {
  LoadsBetween out = loads;
  for (LoadsBetween::Point& point : out.points) {
    point.force_l = (turn * point.force_l).eval();
    point.moment_l = (turn * point.moment_l).eval();
  }
  for (LoadsBetween::Line& line : out.lines) {
    line.at_from_l = (turn * line.at_from_l).eval();
    line.at_to_l = (turn * line.at_to_l).eval();
  }
  return out;
}

/// Ready for resultants in the moved axes; stations are counted along the unloaded length.
Solution::Data::Cut make_cut(const BeamPart& beam, const LoadsBetween& loads_l, const Matrix3& axes,
                             const Vector12& ends, const std::array<Vector3, 2>& local) {
  Solution::Data::Cut cut{.loads = turned(loads_l, axes.transpose() * beam.axes_lg.transpose()),
                          .start_l = ends.head<6>()};
  const Vector3 start = cut.start_l.head<3>();
  const Vector6 between = cut.loads.wrench_up_to(beam.length);
  const Vector3 reached =
      -cut.start_l.tail<3>() + beam.length * Vector3::UnitX().cross(start) - between.tail<3>();
  cut.gap_l = ends.tail<3>() - reached;
  cut.about_y = {local[0].y(), local[1].y()};
  cut.about_z = {local[0].z(), local[1].z()};
  return cut;
}

void add_beams(Solution::Data& data, const System& system, const LoadCase& load_case,
               const std::vector<MovedBeam>& beams) {
  data.end_forces_l.reserve(beams.size());
  data.cuts.reserve(beams.size());
  data.moved_axes.reserve(beams.size());
  data.ends_g.reserve(beams.size());
  for (std::size_t i = 0; i < beams.size(); ++i) {
    const MovedBeam& beam = beams[i];
    const Matrix3 axes = beam.axes_gl.transpose();
    Vector12 ends_l;
    for (const Eigen::Index row : {0, 3, 6, 9}) {
      ends_l.segment<3>(row) = axes * beam.ends_g.segment<3>(row);
    }
    data.end_forces_l.push_back(ends_l);
    data.cuts.push_back(make_cut(system.beams()[i], load_case.members[i].between, beam.axes_gl,
                                 ends_l, beam.local));
    data.moved_axes.emplace_back(axes);
    data.ends_g.push_back({placement_of(beam.ends[0]), placement_of(beam.ends[1])});
    for (const Vector3& local : beam.local) {
      data.local_rotation = std::max(data.local_rotation, local.norm());
    }
  }
}

/// What supports, springs and gaps to the ground put on the nodes.
Eigen::VectorXd reactions(const MovedFrame& frame, const MovedState& state,
                          const std::vector<bool>& closed, const Eigen::VectorXd& unbalanced) {
  const System& system = frame.system();
  const Model& model = system.model();
  Eigen::VectorXd out = Eigen::VectorXd::Zero(system.n_unknowns());
  for (int i = 0; i < system.n_unknowns(); ++i) {
    if (system.held(i)) out(i) = unbalanced(i);
  }
  for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) {
    const NodeId node{i};
    if (!frame.holds_one_rotation(node)) continue;
    // There the entries work on the rotation vector.
    const Matrix3 map = inverse_spin_map(rotation_vector(frame.placed(state, node).turn_g));
    auto moment = out.segment<3>(first_unknown(node) + 3);
    moment = (map.transpose() * moment).eval();
  }
  for (const Spring& spring : model.springs) {
    if (spring.b) continue;
    const PairForce force = pair_force(law_of(spring), Placed(), frame.placed(state, spring.a));
    out.segment<6>(first_unknown(spring.a)) -= force.terms.force_g.tail<6>();
  }
  for (std::size_t g = 0; g < model.gaps.size(); ++g) {
    const Gap& gap = model.gaps[g];
    if (!closed[g] || (gap.a.node && gap.b.node)) continue;
    const Vector12 force =
        gap_terms(model, gap, frame.placed(state, gap.a.node), frame.placed(state, gap.b.node))
            .force_g;
    if (gap.a.node) out.segment<6>(first_unknown(*gap.a.node)) -= force.head<6>();
    if (gap.b.node) out.segment<6>(first_unknown(*gap.b.node)) -= force.tail<6>();
  }
  return out;
}

void add_springs(Solution::Data& data, const MovedFrame& frame, const MovedState& state,
                 const std::vector<bool>& closed) {
  for (const Spring& spring : frame.system().model().springs) {
    const Placed near = spring.b ? frame.placed(state, spring.a) : Placed();
    const Placed far = frame.placed(state, spring.b ? spring.b : spring.a);
    const double sign_on_b = spring.b ? -1.0 : 1.0;
    data.springs_s.emplace_back(sign_on_b * pair_force(law_of(spring), near, far).true_s);
  }
  const std::vector<double> overlaps = frame.overlaps(state);
  for (std::size_t g = 0; g < overlaps.size(); ++g) {
    data.gaps.push_back(closed[g] ? frame.model().gaps[g].stiffness * overlaps[g] : 0.0);
  }
}

}  // namespace

Solution make_moved_solution(const MovedFrame& frame, const LoadCase& load_case,
                             const MovedState& state, const std::vector<bool>& closed,
                             const MovedForces& forces) {
  const System& system = frame.system();
  auto data = data_for(system);
  data->status = SolveStatus::converged;
  data->residual = relative_residual(system, forces, forces.unbalanced);
  data->motion = Eigen::VectorXd::Zero(system.n_unknowns());
  for (std::size_t i = 0; i < state.nodes.size(); ++i) {
    data->motion.segment<6>(first_unknown(NodeId{static_cast<int>(i)})) =
        placement_of(state.nodes[i]);
  }
  data->motion.tail(state.joints.size()) = state.joints;
  data->reactions = reactions(frame, state, closed, forces.unbalanced);
  data->local_rotation = 0.0;
  add_beams(*data, system, load_case, forces.beams);
  add_springs(*data, frame, state, closed);
  data->state = std::make_shared<const MovedState>(state);
  return Solution(std::move(data));
}

Solution make_failed_with_words(const System& system, SolveStatus status, std::string words) {
  auto data = std::make_shared<Solution::Data>(make_failed(system, status).data());
  data->words = std::move(words);
  return Solution(std::move(data));
}

}  // namespace fea
