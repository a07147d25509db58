#include "fea/beam_part.hpp"

#include <cmath>

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"

namespace fea {
namespace {

/// A symmetric matrix over a beam's ends in its own axes, over their motions in global axes
/// instead. Where both ends move alike nothing changes between them: what goes with the
/// displacement of the one goes with that of the other, turned around.
void turn_to_global(const Matrix3& axes_lg, const Matrix12& between_l, Eigen::MatrixXd& out) {
  const auto turned = [&](Eigen::Index row, Eigen::Index column) -> Matrix3 {
    const Matrix3 half = between_l.block<3, 3>(row, column) * axes_lg;
    return axes_lg.transpose() * half;
  };
  const auto put = [&out](Eigen::Index row, Eigen::Index column, const Matrix3& block) {
    out.block<3, 3>(row, column) = block;
    if (row != column) out.block<3, 3>(column, row) = block.transpose();
  };
  const Matrix3 shift = turned(0, 0);
  put(0, 0, shift);
  put(6, 6, shift);
  put(6, 0, -shift);
  for (const Eigen::Index turn : {3, 9}) {
    const Matrix3 with_shift = turned(turn, 0);
    put(turn, 0, with_shift);
    put(turn, 6, -with_shift);
  }
  put(3, 3, turned(3, 3));
  put(9, 9, turned(9, 9));
  put(9, 3, turned(9, 3));
}

/// Columns over the motion of an end become columns over the unknowns that move it.
/// @param first        of the end's six
/// @param first_loose  where those of its joint go
/// @param rows         that are looked at
void columns_to_unknowns(const EndPart& end, Eigen::Index first, Eigen::Index first_loose,
                         Eigen::Index rows, Eigen::MatrixXd& out) {
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    const EndPart::Loose& loose = end.loose[k];
    auto along = out.col(first_loose + static_cast<Eigen::Index>(k)).head(rows);
    auto of_end = out.block(0, first + (loose.turns ? 3 : 0), rows, 3);
    along = of_end.col(0) * loose.axis_g(0) + of_end.col(1) * loose.axis_g(1) +
            of_end.col(2) * loose.axis_g(2);
    for (Eigen::Index i = 0; i < 3; ++i) of_end.col(i) -= along * loose.axis_g(i);
  }
  const Vector3& arm = end.arm_g;
  if (arm.isZero(0.0)) return;
  const auto shift = out.block(0, first, rows, 3);
  auto turn = out.block(0, first + 3, rows, 3);
  for (Eigen::Index i = 0; i < 3; ++i) {
    const Eigen::Index j = (i + 1) % 3;
    const Eigen::Index k = (i + 2) % 3;
    turn.col(i) += arm(j) * shift.col(k) - arm(k) * shift.col(j);
  }
}

/// The same of rows, one column after the other.
void rows_to_unknowns(const EndPart& end, Eigen::Index first, Eigen::Index first_loose,
                      Eigen::MatrixXd& out) {
  const bool has_arm = !end.arm_g.isZero(0.0);
  for (Eigen::Index column = 0; column < out.cols(); ++column) {
    for (std::size_t k = 0; k < end.n_loose; ++k) {
      const EndPart::Loose& loose = end.loose[k];
      auto of_end = out.col(column).segment<3>(first + (loose.turns ? 3 : 0));
      const double along = loose.axis_g.dot(of_end);
      out(first_loose + static_cast<Eigen::Index>(k), column) = along;
      of_end -= along * loose.axis_g;
    }
    if (!has_arm) continue;
    const Vector3 shift = out.col(column).segment<3>(first);
    out.col(column).segment<3>(first + 3) += end.arm_g.cross(shift);
  }
}

Eigen::Index first_of(std::size_t end) {
  return 6 * static_cast<Eigen::Index>(end);
}

/// Places among a beam's unknowns of the first of each end's joint.
std::array<Eigen::Index, 2> joints_of(const BeamPart& part) {
  return {12, 12 + static_cast<Eigen::Index>(part.ends[0].n_loose)};
}

/// @param ends_g  displacement and rotation of each
Vector12 in_own_axes(const BeamPart& part, const std::array<Vector6, 2>& ends_g) {
  Vector12 out;
  for (std::size_t end = 0; end < 2; ++end) {
    out.segment<3>(first_of(end)) = part.axes_lg * ends_g[end].head<3>();
    out.segment<3>(first_of(end) + 3) = part.axes_lg * ends_g[end].tail<3>();
  }
  return out;
}

/// The elastic components of an end's joint: each strains by its own unknown less what its node
/// moves along (about) its axis.
void add_joint(const EndPart& end, Eigen::Index node, Eigen::Index joint, Eigen::MatrixXd& block) {
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    const EndPart::Loose& loose = end.loose[k];
    Vector6 by_node = Vector6::Zero();
    if (loose.turns) {
      by_node.tail<3>() = -loose.axis_g;
    } else {
      by_node << -loose.axis_g, -end.arm_g.cross(loose.axis_g);
    }
    const Eigen::Index own = joint + static_cast<Eigen::Index>(k);
    const Vector6 force = loose.stiffness * by_node;
    block.block<6, 6>(node, node) += by_node * force.transpose();
    block.col(own).segment<6>(node) += force;
    block.row(own).segment<6>(node) += force;
    block(own, own) += loose.stiffness;
  }
}

