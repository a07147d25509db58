#include "fea/moved_frame.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>
#include <utility>

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"
#include "fea/moved_spring.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

constexpr double kRounding = 16.0 * std::numeric_limits<double>::epsilon();
constexpr double kMostLocal = 1.5;  // a piece bent farther from its chord means nothing  [rad]

/// Rows of a pair's twelve numbers that belong to nodes: the first six, the last six or all.
auto rows_of(bool a, bool b) {
  return Eigen::seqN(a ? 0 : 6, (a ? 6 : 0) + (b ? 6 : 0));
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

/// A gap to the ground has the unknowns of its node's own block; one between two nodes may bring
/// together what nothing else does.
Assembly assembly_of_tangent(const System& system, const Model& model,
                             const std::vector<Eigen::VectorXi>& unknowns) {
  const std::size_t n_first = model.beams.size() + model.springs.size();
  std::vector<std::size_t> same_as(n_first);
  std::iota(same_as.begin(), same_as.end(), 0U);
  for (const Gap& gap : model.gaps) {
    if (gap.a.node && gap.b.node) return {unknowns, system.places(), system.n_free()};
    const NodeId node = gap.a.node ? *gap.a.node : *gap.b.node;
    same_as.push_back(n_first + static_cast<std::size_t>(node.index));
  }
  for (std::size_t i = 0; i < model.nodes.size(); ++i) same_as.push_back(n_first + i);
  return {system.assembly(), same_as};
}

Eigen::Index first_joint(const System& system) {
  return 6 * static_cast<Eigen::Index>(system.model().nodes.size());
}

BlockVector on_node(const NodeLoad& load, const Vector3& arm_g) {
  BlockVector out(6);
  out << load.force_g, load.moment_g + arm_g.cross(load.force_g);
  return out;
}

}  // namespace

/// What forces() gathers.
class MovedFrame::Sum {
 public:
  Sum(const System& system, MovedForces& out) : system_(system), out_(out) {}

  /// A contribution to the unbalanced forces; grows the sizes.
  void add(const Eigen::VectorXi& unknowns, const BlockVector& force) {
    for (Eigen::Index i = 0; i < force.size(); ++i) {
      out_.unbalanced(unknowns(i)) += force(i);
      double& size = system_.turns(unknowns(i)) ? out_.moment : out_.force;
      size = std::max(size, std::abs(force(i)));
    }
  }
  void grow_rounding(double force, double moment) {
    out_.rounding_force = std::max(out_.rounding_force, kRounding * force);
    out_.rounding_moment = std::max(out_.rounding_moment, kRounding * moment);
  }
  void grow_rounding(const BeamPart& part, const std::array<Placed, 2>& at) {
    const Matrix12& k = part.stiffness_l;
    const double moved = at[0].displacement_g.norm() + at[1].displacement_g.norm();
    grow_rounding(k(6, 6) * moved + k(1, 5) + k(2, 2) * 0.5 * part.length, k(5, 5) + k(4, 4));
  }
  void keep(std::size_t index, const CorotationalBeam& beam, const std::array<Placed, 2>& ends) {
    out_.beams[index] = {
        .ends = ends, .axes_gl = beam.axes_gl, .ends_g = beam.ends_g, .local = beam.local};
    out_.deformation[index] = beam.deformation;
  }
  void judge(const CorotationalBeam& beam) {
    for (const Vector3& local : beam.local) {
      out_.usable = out_.usable && local.norm() < kMostLocal;
    }
  }
  [[nodiscard]] Eigen::MatrixXd& tangent(std::size_t block) { return out_.tangent[block]; }
  /// Of a beam.
  [[nodiscard]] OverUnknowns<7>& deformation_slope(std::size_t beam) {
    return out_.deformation_slope[beam];
  }

 private:
  const System& system_;
  MovedForces& out_;
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

MovedModel::MovedModel(std::shared_ptr<const System> of)
    : system(std::move(of)), model(rooted(*system)) {
  for (std::size_t b = 0; b < model.beams.size() + model.springs.size(); ++b) {
    unknowns.push_back(system->unknowns(b));
  }
  for (const Gap& gap : model.gaps) unknowns.push_back(unknowns_of(gap.a.node, gap.b.node));
  for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) {
    unknowns.push_back(unknowns_of(NodeId{i}, std::nullopt));
    int n_held = 0;
    for (int k = 3; k < 6; ++k) n_held += system->held(6 * i + k) ? 1 : 0;
    holds_one.push_back(n_held == 1);
  }
  assembly = assembly_of_tangent(*system, model, unknowns);
  assembly.scale_by(system->scale());
  const bool same_pattern = &assembly.pattern() == &system->assembly().pattern();
  blank = same_pattern ? system->factor() : Ldlt(assembly.pattern());
}

