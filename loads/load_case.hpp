#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/units.hpp"

/// What the road does to an axle: wheel loads and load cases, as pushes at roles. Knows no frame.
/// Axes ISO 8855: x forward, y left, z up.
namespace loads {

/// Where a push acts; the parts decide which point of the frame that is.
enum class Role {
  left_contact,  ///< contact patch of the left wheel
  right_contact,
  left_hub,  ///< wheel center
  right_hub,
  link_midspan,  ///< middle of the lateral link
};

/// A force at a role.
struct Push {
  Role role = Role::left_contact;
  std::array<double, 3> force = {0.0, 0.0, 0.0};  ///< on the axle or link, x y z  [N]
};

enum class Severity { routine, abuse };
enum class Side { none, left, right };

/// One load case: everything the ground and the world do to the axle, static load included.
struct LoadCase {
  std::string id;    ///< "hard_corner_left"
  std::string name;  ///< "hard corner, turning left"
  Severity severity = Severity::routine;
  Side side = Side::none;
  std::vector<Push> pushes = {};
  std::string basis = {};  ///< "1.75 x axle weight: side curb factor by Garrett, ... p. 24 (read)"
};

}  // namespace loads