/// What joints and arms at the ends make of the forces there.
void add_ends(const BeamPart& part, const Vector12& ends_l, Eigen::Ref<Eigen::MatrixXd> block) {
  for (std::size_t end = 0; end < 2; ++end) {
    if (!has_own_terms(part.ends[end])) continue;
    add_end_geometric(part.ends[end], -wrench_at(part, ends_l, end), first_of(end),
                      joints_of(part)[end], block);
  }
}

constexpr std::array kOwnForces = {6, 9, 4, 5, 10, 11};

/// What acts on the ends for a unit of each of the six forces.
Eigen::Matrix<double, 12, 6> unit_forces(double length) {
  Eigen::Matrix<double, 12, 6> out = Eigen::Matrix<double, 12, 6>::Zero();
  for (Eigen::Index i = 0; i < 6; ++i) out(kOwnForces[static_cast<std::size_t>(i)], i) = 1.0;
  out(0, 0) = -1.0;
  out(3, 1) = -1.0;
  const double shear = 1.0 / length;
  for (const Eigen::Index about_y : {2, 4}) {
    out(2, about_y) = -shear;
    out(8, about_y) = shear;
    out(1, about_y + 1) = shear;
    out(7, about_y + 1) = -shear;
  }
  return out;
}

}  // namespace

BeamPart beam_part(const Model& model, const RigidRoots& roots, const Beam& beam,
                   int first_of_joints) {
  BeamPart part;
  part.length = length(model, beam);
  part.polar = beam.section.polar / beam.section.area;
  part.axes_lg = member_axes(model, beam);
  part.flex = shear_flex(beam.section, beam.elastic, part.length);
  part.stiffness_l = stiffness_of(beam, part.length);
  const std::array rotations = {3, 4, 5, 9, 10, 11};
  part.bending_l = part.stiffness_l(rotations, rotations);
  part.ends[0] = end_part(roots.rooted(beam.a), first_of_joints);
  const auto n_at_a = static_cast<int>(part.ends[0].n_loose);
  part.ends[1] = end_part(roots.rooted(beam.b), first_of_joints + n_at_a);
  const auto n_loose = n_at_a + static_cast<int>(part.ends[1].n_loose);
  part.unknowns.resize(12 + n_loose);
  for (std::size_t end = 0; end < 2; ++end) {
    const auto first = static_cast<int>(part.ends[end].first_of_node);
    part.unknowns.segment<6>(first_of(end)).setLinSpaced(first, first + 5);
  }
  for (int i = 0; i < n_loose; ++i) part.unknowns(12 + i) = first_of_joints + i;
  part.plain = !has_own_terms(part.ends[0]) && !has_own_terms(part.ends[1]);
  elastic_block(part, part.stiffness_l, part.elastic);
  part.geometric = std::make_shared<const GeometricTerms>();
  return part;
}

