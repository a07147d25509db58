#pragma once

#include "fea/geometric_stiffness.hpp"
#include "fea/over_unknowns.hpp"
#include "fea/rigid_roots.hpp"
#include "fea/shared_parts.hpp"

namespace fea {

/// A spring ready for assembly. Near: node a, far: node b; to the ground, near: the ground, far:
/// node a, so that its axes stay with the ground. Its unknowns are the six of each node it has.
struct SpringPart {
  Eigen::VectorXi unknowns;
  Vector3 near_arm_g = Vector3::Zero();  ///< from the near node to the spring  [m]
  Vector3 far_arm_g = Vector3::Zero();   ///< from the far node to the spring  [m]
  Matrix6 stiffness_g;
  Eigen::MatrixXd elastic;  ///< stiffness over its unknowns
  Matrix6 axes_sg;          ///< takes global six-components to the spring's axes
  double sign_on_b = -1.0;  ///< what acts on b's side is this times the wrench in it

  [[nodiscard]] bool to_ground() const { return unknowns.size() == 6; }
};

using SpringParts = SharedParts<SpringPart>;

/// @param spring  already at the roots of its nodes' rigid bodies
[[nodiscard]] SpringPart spring_part(const Spring& spring);

/// The motion of both sides.
/// @param motion  full
[[nodiscard]] Sides sides_of(const SpringPart& part, const Eigen::VectorXd& motion);
/// The forces on the unknowns that do the same work as these on the two sides.
[[nodiscard]] BlockVector on_unknowns(const SpringPart& part, const Sides& on);

/// Elastic stiffness over a spring's unknowns.
void elastic_block(const SpringPart& part, Eigen::MatrixXd& out);
/// Geometric stiffness over them: its law is on the relative motion seen from the near side.
/// @param wrench_g  gradient of the energy with respect to the far side's motion  [N, N m]
[[nodiscard]] BlockMatrix geometric_block(const SpringPart& part, const Vector6& wrench_g);

}  // namespace fea
