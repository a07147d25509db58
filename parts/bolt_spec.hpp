#pragma once

#include "sections/bolt.hpp"

namespace parts {

/// A bolt at the ends of a part: "5/8 in grade 8, double shear".
struct BoltSpec {
  sections::BoltThread thread;  ///< without a name = not given
  sections::BoltGrade grade;
  bool double_shear = true;
  bool threads_in_plane = true;
  bool loose_stack = false;    ///< nothing clamps what it goes through
  bool clamp_assumed = false;  ///< nobody says whether anything does
  double spacer = 0.0;         ///< or gap, on each side of the eye between its plates  [m]
  bool must_not_slip = false;  ///< friction of the clamped faces is to hold the load

  [[nodiscard]] bool given() const { return !thread.name.empty(); }
  bool operator==(const BoltSpec&) const = default;
};

}  // namespace parts
