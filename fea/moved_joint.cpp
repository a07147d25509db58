#include "fea/moved_joint.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/LU>

#include "fea/geometric_stiffness.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

constexpr Eigen::Index kSpin = 3;   // column of the node's spin
constexpr Eigen::Index kLoose = 6;  // column of the first loose component

/// Of one kind (0 = along, 3 = about).
LooseComponents loose(const BeamEnd& end, std::size_t kind) {
  LooseComponents out;
  for (std::size_t k = 0; end.joint && k < 3; ++k) {
    if (std::isinf(end.joint->stiffness[kind + k])) continue;
    out.which[static_cast<std::size_t>(out.count++)] = static_cast<int>(k);
  }
  return out;
}

/// Inverse of the rows and columns that are loose, zero elsewhere.
Matrix3 inverse_of_loose(const Matrix3& matrix, const LooseComponents& about) {
  Matrix3 padded = Matrix3::Identity();
  Matrix3 keep = Matrix3::Zero();
  for (const int row : about) {
    keep(row, row) = 1.0;
    for (const int column : about) padded(row, column) = matrix(row, column);
  }
  return keep * padded.inverse();
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
  if (end.about.empty()) return out;
  const Vector3 r = end.apart_j.tail<3>();
  const Matrix3 map = spin_map(r);
  const Vector3 r_gradient = map.transpose() * (end.joint_gj.transpose() * wrench_g.tail<3>()) +
                             end.stiffness.tail<3>().cwiseProduct(r);
  const Matrix3 inverse = inverse_of_loose(map, end.about).transpose();
  out.moment_j = inverse * r_gradient;
  Matrix3 slope = spin_map_slope(r, out.moment_j);
  for (int k = 0; k < 3; ++k) {
    if (std::find(end.about.begin(), end.about.end(), k) == end.about.end()) slope.col(k).setZero();
  }
  out.d_moment_j = -inverse * slope;
  return out;
}

/// No joint that gives: the end goes with the node at its arm.
void set_rigid(MovedEnd& end) {
  end.motion_g.setIdentity(6, 6);
  end.motion_g.topRightCorner<3, 3>() = -skew(end.arm_g);
  end.d_apart_j.setZero(6, 6);
}

void set_loose(MovedEnd& end) {
  const Eigen::Index columns = kLoose + end.n_loose();
  const Matrix3 back = end.joint_gj.transpose();
  const Matrix3 map = spin_map(end.apart_j.tail<3>());
  // The node's part, seen in the joint's axes.
  OverEnd<6> motion_j = OverEnd<6>::Zero(6, columns);
  motion_j.topLeftCorner<3, 3>() = back;
  motion_j.block<3, 3>(0, kSpin) = -back * skew(end.arm_g);
  motion_j.block<3, 3>(3, kSpin) = back;

  // The unknown of a loose component is the beam's own motion: what is apart is that less the
  // node's.
  end.d_apart_j.setZero(6, columns);
  Eigen::Index column = kLoose;
  for (const int k : end.along) {
    end.d_apart_j.row(k) = -motion_j.row(k);
    end.d_apart_j(k, column++) = 1.0;
  }
  if (!end.about.empty()) {
    OverEnd<3> loose_spin = OverEnd<3>::Zero(3, columns);
    for (const int k : end.about) {
      loose_spin.row(k) = -motion_j.row(3 + k);
      loose_spin(k, column++) = 1.0;
    }
    end.d_apart_j.bottomRows<3>() = inverse_of_loose(map, end.about).lazyProduct(loose_spin);
  }
  motion_j.topRows<3>() += end.d_apart_j.topRows<3>();
  motion_j.bottomRows<3>() += map.lazyProduct(end.d_apart_j.bottomRows<3>());
  // What the unknown is by definition, without the rounding of two differences.
  column = kLoose;
  for (const int k : end.along) {
    motion_j.row(k).setZero();
    motion_j(k, column++) = 1.0;
  }
  for (const int k : end.about) {
    motion_j.row(3 + k).setZero();
    motion_j(3 + k, column++) = 1.0;
  }
  end.motion_g.resize(6, columns);
  end.motion_g.topRows<3>() = end.joint_gj.lazyProduct(motion_j.topRows<3>());
  end.motion_g.bottomRows<3>() = end.joint_gj.lazyProduct(motion_j.bottomRows<3>());
}

}  // namespace

Eigen::Index n_loose(const BeamEnd& end) {
  return loose(end, 0).count + loose(end, 3).count;
}

