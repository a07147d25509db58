#pragma once

#include <string>
#include <vector>

#include "parts/bolt_spec.hpp"
#include "parts/end_weld_spec.hpp"
#include "parts/field.hpp"
#include "parts/joint_spec.hpp"
#include "parts/stick.hpp"
#include "parts/tab_spec.hpp"
#include "parts/thread_spec.hpp"

namespace parts {

/// How the link's ends are made: "weld-on bushing", "weld-on hard bushing", "weld-on ball joint",
/// "threaded rod end".
struct LinkEnds {
  JointSpec joint = {.kind = JointKind::bushing};
  bool welded = true;  ///< an eye or a threaded insert is welded to the bar or tube

  [[nodiscard]] bool given() const { return joint.kind != JointKind::welded; }
  bool operator==(const LinkEnds&) const = default;
};

enum class BendToward { up, down, forward, rearward };

/// "none" or "2 in off straight, forward": the apex of the true center line, at mid-length.
struct Bend {
  double off_straight = 0.0;  ///< [m]
  BendToward toward = BendToward::up;
  bool operator==(const Bend&) const = default;
};

/// The bar that holds the axle sideways. Placed by tape lengths, or by two points.
struct LateralLink {
  double bolt_to_bolt = base::kUnset;  ///< [m]
  double rise = base::kUnset;          ///< frame bolt above axle bolt  [m]
  std::string frame_bolt;              ///< point, instead of the two lengths
  std::string axle_bolt;
  std::vector<std::string> through;   ///< points the center line bends at, frame to axle
  double bend_radius = base::kUnset;  ///< of the center line where it bends; unset = sharp  [m]
  Stick stick;
  LinkEnds ends;
  LinkEnds axle_end = {.joint = {.kind = JointKind::welded},
                       .welded = false};  ///< not given: as ends
  double bolt_to_weld = base::kUnset;  ///< farthest of an end's welds; unset = its outside size [m]
  Bend bend;
  BoltSpec bolt;                          ///< through each end
  EndWeldSpec end_weld;                   ///< of its welded ends
  TabSpec axle_tabs;                      ///< on the axle, for the link's bolt
  ThreadSpec thread;                      ///< of both rod ends
  double static_rating = base::kUnset;    ///< radial, of a ball joint or rod end  [N]
  double ultimate_rating = base::kUnset;  ///< [N]
  double axial_rating = base::kUnset;     ///< static, along the bolt of such a joint  [N]
  double joint_tilt = base::kUnset;       ///< most tilt of each of its joints  [rad]
  bool operator==(const LateralLink&) const = default;
};

template <class Visitor>
void fields(Visitor& v, LateralLink& link) {
  using enum Dimension;
  using enum Presence;
  v.quantity({"bolt_to_bolt", optional, "straight from bolt to bolt"}, link.bolt_to_bolt,
             positive(length));
  v.quantity({"rise", optional, "frame bolt above axle bolt"}, link.rise, any(length));
  v.point({"frame_bolt", optional, "point of the bolt at the bracket"}, link.frame_bolt);
  v.point({"axle_bolt", optional, "point of the bolt at the axle"}, link.axle_bolt);
  v.points(
      {"through", optional, "points where the center line bends, frame to axle", "as `bend` says"},
      link.through);
  v.phrase({"tube", required, "tube or bar, with its steel", {}, "bar"}, link.stick);
  v.phrase({"ends", assumed, "how both ends are made",
            "the usual end of a fabricated link; common practice, no source"},
           link.ends);
  v.phrase(
      {"axle_end", optional, "how its end at the axle is made, where it is another", "as `ends`"},
      link.axle_end);
  v.quantity({"bolt_to_weld", optional, "how far from its bolt an end's weld reaches",
              "the width of the part, twice that at a ball joint or rod end; proposal, no source"},
             link.bolt_to_weld, positive(length));
  v.phrase({"bolt", optional, "bolt through each end: size, grade, how it is sheared",
            "its bolts are not checked"},
           link.bolt);
  v.phrase({"end_weld", optional, "weld at each of its ends: fillet all round, fishmouth, rosettes",
            "those welds are not checked"},
           link.end_weld);
  v.phrase({"axle_tabs", optional, "tabs on the axle that its bolt goes through",
            "they are not checked"},
           link.axle_tabs);
  v.phrase({"thread", optional, "thread of its rod ends: engaged, out, steel of the shank",
            "it is not checked"},
           link.thread);
  v.phrase({"bend", assumed, "none, or how far the middle is off straight", "a straight link"},
           link.bend);
  v.quantity({"bend_radius", optional, "radius of the center line where it bends", "sharp corners"},
             link.bend_radius, positive(length));
  v.quantity({"static_rating", optional, "radial static rating of a ball joint or rod end",
              "its rating is not decided"},
             link.static_rating, positive(force));
  v.quantity({"ultimate_rating", optional, "radial ultimate rating of a ball joint or rod end",
              "`static_rating` alone decides"},
             link.ultimate_rating, positive(force));
  v.quantity({"axial_rating", optional, "static rating along the bolt of each such joint",
              "force along its bolt counts as force across it"},
             link.axial_rating, positive(force));
  v.quantity({"joint_tilt", optional, "most each joint may tilt on its bolt, from its maker",
              "its tilt is shown, not judged"},
             link.joint_tilt, positive(angle));
}

/// How the end at the axle is made.
[[nodiscard]] inline const LinkEnds& axle_end_of(const LateralLink& link) {
  return link.axle_end.given() ? link.axle_end : link.ends;
}

/// One of its two ends, or both, are ball joints or rod ends.
[[nodiscard]] inline bool has_ball_end(const LateralLink& link) {
  return link.ends.joint.kind == JointKind::ball || axle_end_of(link).joint.kind == JointKind::ball;
}

/// Something is welded to one of its two ends, or to both.
[[nodiscard]] inline bool has_welded_end(const LateralLink& link) {
  return link.ends.welded || axle_end_of(link).welded;
}

}  // namespace parts
