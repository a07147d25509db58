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
  left_contact,  ///< contact patch of the left wheel; brake and drive torque act within the axle
  right_contact,
  left_hub,  ///< wheel center: a wheel that turns freely takes no moment about its hub
  right_hub,
  axle_center,        ///< middle of the axle at hub height
  link_midspan,       ///< middle of the lateral link
  left_arm_midspan,   ///< middle of the left arm's lower tube
  right_arm_midspan,  ///< middle of the right arm's lower tube
  left_knuckle,       ///< about the left kingpin
  right_knuckle,
  pitman_end,  ///< ball of the drag link at the pitman arm
};

/// A force and a moment at a role.
struct Push {
  Role role = Role::left_contact;
  std::array<double, 3> force = {0.0, 0.0, 0.0};   ///< on the axle or link, x y z  [N]
  std::array<double, 3> moment = {0.0, 0.0, 0.0};  ///< about x y z  [N m]
  std::string what = {};  ///< what pushes, when the role does not say: "propeller shaft"
};

enum class Severity {
  routine,  ///< happens again and again: must stay elastic with margin
  abuse,    ///< rare: must not break or buckle
};
enum class Side { none, left, right };

/// Where the suspension stands while the case acts.
enum class Posture {
  ride,
  bump,     ///< up from ride height, as far as coils and stops let it
  droop,    ///< hanging on its straps
  crossed,  ///< one wheel up, the other down
  imposed,  ///< held at a given heave or roll
};

/// Where the ground holds the axle against the frame, from ride height; what is unset is free. In
/// bump and droop the heave is the least: the loads may take the axle farther.
struct Place {
  double heave = base::kUnset;  ///< of the axle's middle, up  [m]
  double roll = base::kUnset;   ///< left wheel up; of the rotation vector, about x  [rad]
  [[nodiscard]] bool given() const { return heave == heave || roll == roll; }
};

/// What a design must have before a case can be solved.
enum class Need { axle, lateral_link, arms, steering, straps, bump_stops };

/// A force, moment or length that a case leads to by a closed form.
struct Figure {
  enum class Kind { force, moment, length };
  std::string what;  ///< "tie rod"
  double value = base::kUnset;
  Kind kind = Kind::force;
};

/// One load case: everything the ground and the world do to the axle, static load included.
struct LoadCase {
  std::string id;    ///< "hard_corner_left"
  std::string name;  ///< "hard corner, turning left"
  Severity severity = Severity::routine;
  Side side = Side::none;
  Posture posture = Posture::ride;
  std::vector<Push> pushes = {};
  std::vector<Need> needs = {};
  std::vector<Figure> figures = {};
  Place place = {};
  std::string basis = {};  ///< "1.75 x axle weight: side curb factor by Garrett, ... p. 24 (read)"
};

/// The case seen in a mirror along the truck: left and right change places, in its words too.
[[nodiscard]] LoadCase mirrored(const LoadCase& load_case);

[[nodiscard]] std::string posture_word(Posture posture);

/// What pushes and where: "left wheel, at the ground", "propeller shaft".
[[nodiscard]] std::string push_words(const Push& push);

}  // namespace loads