MovedEnd moved_end(const BeamEnd& end, const Placed& node, const double* joint) {
  MovedEnd out;
  out.along = loose(end, 0);
  out.about = loose(end, 3);
  const Matrix3 axes_g = end.joint ? end.joint->axes_g : Matrix3::Identity();
  out.joint_gj = node.turn_g * axes_g;
  out.apart_j.setZero();
  out.stiffness.setZero();
  const auto take = [&](int row) {
    out.apart_j(row) = *joint++;
    out.stiffness(row) = end.joint->stiffness[static_cast<std::size_t>(row)];
  };
  for (const int k : out.along) take(k);
  for (const int k : out.about) take(3 + k);
  const Vector3 d_g = out.joint_gj * out.apart_j.head<3>();
  out.arm_g = node.turn_g * end.offset_g + d_g;
  const Matrix3 off = node.turn_g - Matrix3::Identity();
  out.placed.displacement_g = node.displacement_g + off * end.offset_g + d_g;
  out.placed.turn_g = node.turn_g;
  if (!out.about.empty()) out.placed.turn_g *= rotation_of(axes_g * out.apart_j.tail<3>());
  if (out.n_loose() == 0) {
    set_rigid(out);
  } else {
    set_loose(out);
  }
  return out;
}

namespace {

/// Over N unknowns of an end; what is known when compiled is worked out faster.
template <int Rows, int N>
using OverLoose =
    Eigen::Matrix<double, Rows, N, Eigen::ColMajor, Rows, N == Eigen::Dynamic ? kMostOfEnd : N>;

/// What a joint that gives adds.
template <int N>
void add_joint(const MovedEnd& end, const Vector6& wrench_g, EndTerms& out) {
  const Vector3 m = wrench_g.tail<3>();
  const Matrix3 f_skew = skew(wrench_g.head<3>());
  const Matrix3 arm_skew = skew(end.arm_g);
  const OverLoose<6, N> d_apart = end.d_apart_j;
  const OverLoose<3, N> d_r = d_apart.template bottomRows<3>();
  const Matrix3& axes = end.joint_gj;
  const Vector3 r = end.apart_j.tail<3>();

  const Vector6 spring = end.stiffness.cwiseProduct(end.apart_j);
  out.force += d_apart.transpose().lazyProduct(spring);
  const OverLoose<6, N> d_spring = end.stiffness.asDiagonal() * d_apart;
  Eigen::Matrix<double, N, N, Eigen::ColMajor, OverLoose<6, N>::MaxColsAtCompileTime,
                OverLoose<6, N>::MaxColsAtCompileTime>
      tangent = d_apart.transpose().lazyProduct(d_spring);
  auto spin_rows = tangent.template middleRows<3>(kSpin);
  auto spin_columns = tangent.template middleCols<3>(kSpin);
  OverLoose<3, N> d_arm = OverLoose<3, N>::Zero(3, d_apart.cols());
  if (!end.along.empty()) {
    const OverLoose<3, N> d_d = d_apart.template topRows<3>();
    d_arm = axes.lazyProduct(d_d);
    spin_rows -= f_skew.lazyProduct(d_arm);
    const Matrix3 f_seen = axes.transpose() * f_skew;
    spin_columns += d_d.transpose().lazyProduct(f_seen);
  }
  d_arm.template middleCols<3>(kSpin) -= arm_skew;
  if (!end.about.empty()) {
    const Matrix3 m_seen = spin_map(r).transpose() * axes.transpose() * skew(m);
    spin_columns += d_r.transpose().lazyProduct(m_seen);
    const OverLoose<3, N> bent = spin_map_slope(r, axes.transpose() * m).lazyProduct(d_r);
    tangent += d_r.transpose().lazyProduct(bent);
  }

  // The unknowns replace d and r: what that replacement itself changes.
  const Loose part = loose_part(end, wrench_g);
  const Matrix3 moment_skew = skew(axes * part.moment_j);
  tangent.template block<3, 3>(kSpin, kSpin) += moment_skew;
  if (!end.along.empty()) {
    const Matrix3 force_skew = skew(axes * part.force_j);
    tangent.template block<3, 3>(0, kSpin) += force_skew;
    spin_rows += force_skew.lazyProduct(d_arm);
    tangent.template block<3, 3>(kSpin, kSpin) += arm_skew * force_skew;
  }
  if (!end.about.empty()) {
    const OverLoose<3, N> d_moment_j = part.d_moment_j.lazyProduct(d_r);
    spin_rows -= axes.lazyProduct(d_moment_j);
    Eigen::Index column = kLoose + end.along.count;
    for (const int k : end.about) tangent.row(column++) += d_moment_j.row(k);
  }
  out.tangent += tangent;
}

}  // namespace

EndTerms end_terms(const MovedEnd& end, const Vector6& wrench_g) {
  EndTerms out;
  out.force = end.motion_g.transpose().lazyProduct(wrench_g);
  out.tangent.setZero(end.motion_g.cols(), end.motion_g.cols());
  // Second derivatives of the motion in the node's spin, d and r.
  out.tangent.block<3, 3>(kSpin, kSpin) = skew(wrench_g.head<3>()) * skew(end.arm_g);
  switch (end.n_loose()) {
    case 0:
      break;
    case 3:
      add_joint<kLoose + 3>(end, wrench_g, out);
      break;
    case 6:
      add_joint<kLoose + 6>(end, wrench_g, out);
      break;
    default:
      add_joint<Eigen::Dynamic>(end, wrench_g, out);
  }
  return out;
}

}  // namespace fea
