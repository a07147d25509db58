#pragma once

#include <array>
#include <vector>

#include "fea/connection.hpp"
#include "fea/frame_model.hpp"

namespace fea {

/// A beam's ends in terms of the unknowns it touches: the six freedoms of each of its nodes, then
/// one more for every component of a joint that is not rigid. Such a freedom is the motion of the
/// beam's end along (about) that joint axis, so a release stays an unknown.
struct EndMap {
  Eigen::VectorXi unknowns;        ///< their numbers in the whole model
  std::array<Connection, 2> ends;  ///< near: the node carried to the end; far: the beam's end
  Eigen::MatrixXd springs;         ///< stiffness of the elastic components, over `unknowns`
};

/// Whether a joint's component is an unknown of its own, and if so whether it is a rotation; one
/// entry for each unknown that end_map will ask for, in its order.
[[nodiscard]] std::vector<bool> joint_unknowns_turn(const Beam& beam);

/// @param first_extra  number of the first of the beam's joint unknowns
[[nodiscard]] EndMap end_map(const Beam& beam, int first_extra);

}  // namespace fea
