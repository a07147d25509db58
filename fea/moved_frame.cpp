#include "fea/moved_frame.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"
#include "fea/member_loads.hpp"
#include "fea/moved_joint.hpp"
#include "fea/moved_spring.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

constexpr double kRounding = 16.0 * std::numeric_limits<double>::epsilon();
constexpr double kMostLocal = 1.5;  // a piece bent farther from its chord means nothing  [rad]

/// Rows of a pair's twelve numbers that belong to nodes: the first six, the last six or all.
Eigen::VectorXi rows_of(bool a, bool b) {
  const int n = (a ? 6 : 0) + (b ? 6 : 0);
  return Eigen::VectorXi::LinSpaced(n, a ? 0 : 6, (a ? 0 : 6) + n - 1);
}

/// No joints and no rigid arms: the beam's ends are its nodes.
bool is_plain(const Beam& beam) {
  return !beam.a.joint && !beam.b.joint && beam.a.offset_g.isZero(0.0) &&
         beam.b.offset_g.isZero(0.0);
}

Model rooted(const System& system) {
  const RigidRoots& roots = system.roots();
  Model out = system.model();
  for (Beam& beam : out.beams) {
    beam.a = roots.rooted(beam.a);
    beam.b = roots.rooted(beam.b);
  }
  for (Spring& spring : out.springs) spring = roots.rooted(spring);
  for (Gap& gap : out.gaps) {
    if (gap.a.node) gap.a.node = roots.root(*gap.a.node);
    if (gap.b.node) gap.b.node = roots.root(*gap.b.node);
  }
  return out;
}

Eigen::Index first_joint(const System& system) {
  return 6 * static_cast<Eigen::Index>(system.model().nodes.size());
}

}  // namespace

/// What forces() gathers.
struct MovedFrame::Sum {
  MovedForces out;

  /// A contribution to the unbalanced forces; grows the sizes.
  void add(const System& system, const Eigen::VectorXi& unknowns, const Eigen::VectorXd& force) {
    out.unbalanced(unknowns) += force;
    for (Eigen::Index i = 0; i < force.size(); ++i) {
      double& size = system.turns(unknowns(i)) ? out.moment : out.force;
      size = std::max(size, std::abs(force(i)));
    }
  }
};

Eigen::VectorXi unknowns_of(std::optional<NodeId> a, std::optional<NodeId> b) {
  Eigen::VectorXi out((a ? 6 : 0) + (b ? 6 : 0));
  Eigen::Index next = 0;
  for (const std::optional<NodeId>& node : {a, b}) {
    for (int k = 0; node && k < 6; ++k) out(next++) = 6 * node->index + k;
  }
  return out;
}

MovedState MovedState::at_rest(const System& system) {
  MovedState out;
  out.nodes.resize(system.model().nodes.size());
  out.joints = Eigen::VectorXd::Zero(system.n_unknowns() - first_joint(system));
  return out;
}

MovedFrame::MovedFrame(std::shared_ptr<const System> system, const Loads& loads)
    : system_(std::move(system)),
      model_(rooted(*system_)),
      loads_(prepare(*system_, loads).loads),
      stations_(station_loads(*system_, loads_)) {
  const auto& blocks = system_->block_unknowns();
  const auto n_first = static_cast<std::ptrdiff_t>(model().beams.size() + model().springs.size());
  unknowns_.assign(blocks.begin(), blocks.begin() + n_first);
  for (const Gap& gap : model().gaps) unknowns_.push_back(unknowns_of(gap.a.node, gap.b.node));
  for (int i = 0; i < static_cast<int>(model().nodes.size()); ++i) {
    unknowns_.push_back(unknowns_of(NodeId{i}, std::nullopt));
  }
}

bool MovedFrame::has_dead_moment() const {
  const auto has = [](const auto& load) { return !load.moment_g.isZero(0.0); };
  return std::any_of(loads_.nodes.begin(), loads_.nodes.end(), has) ||
         std::any_of(loads_.points.begin(), loads_.points.end(), has);
}

bool MovedFrame::holds_one_rotation(NodeId node) const {
  int n_held = 0;
  for (int k = 3; k < 6; ++k) n_held += system_->held(6 * node.index + k) ? 1 : 0;
  return n_held == 1;
}

Placed MovedFrame::placed(const MovedState& state, std::optional<NodeId> node) const {
  return node ? state.nodes[static_cast<std::size_t>(node->index)] : Placed();
}