MovedFrame::MovedFrame(std::shared_ptr<const MovedModel> shared, const Loads& loads)
    : shared_(std::move(shared)),
      loads_(prepare(system(), loads).loads),
      stations_(station_loads(system(), loads_)) {}

MovedFrame::MovedFrame(std::shared_ptr<const MovedModel> shared, const LoadCase& load_case)
    : shared_(std::move(shared)),
      loads_(load_case.loads),
      stations_(station_loads(system(), loads_)) {}

bool MovedFrame::has_dead_moment() const {
  const auto has = [](const auto& load) { return !load.moment_g.isZero(0.0); };
  return std::any_of(loads_.nodes.begin(), loads_.nodes.end(), has) ||
         std::any_of(loads_.points.begin(), loads_.points.end(), has);
}

Placed MovedFrame::placed(const MovedState& state, std::optional<NodeId> node) const {
  return node ? state.nodes[static_cast<std::size_t>(node->index)] : Placed();
}

const double* MovedFrame::joints_of(const MovedState& state, std::size_t beam) const {
  const Eigen::VectorXi& unknowns = shared_->unknowns[beam];
  if (unknowns.size() == 12) return nullptr;
  return state.joints.data() + (unknowns(12) - first_joint(system()));
}

std::array<MovedEnd, 2> MovedFrame::ends_of(const MovedState& state, std::size_t beam) const {
  const Beam& b = model().beams[beam];
  const double* joints = joints_of(state, beam);
  return {moved_end(b.a, placed(state, b.a.node), joints),
          moved_end(b.b, placed(state, b.b.node), joints + n_loose(b.a))};
}

void MovedFrame::to_rotation_vectors(std::size_t block, const MovedState& state, BlockVector& force,
                                     Eigen::MatrixXd& tangent) const {
  const Eigen::VectorXi& unknowns = shared_->unknowns[block];
  const auto first = static_cast<int>(first_joint(system()));
  for (Eigen::Index i = 0; i + 5 < unknowns.size() && unknowns(i) < first; i += 6) {
    const NodeId node{unknowns(i) / 6};
    if (!holds_one_rotation(node)) continue;
    const Vector3 turn = rotation_vector(placed(state, node).turn_g);
    const Matrix3 map = spin_map(turn);
    tangent.middleCols<3>(i + 3) = (tangent.middleCols<3>(i + 3) * map).eval();
    tangent.middleRows<3>(i + 3) = (map.transpose() * tangent.middleRows<3>(i + 3)).eval();
    tangent.block<3, 3>(i + 3, i + 3) += spin_map_slope(turn, force.segment<3>(i + 3));
  }
  to_rotation_vectors(block, state, force);
}

void MovedFrame::to_rotation_vectors(std::size_t block, const MovedState& state,
                                     BlockVector& force) const {
  const Eigen::VectorXi& unknowns = shared_->unknowns[block];
  const auto first = static_cast<int>(first_joint(system()));
  for (Eigen::Index i = 0; i + 5 < unknowns.size() && unknowns(i) < first; i += 6) {
    const NodeId node{unknowns(i) / 6};
    if (!holds_one_rotation(node)) continue;
    const Matrix3 map = spin_map(rotation_vector(placed(state, node).turn_g));
    force.segment<3>(i + 3) = (map.transpose() * force.segment<3>(i + 3)).eval();
  }
}

namespace {

constexpr Eigen::Index kAllLoose = 6;

/// Both ends' unknowns in those of their beam: the six of each node, then what is loose at a, at b.
struct Places {
  std::array<Eigen::Index, 2> loose;
  std::array<Eigen::Index, 2> n_loose;
  std::array<Eigen::Index, 2> six;  ///< first of the unknowns of an end that six alone move
  Eigen::Index size;

  explicit Places(const std::array<MovedEnd, 2>& ends)
      : loose{12, 12 + ends[0].n_loose()},
        n_loose{ends[0].n_loose(), ends[1].n_loose()},
        six{n_loose[0] == kAllLoose ? loose[0] : 0, n_loose[1] == kAllLoose ? loose[1] : 6},
        size(loose[1] + ends[1].n_loose()) {}

