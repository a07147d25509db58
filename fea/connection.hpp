#pragma once

#include <Eigen/Core>

#include "fea/vectors.hpp"

namespace fea {

using Matrix6X = Eigen::Matrix<double, 6, Eigen::Dynamic>;

/// Two nodes, and a joint with all six components free at either end.
inline constexpr int kMostUnknowns = 24;

// For intermediate results over the unknowns of one beam or spring: not on the heap.
template <int Rows>
using OverUnknowns =
    Eigen::Matrix<double, Rows, Eigen::Dynamic, Eigen::ColMajor, Rows, kMostUnknowns>;
using BlockVector = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMostUnknowns, 1>;

/// The unknowns of one beam or spring out of all; an indexed view would copy the numbers.
[[nodiscard]] inline BlockVector gathered(const Eigen::VectorXd& full,
                                          const Eigen::VectorXi& unknowns) {
  BlockVector out(unknowns.size());
  for (Eigen::Index i = 0; i < out.size(); ++i) out(i) = full(unknowns(i));
  return out;
}

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
