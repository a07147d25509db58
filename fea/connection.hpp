#pragma once

#include <Eigen/Core>

#include "fea/vectors.hpp"

namespace fea {

using Matrix6X = Eigen::Matrix<double, 6, Eigen::Dynamic>;

/// Two sides that meet at one point: the joint of a beam's end (near: the node, far: the beam) or
/// a spring. Each side's motion at the point is linear in the same unknowns.
struct Connection {
  Matrix6X near_g;                       ///< displacement and rotation, global axes
  Matrix6X far_g;                        ///< the same of the far side
  Vector3 near_arm_g = Vector3::Zero();  ///< from the near node to the point  [m]
  Vector3 far_arm_g = Vector3::Zero();   ///< from the far node to the point  [m]
};

/// Motion of a point at `arm_g` from a node that moves with it rigidly, from the node's own.
[[nodiscard]] Matrix6 carried(const Vector3& arm_g);

}  // namespace fea