  /// Whether six of its unknowns move an end: those of its node, or of a joint that is all loose.
  [[nodiscard]] bool by_six(std::size_t end) const {
    return n_loose[end] == 0 || n_loose[end] == kAllLoose;
  }

  // Parts may be wider than what is loose: the rest is left.
  template <class Part>
  void add(std::size_t end, const Part& part, BlockVector& out) const {
    out.segment<6>(6 * static_cast<Eigen::Index>(end)) += part.template head<6>();
    for (Eigen::Index i = 0; i < n_loose[end]; ++i) out(loose[end] + i) += part(6 + i);
  }
  template <class Part>
  void add(std::size_t row_end, std::size_t column_end, const Part& part,
           Eigen::MatrixXd& out) const {
    const auto row = 6 * static_cast<Eigen::Index>(row_end);
    for (Eigen::Index j = 0; j < 6 + n_loose[column_end]; ++j) {
      const Eigen::Index column =
          j < 6 ? 6 * static_cast<Eigen::Index>(column_end) + j : loose[column_end] + j - 6;
      out.col(column).segment<6>(row) += part.col(j).template head<6>();
      for (Eigen::Index i = 0; i < n_loose[row_end]; ++i) {
        out(loose[row_end] + i, column) += part(6 + i, j);
      }
    }
  }
};

/// A beam over its unknowns.
struct OverBeam {
  BlockVector force;   ///< what the tangent knows of
  BlockVector excess;  ///< the rest
};

/// The motion of an end from the six unknowns that move it, or from all of them: zero where there
/// are none.
template <int N>
Eigen::Matrix<double, 6, N> motion_of(const MovedEnd& end) {
  if constexpr (N == 6) {
    return end.n_loose() == 0 ? end.motion_g.leftCols<6>() : end.motion_g.rightCols<6>();
  } else {
    Eigen::Matrix<double, 6, N> out = Eigen::Matrix<double, 6, N>::Zero();
    out.leftCols(end.motion_g.cols()) = end.motion_g;
    return out;
  }
}

/// Whether an end goes as its node does.
bool is_at_node(const MovedEnd& end) {
  return end.n_loose() == 0 && end.arm_g.isZero(0.0);
}

/// The part of the tangent between two ends, over their unknowns.
template <int Rows, int Columns>
void add_between(const CorotationalBeam& now, const std::array<MovedEnd, 2>& ends,
                 const Places& places, std::size_t row, std::size_t column,
                 Eigen::MatrixXd& tangent) {
  const Matrix6 between = now.tangent_g.block<6, 6>(6 * static_cast<Eigen::Index>(row),
                                                    6 * static_cast<Eigen::Index>(column));
  Eigen::Matrix<double, 6, Columns> half;
  if (is_at_node(ends[column])) {
    half.template leftCols<6>() = between;
  } else {
    half = between.lazyProduct(motion_of<Columns>(ends[column]));
  }
  Eigen::Matrix<double, Rows, Columns> part;
  if (is_at_node(ends[row])) {
    part.template topRows<6>() = half;
  } else {
    part = motion_of<Rows>(ends[row]).transpose().lazyProduct(half);
  }
  if constexpr (Rows == 6 && Columns == 6) {
    tangent.block<6, 6>(places.six[row], places.six[column]) += part;
  } else if constexpr (Rows == 6) {
    const auto rows = Eigen::seqN(places.six[row], 6);
    tangent(rows, Eigen::seqN(6 * static_cast<Eigen::Index>(column), 6)) +=
        part.template leftCols<6>();
    for (Eigen::Index j = 0; j < places.n_loose[column]; ++j) {
      tangent.col(places.loose[column] + j)(rows) += part.col(6 + j);
    }
  } else if constexpr (Columns == 6) {
    for (Eigen::Index j = 0; j < 6; ++j) {
      auto of_column = tangent.col(places.six[column] + j);
      of_column.segment<6>(6 * static_cast<Eigen::Index>(row)) += part.col(j).template head<6>();
      for (Eigen::Index i = 0; i < places.n_loose[row]; ++i) {
        of_column(places.loose[row] + i) += part(6 + i, j);
      }
    }
  } else {
    places.add(row, column, part, tangent);
  }
}

template <int Rows>
void add_row(const CorotationalBeam& now, const std::array<MovedEnd, 2>& ends, const Places& places,
             std::size_t row, OverBeam& out, Eigen::MatrixXd& tangent, OverUnknowns<7>& slope) {
  const auto first = 6 * static_cast<Eigen::Index>(row);
  const Eigen::Matrix<double, 6, Rows> motion = motion_of<Rows>(ends[row]);
  const Vector6 excess = now.excess_g.segment<6>(first);
  const Vector6 wrench = now.ends_g.segment<6>(first) - excess;
  if (is_at_node(ends[row])) {
    out.force.segment<6>(first) += wrench;
  } else {
    const EndTerms terms = end_terms(ends[row], wrench);
    places.add(row, terms.force, out.force);
    places.add(row, row, terms.tangent, tangent);
  }
  const Eigen::Matrix<double, Rows, 1> on_unknowns = motion.transpose().lazyProduct(excess);
  const Eigen::Matrix<double, 7, Rows> of_end =
      now.deformation_slope_g.middleCols<6>(first).lazyProduct(motion);
  if constexpr (Rows == 6) {
    out.excess.segment<6>(places.six[row]) += on_unknowns;
    slope.middleCols<6>(places.six[row]) = of_end;
  } else {
    places.add(row, on_unknowns, out.excess);
    slope.middleCols<6>(first) = of_end.template leftCols<6>();
    for (Eigen::Index i = 0; i < places.n_loose[row]; ++i) {
      slope.col(places.loose[row] + i) = of_end.col(6 + i);
    }
  }
  for (const std::size_t column : {0U, 1U}) {
    if (places.by_six(column)) {
      add_between<Rows, 6>(now, ends, places, row, column, tangent);
    } else {
      add_between<Rows, kMostOfEnd>(now, ends, places, row, column, tangent);
    }
  }
}

OverBeam through_ends(const CorotationalBeam& now, const std::array<MovedEnd, 2>& ends,
                      Eigen::MatrixXd& tangent, OverUnknowns<7>& slope) {
  const Places places(ends);
  OverBeam out{.force = BlockVector::Zero(places.size), .excess = BlockVector::Zero(places.size)};
  slope.setZero(7, places.size);
  tangent.setZero(places.size, places.size);
  for (const std::size_t row : {0U, 1U}) {
    if (places.by_six(row)) {
      add_row<6>(now, ends, places, row, out, tangent, slope);
    } else {
      add_row<kMostOfEnd>(now, ends, places, row, out, tangent, slope);
    }
  }
  return out;
}

}  // namespace