Eigen::VectorXd MovedFrame::joints_of(const MovedState& state, std::size_t beam) const {
  const Eigen::VectorXi& unknowns = unknowns_[beam];
  const Eigen::Index n = unknowns.size() - 12;
  if (n == 0) return {};
  return state.joints.segment(unknowns(12) - first_joint(*system_), n);
}

std::array<Placed, 2> MovedFrame::beam_ends(const MovedState& state, BeamId beam) const {
  const Beam& b = model()[beam];
  const Eigen::VectorXd joints = joints_of(state, static_cast<std::size_t>(beam.index));
  return {moved_end(b, 0, placed(state, b.a.node), joints).placed,
          moved_end(b, 1, placed(state, b.b.node), joints).placed};
}

CorotationalBeam MovedFrame::beam(const MovedState& state, BeamId beam, double factor) const {
  const auto index = static_cast<std::size_t>(beam.index);
  return corotational(system_->beams()[index], stations_[index], factor, beam_ends(state, beam));
}

void MovedFrame::to_rotation_vectors(Sum& sum, std::size_t block, Eigen::VectorXd& force,
                                     const MovedState& state) const {
  const Eigen::VectorXi& unknowns = unknowns_[block];
  const auto first = static_cast<int>(first_joint(*system_));
  for (Eigen::Index i = 0; i + 5 < unknowns.size() && unknowns(i) < first; i += 6) {
    const NodeId node{unknowns(i) / 6};
    if (!holds_one_rotation(node)) continue;
    const Vector3 turn = rotation_vector(placed(state, node).turn_g);
    const Matrix3 map = spin_map(turn);
    const Vector3 moment = force.segment<3>(i + 3);
    Eigen::MatrixXd& tangent = sum.out.tangent[block];
    tangent.middleCols<3>(i + 3) = (tangent.middleCols<3>(i + 3) * map).eval();
    tangent.middleRows<3>(i + 3) = (map.transpose() * tangent.middleRows<3>(i + 3)).eval();
    tangent.block<3, 3>(i + 3, i + 3) += spin_map_slope(turn, moment);
    force.segment<3>(i + 3) = map.transpose() * moment;
  }
}

void MovedFrame::grow_rounding(Sum& sum, const BeamPart& part, const std::array<Placed, 2>& at) {
  const Matrix12& k = part.stiffness_l;
  const double moved = at[0].displacement_g.norm() + at[1].displacement_g.norm();
  const double force = k(6, 6) * moved + k(1, 5) + k(2, 2) * 0.5 * part.length;
  sum.out.rounding_force = std::max(sum.out.rounding_force, kRounding * force);
  sum.out.rounding_moment = std::max(sum.out.rounding_moment, kRounding * (k(5, 5) + k(4, 4)));
}

void MovedFrame::add_beam(Sum& sum, const MovedState& state, double factor,
                          std::size_t index) const {
  const Beam& beam = model().beams[index];
  const BeamPart& part = system_->beams()[index];
  const std::vector<StationLoad>& stations = stations_[index];
  const Eigen::VectorXd joints = joints_of(state, index);
  std::array<Placed, 2> at = {placed(state, beam.a.node), placed(state, beam.b.node)};
  Eigen::VectorXd force;
  Eigen::VectorXd loads = Eigen::VectorXd::Zero(part.map.unknowns.size());
  const auto load_part = [&] {
    return Vector12(corotational(part, {}, 0.0, at).ends_g -
                    corotational(part, stations, 1.0, at).ends_g);
  };
  CorotationalBeam now;
  if (is_plain(beam)) {
    now = corotational(part, stations, factor, at);
    force = now.ends_g;
    sum.out.tangent[index] = now.tangent_g;
    if (!stations.empty()) loads = load_part();
  } else {
    const std::array<MovedEnd, 2> ends = {moved_end(beam, 0, at[0], joints),
                                          moved_end(beam, 1, at[1], joints)};
    at = {ends[0].placed, ends[1].placed};
    now = corotational(part, stations, factor, at);
    Eigen::MatrixXd motion(12, part.map.unknowns.size());
    motion << ends[0].motion_g, ends[1].motion_g;
    const EndTerms a = end_terms(ends[0], now.ends_g.head<6>());
    const EndTerms b = end_terms(ends[1], now.ends_g.tail<6>());
    force = a.force + b.force;
    sum.out.tangent[index] = motion.transpose() * now.tangent_g * motion + a.tangent + b.tangent;
    if (!stations.empty()) loads = motion.transpose() * load_part();
  }
  for (const Vector3& local : now.local) {
    sum.out.usable = sum.out.usable && local.norm() < kMostLocal;
  }
  grow_rounding(sum, part, at);
  to_rotation_vectors(sum, index, force, state);
  sum.add(*system_, part.map.unknowns, force);
  if (stations.empty()) return;
  for (Eigen::Index k = 0; k < 12; k += 6) {
    const NodeId node{part.map.unknowns(k) / 6};
    if (!holds_one_rotation(node)) continue;
    const Matrix3 map = spin_map(rotation_vector(placed(state, node).turn_g));
    loads.segment<3>(k + 3) = (map.transpose() * loads.segment<3>(k + 3)).eval();
  }
  sum.out.loads(part.map.unknowns) += loads;
}

