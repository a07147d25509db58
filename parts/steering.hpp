#pragma once

#include <string>
#include <vector>

#include "parts/bolt_spec.hpp"
#include "parts/field.hpp"
#include "parts/lateral_link.hpp"
#include "parts/stick.hpp"

namespace parts {

/// Drag link and tie rod: the pitman arm pushes one knuckle through the drag link, and that knuckle
/// turns the other through the tie rod. The knuckles turn about upright kingpins. The pitman arm
/// stands square to the drag link, seen from above, on an upright sector shaft.
struct Steering {
  std::string pitman_ball;   ///< point: the drag link's ball at the pitman arm
  std::string knuckle_ball;  ///< point: the drag link's ball at the knuckle on the same side of y
  std::string tie_rod_ball;  ///< point: the tie rod's ball on one side; the other mirrors it
  Stick drag_link;
  Stick tie_rod;
  Stick pitman_arm;  ///< its bar at the shaft, depth upright; unset = its ball does not move
  double pitman_drop = base::kUnset;  ///< ball below the bar's middle; unset = flat  [m]
  BoltSpec gear_bolts;                ///< that hold the gear against the side of a rail, along y
  std::vector<std::string> gear_bolts_at;  ///< points: where each of them meets the rail
  LinkEnds ends = {.joint = {.kind = JointKind::ball}, .welded = false};  ///< of both links
  double static_rating = base::kUnset;    ///< of each of the four ball joints  [N]
  double ultimate_rating = base::kUnset;  ///< [N]
  double axial_rating = base::kUnset;     ///< static, along the bolt of such a joint  [N]
  double joint_tilt = base::kUnset;       ///< most tilt of each of its joints  [rad]
  bool operator==(const Steering&) const = default;
};

template <class Visitor>
void fields(Visitor& v, Steering& s) {
  using enum Dimension;
  using enum Presence;
  v.point({"pitman_ball", required, "the drag link's ball at the pitman arm"}, s.pitman_ball);
  v.point({"knuckle_ball", required, "the drag link's ball at the knuckle"}, s.knuckle_ball);
  v.point({"tie_rod_ball", required, "the tie rod's ball on one side; the other side mirrors it"},
          s.tie_rod_ball);
  v.phrase({"drag_link", required, "its tube or bar, with its steel"}, s.drag_link);
  v.phrase({"tie_rod", required, "its tube or bar, with its steel"}, s.tie_rod);
  v.phrase({"pitman_arm", optional, "bar of the pitman arm at its shaft, depth upright",
            "not checked: its ball stands still"},
           s.pitman_arm);
  v.quantity(
      {"pitman_drop", optional, "how far its ball lies below the middle of that bar", "a flat arm"},
      s.pitman_drop, not_negative(length));
  v.phrase({"gear_bolts", optional, "bolts of the steering gear, through the side of a rail",
            "not checked: the gear is held"},
           s.gear_bolts);
  v.points({"gear_bolts_at", optional, "where each of them meets the rail, three points or more",
            "goes with `gear_bolts`"},
           s.gear_bolts_at);
  v.phrase({"ends", assumed, "how the ends of both links are made",
            "the usual end of a steering link; common practice, no source"},
           s.ends);
  v.quantity({"static_rating", optional, "static rating of each ball joint or rod end"},
             s.static_rating, positive(force));
  v.quantity({"ultimate_rating", optional, "ultimate rating of each ball joint or rod end"},
             s.ultimate_rating, positive(force));
  v.quantity({"axial_rating", optional, "static rating along the bolt of each such joint",
              "force along its bolt counts as force across it"},
             s.axial_rating, positive(force));
  v.quantity({"joint_tilt", optional, "most each joint may tilt on its bolt, from its maker",
              "its tilt is shown, not judged"},
             s.joint_tilt, positive(angle));
}

/// The pitman arm is known, and checked.
[[nodiscard]] inline bool has_pitman_arm(const Steering& steering) {
  return !steering.pitman_arm.material.id.empty();
}

struct Design;

/// Where a kingpin stands at hub height, x y z.
/// @param side  +1 left, -1 right
/// @throws base::InputError key `vehicle.kingpin_offset` when it is not given  [m]
[[nodiscard]] std::array<double, 3> kingpin(const Design& design, double side);

/// +1 when the drag link holds the left knuckle, -1 for the right one.
[[nodiscard]] double drag_link_side(const Design& design);

/// Kingpin to tie rod ball, seen from above.  [m]
[[nodiscard]] double steering_arm_of(const Design& design);

/// The moment about a kingpin by which the ground holds the wheel farther from the drag link when
/// the drag link pushes with that force across the truck: then the tie rod carries it too. Seen
/// from above, with both steering arms of one length.
/// @param across  the drag link's force at the pitman arm's ball along y  [N]
/// @return about z  [N m]
[[nodiscard]] double wedged_wheel_moment(const Design& design, double across);

}  // namespace parts
