#pragma once

#include "fea/frame_model.hpp"
#include "fea/vectors.hpp"

/// The straight shear-flexible beam in its own axes. Freedoms, in this order: displacements u v w,
/// rotations rx ry rz at end a, then the same at end b.
namespace fea {

/// Phi = 12 E I / (G As L^2) of the two bending planes; 0 = no shear give.  [-]
struct ShearFlex {
  double xy = 0.0;  ///< v and rz: izz, shear_y
  double xz = 0.0;  ///< w and ry: iyy, shear_z
};

[[nodiscard]] ShearFlex shear_flex(const sections::AreaProps& section, const Elastic& elastic,
                                   double length);

/// Elastic stiffness, symmetric, rank 6.  [N/m, N, N m/rad]
/// Limits: no warping, principal axes through the centroid and shear center, small rotations.
/// Source: Przemieniecki, Theory of Matrix Structural Analysis (1968), ch. 5 (from memory).
[[nodiscard]] Matrix12 beam_stiffness(const sections::AreaProps& section, const Elastic& elastic,
                                      double length);

/// The same of a beam whose section changes along it, whose centroids lie on a line: from its give
/// as a cantilever (force method; e.g. Przemieniecki (1968), ch. 6, from memory).
[[nodiscard]] Matrix12 beam_stiffness(const TaperGive& give, const Elastic& elastic, double length);

/// Either of them times a motion of the ends; of the matrix only what a doubly symmetric section
/// has is read.
[[nodiscard]] Vector12 beam_elastic_force(const Matrix12& stiffness, const Vector12& motion);

/// Displacement and rotation at `x` of a beam without loads between its ends: exact.
/// @return 6 x 12: (u v w rx ry rz) at x from the end freedoms
[[nodiscard]] Eigen::Matrix<double, 6, 12> beam_shape(const ShearFlex& flex, double length,
                                                      double x);

/// Deflection (v w) from the chord at `x`, of a beam without loads between its ends.
/// @param about_y  rotations of the two ends from the chord, ry
/// @param about_z  likewise, rz
[[nodiscard]] Eigen::Vector2d beam_bow(const ShearFlex& flex, double length,
                                       const Eigen::Vector2d& about_y,
                                       const Eigen::Vector2d& about_z, double x);

/// End forces that do the same work as a load between the ends, (force, moment) at a then b. They
/// are the exact fixed-end reactions with the sign turned, since beam_shape is exact.
/// @param at  from end a  [m]
[[nodiscard]] Vector12 equivalent_of_point(const ShearFlex& flex, double length, double at,
                                           const Vector3& force_l, const Vector3& moment_l);

/// The same for a force per unit length that varies linearly between two stations.
[[nodiscard]] Vector12 equivalent_of_line(const ShearFlex& flex, double length, double from,
                                          double to, const Vector3& at_from_l,
                                          const Vector3& at_to_l);

/// End forces that would strain a beam as `stretch`, `bend_y` and `bend_z` do when nothing holds it
/// (see BeamStrain); in balance by themselves.
[[nodiscard]] Vector12 equivalent_of_strain(const sections::AreaProps& section,
                                            const Elastic& elastic, double stretch, double bend_y,
                                            double bend_z);

}  // namespace fea
