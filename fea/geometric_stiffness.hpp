#pragma once

#include "fea/beam_element.hpp"
#include "fea/end_part.hpp"

/// Second-order terms of the energy of forces already acting. Rotations are components of a
/// rotation vector, so that every moment inside the frame is semi-tangential and members may meet
/// at any angle.
namespace fea {

/// Motion of a point at `arm_g` from a node that moves with it rigidly, from the node's own.
[[nodiscard]] Matrix6 carried(const Vector3& arm_g);

/// S(v) w = v x w.
[[nodiscard]] Matrix3 skew(const Vector3& v);

/// Geometric stiffness of a beam from the forces at its ends, joint correction included.
/// For a rigid rotation t it gives (t x f_a, t x m_a / 2, t x f_b, t x m_b / 2), exactly.
/// @param ends_l  what acts on the beam: (force, moment) at a, then b; in balance without loads
///                between the ends  [N, N m]
/// @param polar   (Iyy + Izz) / A  [m^2]
/// Energy: 1/2 N (v'^2 + w'^2 + polar rx'^2) - rx' (My v' + Mz w') + Vy (w' rx - u' v')
///         - Vz (v' rx + u' w') + 1/2 T (w' v'' - v' w''), cubic v and w, linear u and rx; the
///         N terms in v and w with the shear-flexible shapes.
/// Limits: doubly symmetric sections. Members with loads between their ends: the forces are the
/// linear fit K q, so subdivide.
/// Source: McGuire, Gallagher, Ziemian, Matrix Structural Analysis, 2nd ed. (2000), ch. 9; Yang and
/// Kuo, Theory and Analysis of Nonlinear Framed Structures (1994) (both from memory); integrated
/// symbolically.
[[nodiscard]] Matrix12 beam_geometric(const Vector12& ends_l, const ShearFlex& flex, double length,
                                      double polar);
/// Adds that matrix times a motion of the ends.
void add_beam_geometric_force(const Vector12& ends_l, const ShearFlex& flex, double length,
                              double polar, const Vector12& motion_l, Vector12& out);

/// A force at the end of a rigid arm fixed to a node, on the node's rotation: the second-order
/// displacement of the arm's end is t x (t x arm) / 2.
/// @param force_g  gradient of the energy with respect to the displacement of the arm's end  [N]
/// @return 3 x 3, symmetric  [N m]
[[nodiscard]] Matrix3 arm_geometric(const Vector3& force_g, const Vector3& arm_g);

/// Adds the second-order terms of a beam's end, whose joint's law is on the relative motion seen
/// from the near side: displacement Ra^T (x_far - x_near), rotation log(Ra^T Rb); its arm included.
/// Near, its node; far, the end beyond its joint.
/// @param wrench_g  gradient of the energy with respect to the far side's motion: what the near
///                  side's part would put on it with the sign turned  [N, N m]
/// @param node   column of the first of its node's six unknowns
/// @param joint  column of the first of its joint's
void add_end_geometric(const EndPart& end, const Vector6& wrench_g, Eigen::Index node,
                       Eigen::Index joint, Eigen::Ref<Eigen::MatrixXd> block);

/// Motions of a connection's two sides, or wrenches on them: (displacement, rotation) or (force,
/// moment), global axes.
struct Sides {
  Vector6 near;
  Vector6 far;
};
/// The second-order terms of such a connection, with an arm on either side, times a motion, seen
/// from the sides.
[[nodiscard]] Sides connection_force(const Sides& motion, const Vector3& near_arm_g,
                                     const Vector3& far_arm_g, const Vector6& wrench_g);

}  // namespace fea
