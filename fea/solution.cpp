#include "fea/solution.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>

#include "base/invariant.hpp"
#include "fea/internal_force.hpp"
#include "fea/moved_frame.hpp"

namespace fea {
namespace {

double residual_of(const System& system, const Eigen::VectorXd& unbalanced,
                   const Contributions& largest) {
  Contributions left;
  for (int i = 0; i < system.n_unknowns(); ++i) {
    if (!system.held(i)) left.take(unbalanced(i), system.turns(i));
  }
  const double lever = system.typical_length();
  const double force = std::max(largest.force, largest.moment / lever);
  const double moment = std::max(largest.moment, largest.force * lever);
  return force > 0.0 ? std::max(left.force / force, left.moment / moment) : 0.0;
}

/// What supports and springs to the ground put on the nodes.
Eigen::VectorXd reactions(const System& system, const StressState* state,
                          const Eigen::VectorXd& motion, const Eigen::VectorXd& unbalanced) {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(system.n_unknowns());
  for (int i = 0; i < system.n_unknowns(); ++i) {
    if (system.held(i)) out(i) = unbalanced(i);
  }
  for (std::size_t s = 0; s < system.springs().size(); ++s) {
    if (system.model().springs[s].b) continue;
    // About the spring's own node: its force is about the root of that node's rigid body.
    const NodeId node = system.model().springs[s].a;
    const Vector6 at_root = -internal_force(
        system.springs()[s], state != nullptr ? &state->springs_g[s] : nullptr, motion);
    out.segment<6>(first_unknown(node)) +=
        carried(-system.roots().arm_g(node)).transpose() * at_root;
  }
  return out;
}

/// Small rotation of the axes in which a deformed beam's resultants are given: its chord's, with
/// the mean twist of its ends.
Vector3 turn_of_chord(const Vector12& q_l, double length) {
  return {0.5 * (q_l(3) + q_l(9)), (q_l(2) - q_l(8)) / length, (q_l(7) - q_l(1)) / length};
}

/// The end forces in the turned axes. A moment that does work on the rotation vector differs from
/// the moment about fixed axes by half rotation x moment.
Vector12 seen_from(const Vector3& turn_l, const Vector12& ends_l, const Vector12& q_l) {
  Vector12 out;
  for (const Eigen::Index first : {0, 6}) {
    const Vector3 force = ends_l.segment<3>(first);
    const Vector3 rotation = q_l.segment<3>(first + 3);
    const Vector3 semi = ends_l.segment<3>(first + 3);
    const Vector3 moment = semi + 0.5 * rotation.cross(semi);
    out.segment<3>(first) = force - turn_l.cross(force);
    out.segment<3>(first + 3) = moment - turn_l.cross(moment);
  }
  return out;
}

Solution::Data::Cut make_cut(const BeamPart& beam, const LoadsBetween& loads,
                             const Vector12& ends_l, const Vector12& q_l, bool turned) {
  if (!turned) return {.loads = loads, .start_l = ends_l.head<6>()};
  const Vector3 turn_l = turn_of_chord(q_l, beam.length);
  const Vector12 seen_l = seen_from(turn_l, ends_l, q_l);
  Solution::Data::Cut cut{.loads = loads.seen_from(turn_l), .start_l = seen_l.head<6>()};
  const Vector3 start = cut.start_l.head<3>();
  const Vector6 between = cut.loads.wrench_up_to(beam.length);
  const Vector3 reached =
      -cut.start_l.tail<3>() + beam.length * Vector3::UnitX().cross(start) - between.tail<3>();
  cut.gap_l = seen_l.tail<3>() - reached;
  cut.about_y = Eigen::Vector2d(q_l(4), q_l(10)).array() - turn_l.y();
  cut.about_z = Eigen::Vector2d(q_l(5), q_l(11)).array() - turn_l.z();
  return cut;
}

}  // namespace

std::shared_ptr<Solution::Data> data_for(const System& system) {
  auto data = std::make_shared<Solution::Data>();
  data->beams = system.share_beams();
  data->n_gaps = system.model().gaps.size();
  return data;
}

Solution make_failed(const System& system, SolveStatus status) {
  auto data = data_for(system);
  data->status = status;
  data->motion = Eigen::VectorXd::Constant(system.n_unknowns(), base::kUnset);
  data->reactions = data->motion;
  data->end_forces_l.assign(system.beams().size(), Vector12::Constant(base::kUnset));
  data->cuts.assign(system.beams().size(),
                    {.loads = {}, .start_l = Vector6::Constant(base::kUnset)});
  data->springs_s.assign(system.springs().size(), Vector6::Constant(base::kUnset));
  return Solution(std::move(data));
}

Solution make_solution(const System& system, const LoadCase& load_case,
                       const Eigen::VectorXd& motion, const StressState* state) {
  auto data = data_for(system);
  data->status = SolveStatus::converged;
  data->motion = motion;
  Contributions largest;
  Eigen::VectorXd unbalanced = -load_case.vector;
  add_internal_force(system, load_case, state, motion, unbalanced, &largest);
  data->residual = residual_of(system, unbalanced, largest);
  data->reactions = reactions(system, state, motion, unbalanced);
  data->end_forces_l.reserve(system.beams().size());
  data->cuts.reserve(system.beams().size());
  for (std::size_t i = 0; i < system.beams().size(); ++i) {
    const BeamPart& beam = system.beams()[i];
    const MemberLoads& loads = load_case.members[i];
    const Vector12 q_l = end_freedoms(beam, motion);
    const Vector12 ends_l =
        force_between_ends(beam, state != nullptr ? &state->elastic_l[i] : nullptr, q_l) -
        loads.strained_l - loads.equivalent_l;
    data->end_forces_l.push_back(ends_l);
    data->cuts.push_back(make_cut(beam, loads.between, ends_l, q_l, state != nullptr));
  }
  for (const SpringPart& spring : system.springs()) {
    const Sides at = sides_of(spring, motion);
    const Vector6 apart = at.far - at.near;
    data->springs_s.push_back(spring.sign_on_b * (spring.axes_sg * (spring.stiffness_g * apart)));
  }
  return Solution(std::move(data));
}

Solution make_partial(const System& system, const std::vector<BeamAt>& beams,
                      const std::vector<MemberLoads>& loads, const Eigen::VectorXd& motion) {
  auto data = data_for(system);
  data->status = SolveStatus::converged;
  data->motion = motion;
  data->end_forces_l.assign(system.beams().size(), Vector12::Constant(base::kUnset));
  data->cuts.resize(system.beams().size());
  for (std::size_t i = 0; i < beams.size(); ++i) {
    const BeamPart& beam = beams[i].part;
    const Vector12 q_l = end_freedoms(beam, motion);
    const Vector12 ends_l =
        force_between_ends(beam, nullptr, q_l) - loads[i].strained_l - loads[i].equivalent_l;
    data->end_forces_l[beams[i].index] = ends_l;
    data->cuts[beams[i].index] = make_cut(beam, loads[i].between, ends_l, q_l, false);
  }
  return Solution(std::move(data));
}

SolveStatus Solution::status() const {
  return data_->status;
}

double Solution::residual() const {
  return data_->residual;
}

Vector6 Solution::placement(NodeId node) const {
  INVARIANT(node.index >= 0);
  return data_->motion.segment<6>(first_unknown(node));
}

Vector6 Solution::end_placement(BeamId beam, int end) const {
  INVARIANT(end == 0 || end == 1);
  if (!data_->ends_g.empty()) {
    return data_->ends_g.at(static_cast<std::size_t>(beam.index)).at(static_cast<std::size_t>(end));
  }
  const BeamPart& part = data_->beams->at(static_cast<std::size_t>(beam.index));
  return end_motion(part.ends.at(static_cast<std::size_t>(end)), data_->motion).far_g;
}

Vector6 Solution::reaction(NodeId node) const {
  return data_->reactions.segment<6>(first_unknown(node));
}

Vector6 Solution::spring_force(SpringId spring) const {
  return data_->springs_s.at(static_cast<std::size_t>(spring.index));
}

Vector12 Solution::end_forces(BeamId beam) const {
  return data_->end_forces_l.at(static_cast<std::size_t>(beam.index));
}

double Solution::gap_force(GapId gap) const {
  const auto index = static_cast<std::size_t>(gap.index);
  INVARIANT(index < data_->n_gaps);
  if (data_->status != SolveStatus::converged) return base::kUnset;
  return data_->gaps.empty() ? 0.0 : data_->gaps.at(index);
}

Matrix3 Solution::axes(BeamId beam) const {
  const auto index = static_cast<std::size_t>(beam.index);
  return data_->moved_axes.empty() ? data_->beams->at(index).axes_lg : data_->moved_axes.at(index);
}

double Solution::local_rotation() const {
  return data_->local_rotation;
}

const std::string& Solution::words() const {
  return data_->words;
}

std::shared_ptr<const MovedState> Solution::state() const {
  return data_->state;
}

bool Solution::can_start(const Factored& other) const {
  if (data_->state == nullptr) return false;
  const auto n_nodes = static_cast<Eigen::Index>(data_->state->nodes.size());
  return other.model().nodes.size() == data_->state->nodes.size() &&
         other.system().n_unknowns() == 6 * n_nodes + data_->state->joints.size();
}

sections::Resultants Solution::forces_at(BeamId beam, double x) const {
  const auto index = static_cast<std::size_t>(beam.index);
  const Data::Cut& cut = data_->cuts.at(index);
  const BeamPart& part = data_->beams->at(index);
  const double length = part.length;
  INVARIANT(x >= -1.0e-6 * length && x <= (1.0 + 1.0e-6) * length);
  const double at = std::clamp(x, 0.0, length);
  const Vector3 start = cut.start_l.head<3>();
  const Vector6 between = cut.loads.wrench_up_to(at);
  const Vector3 force = -start - between.head<3>();
  const Eigen::Vector2d bow = beam_bow(part.flex, length, cut.about_y, cut.about_z, at);
  const Vector3 moment = -cut.start_l.tail<3>() + at * Vector3::UnitX().cross(start) -
                         between.tail<3>() + (at / length) * cut.gap_l +
                         start.x() * Vector3(0.0, bow.y(), -bow.x());
  return {.n = force.x(),
          .vy = force.y(),
          .vz = force.z(),
          .t = moment.x(),
          .my = moment.y(),
          .mz = moment.z()};
}

double Solution::length(BeamId beam) const {
  return data_->beams->at(static_cast<std::size_t>(beam.index)).length;
}

namespace {

// Of Cut::bows: a beam is looked at in its middle, and at its quarters too.
constexpr double kBows = 0.02;
constexpr double kBowsMuch = 0.1;

}  // namespace

double Solution::Data::Cut::bows(const BeamPart& beam) const {
  if (!(start_l.x() > 0.0)) return 0.0;
  if (about_y.isZero(0.0) && about_z.isZero(0.0)) return 0.0;
  // 4 E I / L of the softer plane.
  const double turned = std::min(beam.bending_l(1, 1), beam.bending_l(2, 2));
  return 4.0 * start_l.x() * beam.length / turned;
}

bool Solution::is_loaded_between(BeamId beam) const {
  return !data_->cuts.at(static_cast<std::size_t>(beam.index)).loads.empty();
}

void Solution::stations(BeamId beam, std::vector<double>& all) const {
  const auto index = static_cast<std::size_t>(beam.index);
  const Data::Cut& cut = data_->cuts.at(index);
  const LoadsBetween& loads = cut.loads;
  const BeamPart& part = data_->beams->at(index);
  const double length = part.length;
  constexpr double kAside = 1.0e-9;  // just left of a point load, of the length
  constexpr std::size_t kInLine = 5;
  all.clear();
  all.push_back(0.0);
  const double bows = cut.bows(part);
  if (bows > kBowsMuch) all.push_back(0.25 * length);
  if (bows > kBows) all.push_back(0.5 * length);
  if (bows > kBowsMuch) all.push_back(0.75 * length);
  all.push_back(length);
  if (loads.empty()) return;
  for (const LoadsBetween::Point& point : loads.points) {
    all.push_back(point.at);
    all.push_back(std::max(0.0, point.at - kAside * length));
  }
  for (const LoadsBetween::Line& line : loads.lines) {
    for (std::size_t i = 0; i < kInLine; ++i) {
      const double share = static_cast<double>(i) / (kInLine - 1);
      all.push_back(line.from + share * (line.to - line.from));
    }
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
}

}  // namespace fea
