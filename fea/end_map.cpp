#include "fea/end_map.hpp"

#include <cmath>

namespace fea {
namespace {

bool is_rigid(double stiffness) {
  return std::isinf(stiffness);
}

/// Six-component axes: the joint's axes for displacement and for rotation.
Matrix6 twice(const Matrix3& axes_g) {
  Matrix6 out = Matrix6::Zero();
  out.topLeftCorner<3, 3>() = axes_g;
  out.bottomRightCorner<3, 3>() = axes_g;
  return out;
}

/// Fills one end; `extra` is the column of its first joint unknown. Returns the next free column.
Eigen::Index fill(EndMap& map, std::size_t which, const BeamEnd& end, Eigen::Index extra) {
  Connection& side = map.ends[which];
  const Eigen::Index columns = map.unknowns.size();
  side.near_g = Matrix6X::Zero(6, columns);
  side.near_g.block<6, 6>(0, 6 * static_cast<Eigen::Index>(which)) = carried(end.offset_g);
  side.near_arm_g = end.offset_g;
  side.far_g = side.near_g;
  if (!end.joint) return extra;

  const Matrix6 axes_g = twice(end.joint->axes_g);
  Matrix6X far_j = axes_g.transpose() * side.near_g;
  Vector6 stiffness = Vector6::Zero();
  for (Eigen::Index k = 0; k < 6; ++k) {
    const double value = end.joint->stiffness[static_cast<std::size_t>(k)];
    if (is_rigid(value)) continue;
    stiffness(k) = value;
    far_j.row(k).setZero();
    far_j(k, extra++) = 1.0;
  }
  const Matrix6X apart_j = far_j - axes_g.transpose() * side.near_g;
  map.springs += apart_j.transpose() * stiffness.asDiagonal() * apart_j;
  side.far_g = axes_g * far_j;
  return extra;
}

}  // namespace

std::vector<bool> joint_unknowns_turn(const Beam& beam) {
  std::vector<bool> turn;
  for (const BeamEnd* end : {&beam.a, &beam.b}) {
    if (!end->joint) continue;
    for (std::size_t k = 0; k < 6; ++k) {
      if (!is_rigid(end->joint->stiffness[k])) turn.push_back(k >= 3);
    }
  }
  return turn;
}

EndMap end_map(const Beam& beam, int first_extra) {
  const auto n_extra = static_cast<Eigen::Index>(joint_unknowns_turn(beam).size());
  EndMap map;
  map.unknowns.resize(12 + n_extra);
  map.unknowns.segment<6>(0).setLinSpaced(6 * beam.a.node.index, 6 * beam.a.node.index + 5);
  map.unknowns.segment<6>(6).setLinSpaced(6 * beam.b.node.index, 6 * beam.b.node.index + 5);
  for (Eigen::Index i = 0; i < n_extra; ++i) {
    map.unknowns(12 + i) = first_extra + static_cast<int>(i);
  }
  map.springs = Eigen::MatrixXd::Zero(12 + n_extra, 12 + n_extra);
  const Eigen::Index next = fill(map, 0, beam.a, 12);
  fill(map, 1, beam.b, next);
  return map;
}

}  // namespace fea
