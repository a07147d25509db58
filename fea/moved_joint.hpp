#pragma once

#include <array>

#include "fea/corotational.hpp"

/// From a beam's ends to the unknowns: rigid arms and joints that turn with their node.
namespace fea {

/// Over the unknowns of one end: the six of its node, then one for each component of its joint that
/// is not rigid, along first.
inline constexpr int kMostOfEnd = 12;
template <int Rows>
using OverEnd = Eigen::Matrix<double, Rows, Eigen::Dynamic, Eigen::ColMajor, Rows, kMostOfEnd>;

/// Components of one kind that are not rigid, 0 to 2, ascending.
struct LooseComponents {
  std::array<int, 3> which = {};
  int count = 0;

  [[nodiscard]] const int* begin() const { return which.data(); }
  [[nodiscard]] const int* end() const { return which.data() + count; }
  [[nodiscard]] bool empty() const { return count == 0; }
};

/// One end of a beam at a state. The joint lets the end move by `d` along and turn by the rotation
/// vector `r` about the joint's axes as they have turned with the node; rigid components of both
/// are zero. As in the linear equations, the unknown of a component that is not rigid is the motion
/// of the beam's end itself along (about) that axis.
struct MovedEnd {
  Placed placed;          ///< the beam's end
  Vector3 arm_g;          ///< node to the beam's end, now  [m]
  Matrix3 joint_gj;       ///< columns: the joint's axes, now
  Vector6 apart_j;        ///< d [m], then r [rad]
  Vector6 stiffness;      ///< of the components of `apart_j`; zero where rigid
  LooseComponents along;  ///< components of d
  LooseComponents about;  ///< components of r
  OverEnd<6> motion_g;    ///< displacement and spin of the beam's end, from the end's unknowns
  OverEnd<6> d_apart_j;   ///< change of `apart_j`, from the end's unknowns

  [[nodiscard]] Eigen::Index n_loose() const { return along.count + about.count; }
};

/// How many components of the joint at an end are not rigid.
[[nodiscard]] Eigen::Index n_loose(const BeamEnd& end);

/// @param joint  relative motion of the components that are not rigid, n_loose of them
[[nodiscard]] MovedEnd moved_end(const BeamEnd& end, const Placed& node, const double* joint);

/// What a beam's end and its joint put on the end's unknowns, and their part of the tangent.
struct EndTerms {
  Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMostOfEnd, 1> force;
  Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::ColMajor, kMostOfEnd, kMostOfEnd>
      tangent;  ///< without the change of `wrench_g`
};

/// @param wrench_g  what acts on the beam's end (force, moment)
[[nodiscard]] EndTerms end_terms(const MovedEnd& end, const Vector6& wrench_g);

}  // namespace fea