void MovedFrame::add_springs(Sum& sum, const MovedState& state) const {
  for (std::size_t s = 0; s < model().springs.size(); ++s) {
    const Spring& spring = model().springs[s];
    const std::size_t block = model().beams.size() + s;
    const bool two = spring.b.has_value();
    const Placed near = two ? placed(state, spring.a) : Placed();
    const Placed far = placed(state, two ? spring.b : spring.a);
    const PairTerms terms = pair_force(law_of(spring), near, far).terms;
    const Eigen::VectorXi rows = rows_of(two, true);
    Eigen::VectorXd force = terms.force_g(rows);
    sum.out.tangent[block] = terms.tangent_g(rows, rows);
    to_rotation_vectors(sum, block, force, state);
    sum.add(*system_, unknowns_[block], force);
    const double moved = near.displacement_g.norm() + far.displacement_g.norm();
    const Matrix6& k = spring.stiffness;
    sum.out.rounding_force =
        std::max(sum.out.rounding_force, kRounding * k.topLeftCorner<3, 3>().cwiseAbs().sum() *
                                             (moved + spring.offset_a_g.norm()));
    sum.out.rounding_moment =
        std::max(sum.out.rounding_moment, kRounding * k.bottomRightCorner<3, 3>().cwiseAbs().sum());
  }
}

void MovedFrame::add_gaps(Sum& sum, const MovedState& state,
                          const std::vector<bool>& closed) const {
  for (std::size_t g = 0; g < model().gaps.size(); ++g) {
    if (!closed[g]) continue;
    const Gap& gap = model().gaps[g];
    const std::size_t block = model().beams.size() + model().springs.size() + g;
    const PairTerms terms =
        gap_terms(model(), gap, placed(state, gap.a.node), placed(state, gap.b.node));
    const Eigen::VectorXi rows = rows_of(gap.a.node.has_value(), gap.b.node.has_value());
    Eigen::VectorXd force = terms.force_g(rows);
    sum.out.tangent[block] = terms.tangent_g(rows, rows);
    to_rotation_vectors(sum, block, force, state);
    sum.add(*system_, unknowns_[block], force);
  }
}

void MovedFrame::add_node_loads(Sum& sum, const MovedState& state, double factor) const {
  const std::size_t first = unknowns_.size() - model().nodes.size();
  for (const NodeLoad& load : loads_.nodes) {
    const std::size_t block = first + static_cast<std::size_t>(load.node.index);
    const Vector3 arm = placed(state, load.node).turn_g * load.offset_g;
    Eigen::VectorXd force(6);
    force << load.force_g, load.moment_g + arm.cross(load.force_g);
    Eigen::MatrixXd tangent = Eigen::MatrixXd::Zero(6, 6);
    tangent.bottomRightCorner<3, 3>() = skew(load.force_g) * skew(arm);
    Eigen::MatrixXd& kept = sum.out.tangent[block];
    const Eigen::MatrixXd before = kept.size() > 0 ? kept : Eigen::MatrixXd::Zero(6, 6);
    kept = tangent;
    to_rotation_vectors(sum, block, force, state);
    kept = before - factor * kept;
    sum.out.loads(unknowns_[block]) += force;
    sum.add(*system_, unknowns_[block], -factor * force);
  }
}

