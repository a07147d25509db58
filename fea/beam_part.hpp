#pragma once

#include <array>
#include <atomic>
#include <memory>
#include <mutex>

#include "fea/beam_element.hpp"
#include "fea/end_part.hpp"
#include "fea/over_unknowns.hpp"
#include "fea/rigid_roots.hpp"
#include "fea/shared_parts.hpp"

namespace fea {

struct BeamPart;

/// A beam's geometric stiffness is linear in what acts on it: its matrix for each of those forces
/// by itself. Worked out when it is first asked for, by any thread.
class GeometricTerms {
 public:
  /// Over the beam's unknowns, as a Triangle in a column for each of: axial force, torque, the
  /// moments about y and z at end a and at end b, with the shear that balances them. Unit loads.
  using Matrix = Eigen::Matrix<double, Eigen::Dynamic, 6>;
  /// @param part  the one that this belongs to
  [[nodiscard]] const Matrix& of(const BeamPart& part) const;

 private:
  mutable std::atomic<bool> is_there_ = false;
  mutable std::mutex mutex_;
  mutable Matrix matrix_;
};

/// A beam ready for assembly. Its unknowns: the six of each of its nodes, then one for every
/// component of a joint that is not rigid, at end a and at end b. Such a freedom is the motion of
/// the beam's end along (about) that joint axis, so a release stays an unknown.
struct BeamPart {
  double length = base::kUnset;  ///< [m]
  double polar = base::kUnset;   ///< (Iyy + Izz) / A  [m^2]
  Matrix3 axes_lg;               ///< takes global components to the member's own
  ShearFlex flex;
  Matrix12 stiffness_l;
  Matrix6 bending_l;         ///< of it, the rows and columns of rotations
  Eigen::VectorXi unknowns;  ///< their numbers in the whole model
  std::array<EndPart, 2> ends;
  bool plain = false;  ///< welded at its nodes without arms: its unknowns are its ends' motions
  Eigen::MatrixXd elastic;  ///< stiffness over its unknowns, its joints included
  std::shared_ptr<const GeometricTerms> geometric;
};

/// @param first_of_joints  number of the first unknown of its joints
[[nodiscard]] BeamPart beam_part(const Model& model, const RigidRoots& roots, const Beam& beam,
                                 int first_of_joints);

using BeamParts = SharedParts<BeamPart>;

/// A symmetric matrix over a beam's ends in its own axes, over its unknowns instead.
/// @param between_l  of what is between the ends: nothing comes of it where both are displaced
///                   alike
/// @param out        taken over; no memory is asked for when it has the size already
void to_unknowns(const BeamPart& part, const Matrix12& between_l, Eigen::MatrixXd& out);

/// Elastic stiffness over a beam's unknowns, its joints included.
/// @param stiffness_l  between its ends
void elastic_block(const BeamPart& part, const Matrix12& stiffness_l, Eigen::MatrixXd& out);
/// From its section and axes.
[[nodiscard]] Matrix12 stiffness_of(const Beam& beam, double length);

/// The freedoms of a beam's ends in its own axes.
/// @param ends  the motion of each
[[nodiscard]] Vector12 seen_by_member(const BeamPart& part, const std::array<EndMotion, 2>& ends);
/// @param motion  full
[[nodiscard]] Vector12 end_freedoms(const BeamPart& part, const Eigen::VectorXd& motion);

/// What acts on a beam's end: the gradient of the joint's energy with respect to it.  [N, N m]
[[nodiscard]] Vector6 wrench_at(const BeamPart& part, const Vector12& ends_l, std::size_t end);

/// The part of a beam's geometric stiffness that is between its ends, member axes.
/// @param elastic_l  K q - strains, in balance by itself
[[nodiscard]] Matrix12 geometric_between_ends(const BeamPart& part, const Vector12& elastic_l);
/// All of it, its joints and arms included, over its unknowns.
/// @param ends_l  what acts on its ends: the same, less its loads
/// @param out     taken over
void geometric_block(const BeamPart& part, const Vector12& elastic_l, const Vector12& ends_l,
                     Eigen::MatrixXd& out);
/// The same from its terms, for a beam of which it is asked for often: far sooner.
[[nodiscard]] Triangle geometric_triangle(const BeamPart& part, const Vector12& elastic_l,
                                          const Vector12& ends_l);

}  // namespace fea