void MovedFrame::add_beam(Sum& sum, const MovedState& state, double factor, std::size_t index,
                          const Deformation* assumed) const {
  const Beam& beam = model().beams[index];
  const BeamPart& part = system().beams()[index];
  const std::vector<StationLoad>& stations = stations_[index];
  std::array<Placed, 2> at = {placed(state, beam.a.node), placed(state, beam.b.node)};
  std::optional<std::array<MovedEnd, 2>> ends;
  if (!is_plain(beam)) {
    ends = ends_of(state, index);
    at = {(*ends)[0].placed, (*ends)[1].placed};
  }
  const CorotationalBeam now = corotational(part, stations, factor, at, assumed);
  Eigen::MatrixXd& tangent = sum.tangent(index);
  OverUnknowns<7>& slope = sum.deformation_slope(index);
  OverBeam over;
  if (!ends) {
    over = {.force = now.ends_g - now.excess_g, .excess = now.excess_g};
    slope = now.deformation_slope_g;
    tangent = now.tangent_g;
  } else {
    over = through_ends(now, *ends, tangent, slope);
  }
  sum.judge(now);
  sum.keep(index, now, at);
  sum.grow_rounding(part, at);
  if (holds_one_rotation(beam.a.node) || holds_one_rotation(beam.b.node)) {
    to_rotation_vectors(index, state, over.force, tangent);
    to_rotation_vectors(index, state, over.excess);
    for (Eigen::Index row = 0; row < slope.rows(); ++row) {
      BlockVector of_one = slope.row(row).transpose();
      to_rotation_vectors(index, state, of_one);
      slope.row(row) = of_one.transpose();
    }
  }
  sum.add(part.unknowns, over.force + over.excess);
}

