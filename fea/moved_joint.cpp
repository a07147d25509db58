#include "fea/moved_joint.hpp"

#include <cmath>
#include <vector>

#include <Eigen/LU>

#include "fea/geometric_stiffness.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

using Matrix3X = Eigen::Matrix<double, 3, Eigen::Dynamic>;
using Matrix12X = Eigen::Matrix<double, 12, Eigen::Dynamic>;

/// Components of one kind (0 = along, 3 = about) that are not rigid, 0 to 2.
std::vector<int> loose(const BeamEnd& end, std::size_t kind) {
  std::vector<int> out;
  for (std::size_t k = 0; end.joint && k < 3; ++k) {
    if (!std::isinf(end.joint->stiffness[kind + k])) out.push_back(static_cast<int>(k));
  }
  return out;
}

/// What the loose components of the joint's law carry, as a vector in the joint's axes: the
/// gradient with respect to d and r at a fixed node, solved for the motions of the beam's end.
struct Loose {
  Vector3 force_j = Vector3::Zero();
  Vector3 moment_j = Vector3::Zero();
  Matrix3 d_moment_j = Matrix3::Zero();  ///< change of moment_j with r
};

Loose loose_part(const MovedEnd& end, const Vector6& wrench_g) {
  Loose out;
  const Vector3 d_gradient = end.joint_gj.transpose() * wrench_g.head<3>() +
                             end.stiffness.head<3>().cwiseProduct(end.apart_j.head<3>());
  for (const int k : end.along) out.force_j(k) = d_gradient(k);
  const std::vector<int>& about = end.about;
  if (about.empty()) return out;
  const Vector3 r = end.apart_j.tail<3>();
  const Matrix3 map = spin_map(r);
  const Vector3 r_gradient = map.transpose() * (end.joint_gj.transpose() * wrench_g.tail<3>()) +
                             end.stiffness.tail<3>().cwiseProduct(r);
  const Eigen::MatrixXd inverse = map(about, about).inverse().transpose();
  const Eigen::VectorXd moment = inverse * r_gradient(about);
  out.moment_j(about) = moment;
  const Matrix3 slope = spin_map_slope(r, out.moment_j);
  const Eigen::MatrixXd d_moment = -inverse * slope(about, about);
  out.d_moment_j(about, about) = d_moment;
  return out;
}

}  // namespace

MovedEnd moved_end(const Beam& beam, int which, const Placed& node, const Eigen::VectorXd& joints) {
  const BeamEnd& end = which == 0 ? beam.a : beam.b;
  const std::vector<int> along = loose(end, 0);
  const std::vector<int> about = loose(end, 3);
  const Eigen::Index columns = 12 + joints.size();
  Eigen::Index next = 0;
  if (which == 1)
    next = static_cast<Eigen::Index>(loose(beam.a, 0).size() + loose(beam.a, 3).size());

  MovedEnd out;
  out.node = 6 * which;
  out.along = along;
  out.about = about;
  const Matrix3 axes_g = end.joint ? end.joint->axes_g : Matrix3::Identity();
  out.joint_gj = node.turn_g * axes_g;
  out.apart_j.setZero();
  out.stiffness.setZero();
  const Eigen::Index first = next;
  for (const int k : along) out.apart_j(k) = joints(next++);
  for (const int k : about) out.apart_j(3 + k) = joints(next++);
  for (const int k : along) out.stiffness(k) = end.joint->stiffness[static_cast<std::size_t>(k)];
  for (const int k : about) {
    out.stiffness(3 + k) = end.joint->stiffness[static_cast<std::size_t>(3 + k)];
  }
  const Vector3 d_g = out.joint_gj * out.apart_j.head<3>();
  const Vector3 r = out.apart_j.tail<3>();
  const Vector3 carried_arm = node.turn_g * end.offset_g;
  out.arm_g = carried_arm + d_g;
  const Matrix3 off = node.turn_g - Matrix3::Identity();
  out.placed.displacement_g = node.displacement_g + off * end.offset_g + d_g;
  out.placed.turn_g = node.turn_g * rotation_of(axes_g * r);

  // The node's part, seen in the joint's axes, then the components that the unknowns replace.
  Matrix6X carried_j = Matrix6X::Zero(6, columns);
  carried_j.block<3, 3>(0, out.node) = out.joint_gj.transpose();
  carried_j.block<3, 3>(0, out.node + 3) = -out.joint_gj.transpose() * skew(out.arm_g);
  carried_j.block<3, 3>(3, out.node + 3) = out.joint_gj.transpose();
  out.d_apart_j = Matrix6X::Zero(6, columns);
  Eigen::Index column = 12 + first;
  for (const int k : along) {
    out.d_apart_j.row(k) = -carried_j.row(k);
    out.d_apart_j(k, column++) = 1.0;
  }
  if (!about.empty()) {
    Eigen::MatrixXd loose_spin(about.size(), columns);
    for (std::size_t i = 0; i < about.size(); ++i) {
      loose_spin.row(static_cast<Eigen::Index>(i)) = -carried_j.row(3 + about[i]);
      loose_spin(static_cast<Eigen::Index>(i), column++) = 1.0;
    }
    const Eigen::MatrixXd change = spin_map(r)(about, about).inverse() * loose_spin;
    for (std::size_t i = 0; i < about.size(); ++i) {
      out.d_apart_j.row(3 + about[i]) = change.row(static_cast<Eigen::Index>(i));
    }
  }
  Matrix6X motion_j = carried_j;
  motion_j.topRows<3>() += out.d_apart_j.topRows<3>();
  motion_j.bottomRows<3>() += spin_map(r) * out.d_apart_j.bottomRows<3>();
  // What the unknown is by definition, without the rounding of two differences.
  column = 12 + first;
  for (const std::vector<int>* kind : {&along, &about}) {
    for (const int k : *kind) {
      const int row = kind == &along ? k : 3 + k;
      motion_j.row(row).setZero();
      motion_j(row, column++) = 1.0;
    }
  }
  out.motion_g.resize(6, columns);
  out.motion_g.topRows<3>() = out.joint_gj * motion_j.topRows<3>();
  out.motion_g.bottomRows<3>() = out.joint_gj * motion_j.bottomRows<3>();
  return out;
}

