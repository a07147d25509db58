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

struct Loads {
  std::vector<NodeLoad> nodes;
  std::vector<BeamPointLoad> points;
  std::vector<BeamLineLoad> lines;

  [[nodiscard]] Loads operator*(double factor) const;
  [[nodiscard]] Loads operator+(const Loads& other) const;
};

}  // namespace fea
