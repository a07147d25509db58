#pragma once

#include <vector>

#include "fea/frame_model.hpp"

namespace fea {

/// What each node of a model moves with. A carried node has no unknowns of its own: whatever is
/// joined to it is joined to the root of its rigid body instead, at the end of a rigid arm, which
/// is exact in second order too. The root is the supported node of the body if there is one (so
/// that what is held is an unknown, and its force does not turn any arm), else the master.
class RigidRoots {
 public:
  RigidRoots() = default;
  /// @throws base::InputError when a node is in two bodies, or a body is held at two of its nodes
  explicit RigidRoots(const Model& model);

  /// The node itself unless it is carried.
  [[nodiscard]] NodeId root(NodeId node) const;
  /// From the root to the node; zero unless it is carried.  [m]
  [[nodiscard]] Vector3 arm_g(NodeId node) const;
  [[nodiscard]] bool is_carried(NodeId node) const { return root(node) != node; }
  /// The end or spring as one of the root.
  [[nodiscard]] BeamEnd rooted(const BeamEnd& end) const;
  [[nodiscard]] Spring rooted(const Spring& spring) const;
  /// Every carried node.
  [[nodiscard]] const std::vector<NodeId>& carried_nodes() const { return carried_; }

 private:
  std::vector<NodeId> roots_;
  std::vector<Vector3> arms_g_;
  std::vector<NodeId> carried_;
};

}  // namespace fea
