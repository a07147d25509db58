#include "fea/spring_part.hpp"

#include <Eigen/Geometry>

namespace fea {
namespace {

Matrix6 six_axes(const Matrix3& axes) {
  Matrix6 out = Matrix6::Zero();
  out.topLeftCorner<3, 3>() = axes;
  out.bottomRightCorner<3, 3>() = axes;
  return out;
}

Eigen::Index first_of_far(const SpringPart& part) {
  return part.to_ground() ? 0 : 6;
}

Vector6 at_arm(const Vector3& arm_g, const Eigen::VectorXd& motion, Eigen::Index first) {
  const Vector3 turn = motion.segment<3>(first + 3);
  Vector6 out;
  out << motion.segment<3>(first) + turn.cross(arm_g), turn;
  return out;
}

Vector6 on_node(const Vector3& arm_g, const Vector6& wrench_g) {
  Vector6 out = wrench_g;
  out.tail<3>() += arm_g.cross(wrench_g.head<3>());
  return out;
}

}  // namespace

SpringPart spring_part(const Spring& spring) {
  SpringPart part;
  part.axes_sg = six_axes(spring.axes_g.transpose());
  part.stiffness_g = part.axes_sg.transpose() * spring.stiffness * part.axes_sg;
  part.unknowns.resize(spring.b ? 12 : 6);
  part.unknowns.head<6>().setLinSpaced(6 * spring.a.index, 6 * spring.a.index + 5);
  if (spring.b) {
    part.unknowns.tail<6>().setLinSpaced(6 * spring.b->index, 6 * spring.b->index + 5);
    part.near_arm_g = spring.offset_a_g;
    part.far_arm_g = spring.offset_b_g;
  } else {
    part.far_arm_g = spring.offset_a_g;
    part.sign_on_b = 1.0;
  }
  elastic_block(part, part.elastic);
  return part;
}

Sides sides_of(const SpringPart& part, const Eigen::VectorXd& motion) {
  Sides out{.near = Vector6::Zero(), .far = {}};
  if (!part.to_ground()) out.near = at_arm(part.near_arm_g, motion, part.unknowns(0));
  out.far = at_arm(part.far_arm_g, motion, part.unknowns(first_of_far(part)));
  return out;
}

BlockVector on_unknowns(const SpringPart& part, const Sides& on) {
  BlockVector out(part.unknowns.size());
  if (!part.to_ground()) out.head<6>() = on_node(part.near_arm_g, on.near);
  out.tail<6>() = on_node(part.far_arm_g, on.far);
  return out;
}

void elastic_block(const SpringPart& part, Eigen::MatrixXd& out) {
  out.resize(part.unknowns.size(), part.unknowns.size());
  const Matrix6 far = carried(part.far_arm_g);
  const Matrix6 force = part.stiffness_g * far;
  out.bottomRightCorner<6, 6>().noalias() = far.transpose() * force;
  if (part.to_ground()) return;
  const Matrix6 near = carried(part.near_arm_g);
  out.topRightCorner<6, 6>().noalias() = -near.transpose() * force;
  out.bottomLeftCorner<6, 6>() = out.topRightCorner<6, 6>().transpose();
  out.topLeftCorner<6, 6>().noalias() = near.transpose() * (part.stiffness_g * near);
}

BlockMatrix geometric_block(const SpringPart& part, const Vector6& wrench_g) {
  const Vector3 force = wrench_g.head<3>();
  BlockMatrix out = BlockMatrix::Zero(part.unknowns.size(), part.unknowns.size());
  out.bottomRightCorner<3, 3>() = arm_geometric(force, part.far_arm_g);
  if (part.to_ground()) return out;
  // turn_near . (force x apart + moment x turn_far / 2), and the arms' own.
  const Matrix3 with_shift = skew(force);
  const auto put = [&out](Eigen::Index column, const Matrix3& term) {
    out.block<3, 3>(3, column) = term;
    out.block<3, 3>(column, 3) = term.transpose();
  };
  put(0, -with_shift);
  put(6, with_shift);
  put(9, 0.5 * skew(wrench_g.tail<3>()) - with_shift * skew(part.far_arm_g));
  const Matrix3 with_arm = with_shift * skew(part.near_arm_g);
  out.block<3, 3>(3, 3) = with_arm + with_arm.transpose() + arm_geometric(-force, part.near_arm_g);
  return out;
}

}  // namespace fea
