#pragma once

#include <array>

#include "fea/frame_model.hpp"

namespace fea {

/// One end of a beam from its unknowns: its node moves the near side rigidly at an arm; the far
/// side, the beam's end, moves with it but along and about the axes of the joint's components that
/// are not rigid, each of which is an unknown of its own.
struct EndPart {
  struct Loose {
    Vector3 axis_g;
    bool turns = false;
    double stiffness = 0.0;
  };

  Eigen::Index first_of_node = 0;   ///< number of the node's first unknown
  Eigen::Index first_of_joint = 0;  ///< of the first of `loose`; the others follow
  Vector3 arm_g = Vector3::Zero();  ///< node to the beam's end  [m]
  std::array<Loose, 6> loose = {};
  std::size_t n_loose = 0;
};

/// @param end             already at the root of its rigid body
/// @param first_of_joint  number of its joint's first unknown
[[nodiscard]] EndPart end_part(const BeamEnd& end, Eigen::Index first_of_joint);

/// Whether its joint or arm has terms of its own in a beam's matrices.
[[nodiscard]] bool has_own_terms(const EndPart& end);

/// Displacement and rotation of both sides, global axes.
struct EndMotion {
  Vector6 near_g;
  Vector6 far_g;
  std::array<double, 6> apart;  ///< of each loose component
};

/// @param motion  full
[[nodiscard]] EndMotion end_motion(const EndPart& end, const Eigen::VectorXd& motion);

/// Work of a wrench on each side, and of the joint's own springs, as forces on the unknowns.
/// @param take  called with each unknown's number and force
template <class Take>
void for_each_force(const EndPart& end, const EndMotion& at, const Vector6& on_near,
                    const Vector6& on_far, const Take& take) {
  Vector3 force = on_near.head<3>() + on_far.head<3>();
  Vector3 moment = on_near.tail<3>() + on_far.tail<3>();
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    const EndPart::Loose& loose = end.loose[k];
    const Vector3 part = loose.turns ? on_far.tail<3>() : on_far.head<3>();
    const double along = loose.axis_g.dot(part) + loose.stiffness * at.apart[k];
    (loose.turns ? moment : force) -= along * loose.axis_g;
    take(end.first_of_joint + static_cast<Eigen::Index>(k), along);
  }
  moment += end.arm_g.cross(force);
  for (Eigen::Index i = 0; i < 3; ++i) {
    take(end.first_of_node + i, force(i));
    take(end.first_of_node + 3 + i, moment(i));
  }
}

}  // namespace fea