EndTerms end_terms(const MovedEnd& end, const Vector6& wrench_g) {
  const Eigen::Index columns = end.motion_g.cols();
  EndTerms out;
  out.force = end.motion_g.transpose() * wrench_g +
              end.d_apart_j.transpose() * end.stiffness.cwiseProduct(end.apart_j);
  out.tangent = end.d_apart_j.transpose() * end.stiffness.asDiagonal() * end.d_apart_j;

  // Second derivatives of the motion in the node's spin, d and r.
  const Vector3 f = wrench_g.head<3>();
  const Vector3 m = wrench_g.tail<3>();
  Matrix3X spin = Matrix3X::Zero(3, columns);
  spin.middleCols<3>(end.node + 3).setIdentity();
  Matrix3X shift = Matrix3X::Zero(3, columns);
  shift.middleCols<3>(end.node).setIdentity();
  const auto d_d = end.d_apart_j.topRows<3>();
  const auto d_r = end.d_apart_j.bottomRows<3>();
  const Matrix3& axes = end.joint_gj;
  const Vector3 r = end.apart_j.tail<3>();
  const Matrix3X d_arm = -skew(end.arm_g) * spin + axes * d_d;
  const Matrix3X f_seen = axes.transpose() * skew(f) * spin;
  const Matrix3X m_seen = spin_map(r).transpose() * axes.transpose() * skew(m) * spin;
  out.tangent -= spin.transpose() * skew(f) * d_arm;
  out.tangent += d_d.transpose() * f_seen;
  out.tangent += d_r.transpose() * (m_seen + spin_map_slope(r, axes.transpose() * m) * d_r);
  if (end.along.empty() && end.about.empty()) return out;

  // The unknowns replace d and r: what that replacement itself changes.
  const Loose part = loose_part(end, wrench_g);
  const Vector3 force_g = axes * part.force_j;
  const Vector3 moment_g = axes * part.moment_j;
  const Matrix3X d_force = -skew(force_g) * spin;
  const Matrix3X d_moment_j = part.d_moment_j * d_r;
  const Matrix3X d_moment = -skew(moment_g) * spin + axes * d_moment_j;
  out.tangent -= shift.transpose() * d_force;
  out.tangent -= spin.transpose() * (skew(end.arm_g) * d_force - skew(force_g) * d_arm + d_moment);
  // Columns of the unknowns themselves, about: each is a unit row of the loose components.
  Matrix3X unit = Matrix3X::Zero(3, columns);
  for (const int k : end.about)
    unit.row(k) = (end.motion_g.bottomRows<3>().transpose() * axes.col(k));
  out.tangent += unit.transpose() * d_moment_j;
  return out;
}

}  // namespace fea
