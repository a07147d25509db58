#pragma once

#include <vector>

#include "fea/frame_model.hpp"

namespace fea {

/// A dead load: it keeps its direction, and acts at a point carried rigidly by a node.
struct NodeLoad {
  NodeId node;
  Vector3 offset_g = Vector3::Zero();  ///< node to the point  [m]
  Vector3 force_g = Vector3::Zero();   ///< [N]
  Vector3 moment_g = Vector3::Zero();  ///< [N m]
};

/// A dead load at a point of a beam.
struct BeamPointLoad {
  BeamId beam;
  double at = 0.0;                     ///< from end a, within the flexible length  [m]
  Vector3 force_g = Vector3::Zero();   ///< [N]
  Vector3 moment_g = Vector3::Zero();  ///< [N m]
};

/// A force per unit length of the member, varying linearly from `from` to `to`.
struct BeamLineLoad {
  BeamId beam;
  double from = 0.0;                    ///< from end a  [m]
  double to = base::kUnset;             ///< from end a; unset = end b  [m]
  Vector3 at_from_g = Vector3::Zero();  ///< [N/m]
  Vector3 at_to_g = Vector3::Zero();    ///< [N/m]
};

/// What a beam would do were it not held, the same all along: it is warmer than the rest, or was
/// cut too long. A fit that is wrong by `d` is a stretch of d / length.
struct BeamStrain {
  BeamId beam;
  double stretch = 0.0;  ///< along the member, longer is positive  [-]
  double bend_y = 0.0;   ///< curvature about its y axis: warmer on the +z side is positive  [1/m]
  double bend_z = 0.0;   ///< curvature about its z axis: warmer on the +y side is negative  [1/m]
};

/// How far a supported node is moved in the freedoms its support holds.
struct SupportMove {
  NodeId node;
  Vector6 by_g = Vector6::Zero();  ///< 0 in freedoms that no support holds  [m, rad]
};

struct Loads {
  std::vector<NodeLoad> nodes;
  std::vector<BeamPointLoad> points;
  std::vector<BeamLineLoad> lines;
  std::vector<BeamStrain> strains;
  std::vector<SupportMove> moves;
  /// Pulls at the mass of every beam whose density is known.  [m/s^2]
  Vector3 gravity_g = Vector3::Zero();

  [[nodiscard]] Loads operator*(double factor) const;
  [[nodiscard]] Loads operator+(const Loads& other) const;
};

}  // namespace fea
