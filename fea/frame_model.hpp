#pragma once

#include <array>
#include <compare>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "fea/vectors.hpp"
#include "sections/area_props.hpp"

/// A 3D frame: nodes, shear-flexible beams, joints, springs, supports and gaps, in its reference
/// place. Suffix `_g`: components in global axes; `_l`: in the member's own.
namespace fea {

struct NodeId {
  int index = -1;
  auto operator<=>(const NodeId&) const = default;
};
struct BeamId {
  int index = -1;
  auto operator<=>(const BeamId&) const = default;
};
struct SpringId {
  int index = -1;
  auto operator<=>(const SpringId&) const = default;
};
struct GapId {
  int index = -1;
  auto operator<=>(const GapId&) const = default;
};

/// A point with six freedoms: displacement and rotation in global axes.
struct Node {
  Vector3 at_g = Vector3::Constant(base::kUnset);  ///< [m]
  std::string name = {};                           ///< for messages
};

inline constexpr double kRigid = std::numeric_limits<double>::infinity();

/// A six-component elastic connection between a beam's end and its node, in its own axes.
/// Each component is rigid (kRigid), free (0) or a spring.
struct Joint {
  Matrix3 axes_g = Matrix3::Identity();  ///< columns are the joint's x, y, z axes in global ones
  /// along x, y, z [N/m], then about x, y, z [N m/rad]
  std::array<double, 6> stiffness = {kRigid, kRigid, kRigid, kRigid, kRigid, kRigid};
};

/// Where a beam ends: rigidly `offset_g` away from its node, through a joint if there is one.
struct BeamEnd {
  NodeId node;
  Vector3 offset_g = Vector3::Zero();         ///< node to end of the flexible length  [m]
  std::optional<Joint> joint = std::nullopt;  ///< none = welded
};

/// Elastic constants of a beam.
struct Elastic {
  double young = base::kUnset;  ///< [Pa]
  double shear = base::kUnset;  ///< [Pa]
};

/// What a beam whose section changes along it gives, over E and G: integrals from end a to end b.
struct TaperGive {
  double along = base::kUnset;        ///< of dx / area  [1/m]
  double twist = base::kUnset;        ///< of dx / torsion constant  [1/m^3]
  std::array<double, 3> bend_y = {};  ///< of x^k dx / Iyy, k = 0, 1, 2  [m^(k - 3)]
  std::array<double, 3> bend_z = {};  ///< of x^k dx / Izz
  double shear_y = 0.0;               ///< of dx / shear area; 0 = none  [1/m]
  double shear_z = 0.0;
  bool operator==(const TaperGive&) const = default;
};

/// A straight, shear-flexible beam (Timoshenko), prismatic unless it has a taper.
struct Beam {
  BeamEnd a;
  BeamEnd b;
  sections::AreaProps section;  ///< of a beam that tapers, in its middle
  Elastic elastic;
  double density = base::kUnset;  ///< for its own weight; unset = it has no part in it  [kg/m^3]
  /// The member's z axis is the part of this vector square to the member. Default: global z (up);
  /// for members within 0.1 degree of vertical, global x.
  std::optional<Vector3> z_toward_g = std::nullopt;
  std::string name = {};  ///< for messages
  /// Of a beam that tapers: its stiffness is exact, its second order and what loads between its
  /// ends do to them are those of `section`.
  std::optional<TaperGive> taper = std::nullopt;
};

/// A zero-length six-component spring between a point of node a and the same point of node b, or
/// the ground. Its axes turn with a; to the ground they stay.
struct Spring {
  NodeId a;
  std::optional<NodeId> b = std::nullopt;  ///< none = ground
  Vector3 offset_a_g = Vector3::Zero();    ///< node a to the point  [m]
  Vector3 offset_b_g = Vector3::Zero();    ///< node b to the point  [m]
  Matrix3 axes_g = Matrix3::Identity();
  /// In the spring's axes, symmetric, no kRigid.  [N/m, N, N m/rad]
  Matrix6 stiffness = Matrix6::Zero();
  /// What it already puts on b's side (on the ground when there is none) in the reference place, in
  /// the spring's axes. Only large displacement takes it: there the loads are all that act in the
  /// place reached; elsewhere they are the change from the reference state.  [N, N m]
  Vector6 preload = Vector6::Zero();
  std::string name = {};
};

/// A point of a gap, fixed to a node or to the ground.
struct GapEnd {
  std::optional<NodeId> node = std::nullopt;       ///< none = ground
  Vector3 at_g = Vector3::Constant(base::kUnset);  ///< in the reference place  [m]
};

/// A one-sided spring between two points, such as a strap or a bump stop: no force until they have
/// come `clearance` farther apart (or nearer) than in the reference place, then in proportion to
/// the rest. Several side by side make a stop that stiffens. A negative stiffness takes away what a
/// spring beside it gives, from there on: a coil that leaves its seat. Only large displacement
/// closes it; elsewhere it is taken as open.
struct Gap {
  enum class Contact { when_longer, when_shorter };

  GapEnd a;
  GapEnd b;
  /// Measured along this axis, which turns with a; none = the straight line between the points.
  std::optional<Vector3> axis_g = std::nullopt;
  Contact contact = Contact::when_longer;
  double stiffness = base::kUnset;  ///< of the contact  [N/m]
  double clearance = base::kUnset;  ///< in the reference place, 0 or more  [m]
  std::string name = {};
};

/// Holds some of a node's freedoms at zero: along x, y, z, then about x, y, z (global axes). With
/// finite rotations the last three are the components of the node's rotation vector.
struct Support {
  NodeId node;
  std::array<bool, 6> held = {true, true, true, true, true, true};
};

/// Nodes that move as one rigid piece: the others follow the master exactly, no stiffness is put
/// between them. At most one of them may be supported.
struct RigidBody {
  NodeId master;
  std::vector<NodeId> carried;  ///< none of them the master, none in another body
  std::string name = {};        ///< for messages
};

struct Model {
  std::vector<Node> nodes;
  std::vector<Beam> beams;
  std::vector<Spring> springs;
  std::vector<Support> supports;
  std::vector<RigidBody> rigid;
  std::vector<Gap> gaps;

  NodeId add(Node node);
  BeamId add(Beam beam);
  SpringId add(Spring spring);
  GapId add(Gap gap);
  void add(Support support) { supports.push_back(support); }
  void add(RigidBody body);

  [[nodiscard]] const Node& operator[](NodeId id) const;
  [[nodiscard]] const Beam& operator[](BeamId id) const;
  [[nodiscard]] const Spring& operator[](SpringId id) const;
  [[nodiscard]] const Gap& operator[](GapId id) const;
};

/// What may be added to a model.
struct Added {
  std::vector<Spring> springs;
  std::vector<Gap> gaps;
};

/// The ends of a beam's flexible length.  [m]
[[nodiscard]] Vector3 end_a_g(const Model& model, const Beam& beam);
[[nodiscard]] Vector3 end_b_g(const Model& model, const Beam& beam);
[[nodiscard]] double length(const Model& model, const Beam& beam);

/// Rows are the member's x, y, z axes in global components: v_l = axes * v_g.
[[nodiscard]] Matrix3 member_axes(const Model& model, const Beam& beam);

}  // namespace fea
