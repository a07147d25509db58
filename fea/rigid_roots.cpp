#include "fea/rigid_roots.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "fea/labels.hpp"

namespace fea {
namespace {

std::size_t place(NodeId node) {
  return static_cast<std::size_t>(node.index);
}

bool supported(const Model& model, NodeId node) {
  return std::any_of(model.supports.begin(), model.supports.end(),
                     [node](const Support& s) { return s.node == node; });
}

std::vector<NodeId> all_nodes(const RigidBody& body) {
  std::vector<NodeId> nodes = {body.master};
  nodes.insert(nodes.end(), body.carried.begin(), body.carried.end());
  return nodes;
}

NodeId root_of(const Model& model, const RigidBody& body, const std::string& key) {
  NodeId root = body.master;
  bool held = false;
  for (const NodeId node : all_nodes(body)) {
    if (!supported(model, node)) continue;
    if (held) {
      throw base::InputError(
          key, fmt::format("it is held at {} and at {}: a rigid body cannot tell how they share "
                           "its load; hold it at one point, and let springs hold the others",
                           label(model, root), label(model, node)));
    }
    held = true;
    root = node;
  }
  return root;
}

}  // namespace

RigidRoots::RigidRoots(const Model& model) : arms_g_(model.nodes.size(), Vector3::Zero()) {
  for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) roots_.push_back(NodeId{i});
  std::vector<bool> used(model.nodes.size(), false);
  for (const RigidBody& body : model.rigid) {
    const std::string key = body.name.empty() ? "rigid body" : "rigid body `" + body.name + "`";
    const NodeId root = root_of(model, body, key);
    for (const NodeId node : all_nodes(body)) {
      INVARIANT(node.index >= 0 && place(node) < model.nodes.size());
      if (used[place(node)]) {
        throw base::InputError(
            key, label(model, node) + " is in a rigid body already; make them one body");
      }
      used[place(node)] = true;
      if (node == root) continue;
      roots_[place(node)] = root;
      arms_g_[place(node)] = model[node].at_g - model[root].at_g;
      carried_.push_back(node);
    }
  }
}

NodeId RigidRoots::root(NodeId node) const {
  return roots_.at(place(node));
}

Vector3 RigidRoots::arm_g(NodeId node) const {
  return arms_g_.at(place(node));
}

BeamEnd RigidRoots::rooted(const BeamEnd& end) const {
  return {root(end.node), arm_g(end.node) + end.offset_g, end.joint};
}

Spring RigidRoots::rooted(const Spring& spring) const {
  Spring out = spring;
  out.offset_a_g += arm_g(spring.a);
  out.a = root(spring.a);
  if (spring.b) {
    out.offset_b_g += arm_g(*spring.b);
    out.b = root(*spring.b);
  }
  return out;
}

}  // namespace fea
