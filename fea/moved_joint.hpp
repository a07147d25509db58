#pragma once

#include "fea/corotational.hpp"

/// From a beam's ends to the unknowns: rigid arms and joints that turn with their node.
namespace fea {

/// One end of a beam at a state. The joint lets the end move by `d` along and turn by the rotation
/// vector `r` about the joint's axes as they have turned with the node; rigid components of both
/// are zero. As in the linear equations, the unknown of a component that is not rigid is the motion
/// of the beam's end itself along (about) that axis.
struct MovedEnd {
  Placed placed;           ///< the beam's end
  Vector3 arm_g;           ///< node to the beam's end, now  [m]
  Matrix3 joint_gj;        ///< columns: the joint's axes, now
  Vector6 apart_j;         ///< d [m], then r [rad]
  Vector6 stiffness;       ///< of the components of `apart_j`; zero where rigid
  std::vector<int> along;  ///< components of d that are not rigid, 0 to 2
  std::vector<int> about;  ///< components of r that are not rigid, 0 to 2
  Matrix6X motion_g;       ///< displacement and spin of the beam's end, from the unknowns
  Matrix6X d_apart_j;      ///< change of `apart_j`, from the unknowns
  Eigen::Index node;       ///< column of the node's first unknown
};

/// @param which   0 = end a, 1 = end b
/// @param joints  relative motion of the components that are not rigid, of end a, then of end b
[[nodiscard]] MovedEnd moved_end(const Beam& beam, int which, const Placed& node,
                                 const Eigen::VectorXd& joints);

/// What a beam's end and its joint put on the unknowns, and their part of the tangent.
struct EndTerms {
  Eigen::VectorXd force;
  Eigen::MatrixXd tangent;  ///< without the change of `wrench_g`
};

/// @param wrench_g  what acts on the beam's end (force, moment)
[[nodiscard]] EndTerms end_terms(const MovedEnd& end, const Vector6& wrench_g);

}  // namespace fea
