#include "parts/center_line.hpp"

#include <cmath>

#include <Eigen/Geometry>

namespace parts {

Corner::Corner(const fea::Vector3& before_g, const fea::Vector3& at_g, const fea::Vector3& after_g)
    : at_g_(at_g), in_g_((at_g - before_g).normalized()) {
  const fea::Vector3 out_g = (after_g - at_g).normalized();
  angle = std::atan2(in_g_.cross(out_g).norm(), in_g_.dot(out_g));
  side_g_ = (out_g - out_g.dot(in_g_) * in_g_).normalized();
}

fea::Vector3 Corner::arc_at(double radius, double part) const {
  const fea::Vector3 start = at_g_ - radius * std::tan(0.5 * angle) * in_g_;
  const double turned = part * angle;
  return start + radius * (std::sin(turned) * in_g_ + (1.0 - std::cos(turned)) * side_g_);
}

}  // namespace parts