const GeometricTerms::Matrix& GeometricTerms::of(const BeamPart& part) const {
  if (is_there_.load(std::memory_order_acquire)) return matrix_;
  const std::lock_guard lock(mutex_);
  if (is_there_.load(std::memory_order_relaxed)) return matrix_;
  const Eigen::Index size = part.unknowns.size();
  const Eigen::Matrix<double, 12, 6> forces_l = unit_forces(part.length);
  matrix_.resize(triangle_size(static_cast<int>(size)), 6);
  Eigen::MatrixXd block;
  for (Eigen::Index i = 0; i < 6; ++i) {
    geometric_block(part, forces_l.col(i), forces_l.col(i), block);
    matrix_.col(i) = lower_triangle(block);
  }
  is_there_.store(true, std::memory_order_release);
  return matrix_;
}

Matrix12 stiffness_of(const Beam& beam, double length) {
  return beam.taper ? beam_stiffness(*beam.taper, beam.elastic, length)
                    : beam_stiffness(beam.section, beam.elastic, length);
}

void to_unknowns(const BeamPart& part, const Matrix12& between_l, Eigen::MatrixXd& out) {
  const Eigen::Index size = part.unknowns.size();
  out.resize(size, size);
  turn_to_global(part.axes_lg, between_l, out);
  if (part.plain) return;
  const std::array<Eigen::Index, 2> joints = joints_of(part);
  for (std::size_t end = 0; end < 2; ++end) {
    columns_to_unknowns(part.ends[end], first_of(end), joints[end], 12, out);
  }
  for (std::size_t end = 0; end < 2; ++end) {
    rows_to_unknowns(part.ends[end], first_of(end), joints[end], out);
  }
  out.triangularView<Eigen::StrictlyUpper>() = out.transpose();
}

Vector12 seen_by_member(const BeamPart& part, const std::array<EndMotion, 2>& ends) {
  return in_own_axes(part, {ends[0].far_g, ends[1].far_g});
}

Vector12 end_freedoms(const BeamPart& part, const Eigen::VectorXd& motion) {
  if (part.plain) {
    return in_own_axes(part, {motion.segment<6>(part.ends[0].first_of_node),
                              motion.segment<6>(part.ends[1].first_of_node)});
  }
  return seen_by_member(part, {end_motion(part.ends[0], motion), end_motion(part.ends[1], motion)});
}

void elastic_block(const BeamPart& part, const Matrix12& stiffness_l, Eigen::MatrixXd& out) {
  to_unknowns(part, stiffness_l, out);
  for (std::size_t end = 0; end < 2; ++end) {
    add_joint(part.ends[end], first_of(end), joints_of(part)[end], out);
  }
}

Vector6 wrench_at(const BeamPart& part, const Vector12& ends_l, std::size_t end) {
  Vector6 wrench_g;
  wrench_g << part.axes_lg.transpose() * ends_l.segment<3>(first_of(end)),
      part.axes_lg.transpose() * ends_l.segment<3>(first_of(end) + 3);
  return wrench_g;
}

Matrix12 geometric_between_ends(const BeamPart& part, const Vector12& elastic_l) {
  return beam_geometric(elastic_l, part.flex, part.length, part.polar);
}

void geometric_block(const BeamPart& part, const Vector12& elastic_l, const Vector12& ends_l,
                     Eigen::MatrixXd& out) {
  to_unknowns(part, geometric_between_ends(part, elastic_l), out);
  add_ends(part, ends_l, out);
}

Triangle geometric_triangle(const BeamPart& part, const Vector12& elastic_l,
                            const Vector12& ends_l) {
  const Vector6 own = elastic_l(kOwnForces);
  const GeometricTerms::Matrix& terms = part.geometric->of(part);
  Triangle out = terms.col(0) * own(0) + terms.col(1) * own(1) + terms.col(2) * own(2) +
                 terms.col(3) * own(3) + terms.col(4) * own(4) + terms.col(5) * own(5);
  if (!part.plain && ends_l != elastic_l) {
    const Eigen::Index size = part.unknowns.size();
    BlockMatrix of_ends = BlockMatrix::Zero(size, size);
    add_ends(part, ends_l - elastic_l, of_ends);
    out += lower_triangle(of_ends);
  }
  return out;
}

}  // namespace fea
