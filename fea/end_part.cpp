#include "fea/end_part.hpp"

#include <cmath>

#include <Eigen/Geometry>

namespace fea {

EndPart end_part(const BeamEnd& end, Eigen::Index first_of_joint) {
  EndPart out;
  out.first_of_node = 6 * static_cast<Eigen::Index>(end.node.index);
  out.first_of_joint = first_of_joint;
  out.arm_g = end.offset_g;
  if (!end.joint) return out;
  for (std::size_t k = 0; k < 6; ++k) {
    const double stiffness = end.joint->stiffness[k];
    if (std::isinf(stiffness)) continue;
    out.loose[out.n_loose++] = {end.joint->axes_g.col(static_cast<Eigen::Index>(k % 3)), k >= 3,
                                stiffness};
  }
  return out;
}

bool has_own_terms(const EndPart& end) {
  return end.n_loose > 0 || !end.arm_g.isZero(0.0);
}

EndMotion end_motion(const EndPart& end, const Eigen::VectorXd& motion) {
  const Vector3 turn = motion.segment<3>(end.first_of_node + 3);
  EndMotion out;
  out.near_g << motion.segment<3>(end.first_of_node) + turn.cross(end.arm_g), turn;
  out.far_g = out.near_g;
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    const EndPart::Loose& loose = end.loose[k];
    const Eigen::Index first = loose.turns ? 3 : 0;
    out.apart[k] = motion(end.first_of_joint + static_cast<Eigen::Index>(k)) -
                   loose.axis_g.dot(out.near_g.segment<3>(first));
    out.far_g.segment<3>(first) += out.apart[k] * loose.axis_g;
  }
  return out;
}

}  // namespace fea