MovedForces MovedFrame::forces(const MovedState& state, double factor,
                               const std::vector<bool>& closed) const {
  Sum sum;
  sum.out.unbalanced = Eigen::VectorXd::Zero(system_->n_unknowns());
  sum.out.loads = sum.out.unbalanced;
  sum.out.tangent.resize(unknowns_.size());
  for (std::size_t i = 0; i < model().beams.size(); ++i) add_beam(sum, state, factor, i);
  add_springs(sum, state);
  add_gaps(sum, state, closed);
  add_node_loads(sum, state, factor);
  sum.out.usable = sum.out.usable && sum.out.unbalanced.allFinite();
  return std::move(sum.out);
}

MovedState MovedFrame::moved(const MovedState& state, const Eigen::VectorXd& motion) const {
  MovedState out = state;
  for (std::size_t i = 0; i < out.nodes.size(); ++i) {
    const NodeId node{static_cast<int>(i)};
    Placed& placed = out.nodes[i];
    const Vector6 step = motion.segment<6>(first_unknown(node));
    placed.displacement_g += step.head<3>();
    if (holds_one_rotation(node)) {
      Vector3 turn = rotation_vector(placed.turn_g) + step.tail<3>();
      for (int k = 0; k < 3; ++k) {
        if (system_->held(6 * node.index + 3 + k)) turn(k) = 0.0;
      }
      placed.turn_g = rotation_of(turn);
    } else {
      placed.turn_g = without_drift(rotation_of(step.tail<3>()) * placed.turn_g);
    }
  }
  carry(out);
  for (std::size_t i = 0; i < model().beams.size(); ++i) {
    const Eigen::VectorXi& unknowns = unknowns_[i];
    const Eigen::Index n = unknowns.size() - 12;
    if (n == 0) continue;
    const Beam& beam = model().beams[i];
    Eigen::VectorXd local = motion(unknowns);
    for (Eigen::Index k = 0; k < 12; k += 6) {
      const NodeId node{unknowns(k) / 6};
      if (!holds_one_rotation(node)) continue;
      const Matrix3 map = spin_map(rotation_vector(placed(state, node).turn_g));
      local.segment<3>(k + 3) = (map * local.segment<3>(k + 3)).eval();
    }
    const Eigen::VectorXd joints = joints_of(state, i);
    Eigen::Index next = unknowns(12) - first_joint(*system_);
    for (const int which : {0, 1}) {
      const NodeId node = which == 0 ? beam.a.node : beam.b.node;
      const MovedEnd end = moved_end(beam, which, placed(state, node), joints);
      const Vector6 change = end.d_apart_j * local;
      for (const int k : end.along) out.joints(next++) += change(k);
      for (const int k : end.about) out.joints(next++) += change(3 + k);
    }
  }
  return out;
}

/// Puts carried nodes where the roots of their bodies have taken them.
void MovedFrame::carry(MovedState& state) const {
  const RigidRoots& roots = system_->roots();
  for (const NodeId node : roots.carried_nodes()) {
    const Placed& root = state.nodes[static_cast<std::size_t>(roots.root(node).index)];
    const Vector3 arm = roots.arm_g(node);
    state.nodes[static_cast<std::size_t>(node.index)] = {
        .displacement_g = root.displacement_g + root.turn_g * arm - arm, .turn_g = root.turn_g};
  }
}

std::vector<double> MovedFrame::overlaps(const MovedState& state) const {
  std::vector<double> out;
  for (const Gap& gap : model().gaps) {
    out.push_back(overlap(model(), gap, placed(state, gap.a.node), placed(state, gap.b.node)));
  }
  return out;
}

Eigen::VectorXd MovedFrame::overlap_change(const MovedState& state, GapId id) const {
  const Gap& gap = model()[id];
  Vector12 slope =
      overlap_slope(model(), gap, placed(state, gap.a.node), placed(state, gap.b.node));
  Eigen::Index row = 3;
  for (const std::optional<NodeId>& node : {gap.a.node, gap.b.node}) {
    if (node && holds_one_rotation(*node)) {
      const Matrix3 map = spin_map(rotation_vector(placed(state, node).turn_g));
      slope.segment<3>(row) = (map.transpose() * slope.segment<3>(row)).eval();
    }
    row += 6;
  }
  Eigen::VectorXd out = Eigen::VectorXd::Zero(system_->n_unknowns());
  const Eigen::VectorXi rows = rows_of(gap.a.node.has_value(), gap.b.node.has_value());
  out(unknowns_of(gap.a.node, gap.b.node)) += slope(rows);
  return out;
}

}  // namespace fea
