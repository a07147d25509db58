#pragma once

#include "fea/vectors.hpp"

namespace parts {

/// A corner of a center line, and the arc that rounds it.
class Corner {
 public:
  Corner(const fea::Vector3& before_g, const fea::Vector3& at_g, const fea::Vector3& after_g);

  double angle = 0.0;  ///< by which the line turns; 0 = straight on  [rad]

  /// A point of the arc of this radius that touches both straights.
  /// @param part  0 = where the arc starts, 1 = where it ends
  [[nodiscard]] fea::Vector3 arc_at(double radius, double part) const;

 private:
  fea::Vector3 at_g_;
  fea::Vector3 in_g_;    ///< direction before the corner
  fea::Vector3 side_g_;  ///< square to it, to the inside of the bend
};

}  // namespace parts