void MovedFrame::add_springs(Sum& sum, const MovedState& state) const {
  for (std::size_t s = 0; s < model().springs.size(); ++s) {
    const Spring& spring = model().springs[s];
    const std::size_t block = model().beams.size() + s;
    const bool two = spring.b.has_value();
    const Placed near = two ? placed(state, spring.a) : Placed();
    const Placed far = placed(state, two ? spring.b : spring.a);
    const PairTerms terms = pair_force(law_of(spring), near, far).terms;
    const auto rows = rows_of(two, true);
    BlockVector force = terms.force_g(rows);
    sum.tangent(block) = terms.tangent_g(rows, rows);
    to_rotation_vectors(block, state, force, sum.tangent(block));
    sum.add(shared_->unknowns[block], force);
    const double moved = near.displacement_g.norm() + far.displacement_g.norm();
    const Matrix6& k = spring.stiffness;
    sum.grow_rounding(k.topLeftCorner<3, 3>().cwiseAbs().sum() * (moved + spring.offset_a_g.norm()),
                      k.bottomRightCorner<3, 3>().cwiseAbs().sum());
  }
}

void MovedFrame::add_gaps(Sum& sum, const MovedState& state,
                          const std::vector<bool>& closed) const {
  for (std::size_t g = 0; g < model().gaps.size(); ++g) {
    const Gap& gap = model().gaps[g];
    const std::size_t block = model().beams.size() + model().springs.size() + g;
    if (!closed[g]) {
      sum.tangent(block).resize(0, 0);
      continue;
    }
    const PairTerms terms =
        gap_terms(model(), gap, placed(state, gap.a.node), placed(state, gap.b.node));
    const auto rows = rows_of(gap.a.node.has_value(), gap.b.node.has_value());
    BlockVector force = terms.force_g(rows);
    sum.tangent(block) = terms.tangent_g(rows, rows);
    to_rotation_vectors(block, state, force, sum.tangent(block));
    sum.add(shared_->unknowns[block], force);
  }
}

void MovedFrame::add_node_loads(Sum& sum, const MovedState& state, double factor) const {
  const std::size_t first = shared_->unknowns.size() - model().nodes.size();
  for (std::size_t i = first; i < shared_->unknowns.size(); ++i) {
    if (sum.tangent(i).size() > 0) sum.tangent(i).setZero();
  }
  for (const NodeLoad& load : loads_.nodes) {
    const std::size_t block = first + static_cast<std::size_t>(load.node.index);
    const Vector3 arm = placed(state, load.node).turn_g * load.offset_g;
    BlockVector force = -factor * on_node(load, arm);
    Eigen::MatrixXd tangent = Eigen::MatrixXd::Zero(6, 6);
    tangent.bottomRightCorner<3, 3>() = -factor * skew(load.force_g) * skew(arm);
    to_rotation_vectors(block, state, force, tangent);
    Eigen::MatrixXd& kept = sum.tangent(block);
    if (kept.size() == 0) kept.setZero(6, 6);
    kept += tangent;
    sum.add(shared_->unknowns[block], force);
  }
}

Eigen::VectorXd MovedFrame::loads(const MovedState& state) const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(system().n_unknowns());
  const auto add = [&](std::size_t block, BlockVector& force) {
    to_rotation_vectors(block, state, force);
    out(shared_->unknowns[block]) += force;
  };
  for (std::size_t i = 0; i < model().beams.size(); ++i) {
    if (stations_[i].empty()) continue;
    const BeamPart& part = system().beams()[i];
    const std::array<MovedEnd, 2> ends = ends_of(state, i);
    const std::array<Placed, 2> at = {ends[0].placed, ends[1].placed};
    const Vector12 on_ends =
        corotational(part, {}, 0.0, at).ends_g - corotational(part, stations_[i], 1.0, at).ends_g;
    const Places places(ends);
    BlockVector force = BlockVector::Zero(places.size);
    for (const std::size_t end : {0U, 1U}) {
      const Vector6 wrench = on_ends.segment<6>(6 * static_cast<Eigen::Index>(end));
      places.add(end, (ends[end].motion_g.transpose() * wrench).eval(), force);
    }
    add(i, force);
  }
  const std::size_t first = shared_->unknowns.size() - model().nodes.size();
  for (const NodeLoad& load : loads_.nodes) {
    BlockVector force = on_node(load, placed(state, load.node).turn_g * load.offset_g);
    add(first + static_cast<std::size_t>(load.node.index), force);
  }
  return out;
}

