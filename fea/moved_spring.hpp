#pragma once

#include "fea/corotational.hpp"

/// Springs and gaps at a state.
namespace fea {

/// What a spring or a gap puts on its two nodes: gradient of its energy with respect to
/// displacement and spin of node a, then b (zero for the ground), and its change.
struct PairTerms {
  Vector12 force_g = Vector12::Zero();
  Matrix12 tangent_g = Matrix12::Zero();
};

/// A law between two points in axes that turn with the near side: w = stiffness g + initial, with
/// g = (displacement of the far point, rotation vector of the far side), both seen from the near.
struct PairLaw {
  Matrix3 axes_g = Matrix3::Identity();  ///< columns, in the reference place
  Vector3 near_arm_g = Vector3::Zero();  ///< near node to its point, reference  [m]
  Vector3 far_arm_g = Vector3::Zero();   ///< far node to its point, reference  [m]
  Vector3 apart_g = Vector3::Zero();     ///< near point to far point, reference  [m]
  Matrix6 stiffness = Matrix6::Zero();   ///< in the axes  [N/m, N, N m/rad]
  Vector6 initial = Vector6::Zero();     ///< w in the reference place  [N, N m]
};

/// A law at a state: w, and w with the moment about the axes themselves (of the spin).
struct PairForce {
  Vector6 true_s = Vector6::Zero();  ///< force and moment on the far side's point, near's axes
  PairTerms terms;
};

[[nodiscard]] PairForce pair_force(const PairLaw& law, const Placed& near, const Placed& far);

/// The law of a spring. Near: node a, far: node b; to the ground, near: the ground, far: node a.
[[nodiscard]] PairLaw law_of(const Spring& spring);

/// How far a gap is past the beginning of contact; negative while open.  [m]
/// @param a, b  the nodes of its ends; a Placed() for the ground
[[nodiscard]] double overlap(const Model& model, const Gap& gap, const Placed& a, const Placed& b);

/// Change of the overlap with displacement and spin of a, then b.
[[nodiscard]] Vector12 overlap_slope(const Model& model, const Gap& gap, const Placed& a,
                                     const Placed& b);

/// A gap as a spring in contact: stiffness times overlap, of either sign.
[[nodiscard]] PairTerms gap_terms(const Model& model, const Gap& gap, const Placed& a,
                                  const Placed& b);

}  // namespace fea
