#include "parts/side_force.hpp"

#include <cmath>

#include <Eigen/Geometry>
#include <fmt/format.h>

namespace parts {

double side_force(const SideForce& side, const fea::Solution& solution) {
  return side.share * end_forces(side.link, solution).segment<3>(6 * side.end).norm();
}

sections::Resultants with_side_force(sections::Resultants cut, const SideForce& side, double along,
                                     double force) {
  const double bent = std::abs(force * (along - side.straight_at));
  cut.vy += std::copysign(force, cut.vy);
  cut.mz += std::copysign(bent, cut.mz);
  // Each of two plates takes half of `n`.
  if (side.straight_at > 0.0) {
    cut.n += std::copysign(2.0 * force * side.straight_at / side.spacing, cut.n);
  }
  return cut;
}

checks::Wrench with_side_force(checks::Wrench root, const fea::Vector3& bolt_g, double force) {
  const fea::Vector3 arm = bolt_g - root.at;
  fea::Vector3 push(force, 0.0, 0.0);
  if (arm.cross(push).y() * root.moment.y() < 0.0) push = -push;
  root.force += push;
  root.moment += arm.cross(push);
  return root;
}

std::string side_force_words(const SideForce& side) {
  return fmt::format(
      "with a side force of {:.3g} % of the link's force, across the plates at the bolt (proposal, "
      "no source{})",
      100.0 * side.share,
      side.straight_at > 0.0
          ? "; the sleeve at the bolt, drawn tight, keeps the plates from turning there"
          : "");
}

}  // namespace parts