MovedForces MovedFrame::forces(const MovedState& state, double factor,
                               const std::vector<bool>& closed) const {
  MovedForces out;
  forces(state, factor, closed, out);
  return out;
}

void MovedFrame::forces(const MovedState& state, double factor, const std::vector<bool>& closed,
                        MovedForces& out, const std::vector<Deformation>* assumed) const {
  out.unbalanced.setZero(system().n_unknowns());
  out.tangent.resize(shared_->unknowns.size());
  out.beams.resize(model().beams.size());
  out.deformation.resize(model().beams.size());
  out.deformation_slope.resize(model().beams.size());
  out.force = out.moment = 0.0;
  out.rounding_force = out.rounding_moment = 0.0;
  out.usable = true;
  Sum sum(system(), out);
  for (std::size_t i = 0; i < model().beams.size(); ++i) {
    add_beam(sum, state, factor, i, assumed != nullptr ? &(*assumed)[i] : nullptr);
  }
  add_springs(sum, state);
  add_gaps(sum, state, closed);
  add_node_loads(sum, state, factor);
  out.usable = out.usable && out.unbalanced.allFinite();
}

void MovedFrame::carry_on(const MovedForces& forces, const Eigen::VectorXd& motion,
                          std::vector<Deformation>& deformation) const {
  deformation = forces.deformation;
  for (std::size_t i = 0; i < deformation.size(); ++i) {
    deformation[i] +=
        forces.deformation_slope[i].lazyProduct(gathered(motion, shared_->unknowns[i]));
  }
}

std::vector<Deformation> MovedFrame::deformation_from_rest(const Eigen::VectorXd& motion) const {
  std::vector<OverUnknowns<7>>& slope = shared_->deformation_slope_at_rest;
  if (slope.empty()) {
    const std::vector<bool> open(model().gaps.size(), false);
    slope = forces(MovedState::at_rest(system()), 0.0, open).deformation_slope;
  }
  std::vector<Deformation> out;
  for (std::size_t i = 0; i < slope.size(); ++i) {
    out.emplace_back(slope[i].lazyProduct(gathered(motion, shared_->unknowns[i])));
  }
  return out;
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
        if (system().held(6 * node.index + 3 + k)) turn(k) = 0.0;
      }
      placed.turn_g = rotation_of(turn);
    } else {
      placed.turn_g = without_drift(rotation_of(step.tail<3>()) * placed.turn_g);
    }
  }
  carry(out);
  for (std::size_t i = 0; i < model().beams.size(); ++i) {
    const Eigen::VectorXi& unknowns = shared_->unknowns[i];
    const Eigen::Index n = unknowns.size() - 12;
    if (n == 0) continue;
    const Beam& beam = model().beams[i];
    BlockVector local = gathered(motion, unknowns);
    for (Eigen::Index k = 0; k < 12; k += 6) {
      const NodeId node{unknowns(k) / 6};
      if (!holds_one_rotation(node)) continue;
      const Matrix3 map = spin_map(rotation_vector(placed(state, node).turn_g));
      local.segment<3>(k + 3) = (map * local.segment<3>(k + 3)).eval();
    }
    const double* joint = joints_of(state, i);
    double* next = out.joints.data() + (unknowns(12) - first_joint(system()));
    Eigen::Index loose = 12;
    Eigen::Index row = 0;
    for (const BeamEnd* beam_end : {&beam.a, &beam.b}) {
      const MovedEnd end = moved_end(*beam_end, placed(state, beam_end->node), joint);
      BlockVector of_end(6 + end.n_loose());
      of_end << local.segment<6>(row), local.segment(loose, end.n_loose());
      const Vector6 change = end.d_apart_j.lazyProduct(of_end);
      for (const int k : end.along) *next++ += change(k);
      for (const int k : end.about) *next++ += change(3 + k);
      joint += end.n_loose();
      loose += end.n_loose();
      row += 6;
    }
  }
  return out;
}

/// Puts carried nodes where the roots of their bodies have taken them.
void MovedFrame::carry(MovedState& state) const {
  const RigidRoots& roots = system().roots();
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
  Eigen::VectorXd out = Eigen::VectorXd::Zero(system().n_unknowns());
  const auto rows = rows_of(gap.a.node.has_value(), gap.b.node.has_value());
  out(unknowns_of(gap.a.node, gap.b.node)) += slope(rows);
  return out;
}

}  // namespace fea
