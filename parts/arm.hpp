#pragma once

#include <array>
#include <string>

#include "parts/bolt_spec.hpp"
#include "parts/end_weld_spec.hpp"
#include "parts/field.hpp"
#include "parts/joint_spec.hpp"
#include "parts/stick.hpp"
#include "parts/tab_spec.hpp"

namespace parts {

/// How an arm holds the axle.
enum class ArmLayout {
  one_bolt,   ///< one tube, on one bolt at the axle
  two_bolts,  ///< one tube, whose end piece sits on two bolts at the axle
  joined,     ///< a radius arm: an upper arm from a second bolt joins the lower tube part-way
  separate,   ///< an upper arm that has its own joint at the frame
};

/// What of the lower tube the upper arm of a radius arm is welded to.
enum class JoinsOn {
  facing_side,    ///< the side that faces it
  tabs_on_sides,  ///< two tabs along the tube, at the two sides square to the plane of the arm
};

/// An arm that holds the axle lengthwise, leading or trailing: one tube, or a lower tube and an
/// upper arm.
struct Arm {
  std::string axle_lower;   ///< point: lower bolt at the axle
  std::string axle_upper;   ///< point: second bolt at the axle, the upper arm's; empty = none
  std::string frame;        ///< point: joint at the frame
  std::string upper_frame;  ///< point: the upper arm's own joint at the frame; empty = none
  double joins_at = base::kUnset;  ///< along the lower tube, from the axle bolt  [m]
  JoinsOn joins_on = JoinsOn::facing_side;
  double join_width = base::kUnset;   ///< of each of those tabs, around the tube  [m]
  double join_length = base::kUnset;  ///< of each of them, along the tube  [m]
  Stick lower;
  Stick upper;
  JointSpec axle_joint = {.kind = JointKind::bushing, .axis = Axis::y};
  JointSpec frame_joint = {.kind = JointKind::bushing, .axis = Axis::y};
  double bolt_to_weld = base::kUnset;  ///< farthest of an eye's welds; unset = its outside size [m]
  BoltSpec bolt;                       ///< through each end
  EndWeldSpec end_weld;                ///< of its eyes
  TabSpec axle_tabs;                   ///< on the axle, for its bolts
  TabSpec frame_tabs;                  ///< on the frame, for its bolt
  double static_rating = base::kUnset;    ///< of each of its ball joints or rod ends  [N]
  double ultimate_rating = base::kUnset;  ///< [N]
  double axial_rating = base::kUnset;     ///< static, along the bolt of such a joint  [N]
  double joint_tilt = base::kUnset;       ///< most tilt of each of its joints  [rad]
  bool mirror = true;                     ///< the same arm on the other side
  bool shared_upper = false;              ///< the separate upper arm is not mirrored
  bool operator==(const Arm&) const = default;
};

[[nodiscard]] inline bool has_upper_arm(const Arm& arm) {
  return !arm.upper.material.id.empty();
}

[[nodiscard]] ArmLayout layout_of(const Arm& arm);

template <class Visitor>
void fields(Visitor& v, Arm& arm) {
  using enum Dimension;
  using enum Presence;
  v.point({"axle_lower", required, "bolt at the axle, of two the lower one"}, arm.axle_lower);
  v.point({"axle_upper", optional, "second bolt at the axle, of the upper arm if there is one",
           "one bolt"},
          arm.axle_upper);
  v.point({"frame", required, "joint at the frame"}, arm.frame);
  v.point({"upper_frame", optional, "the upper arm's own joint at the frame",
           "it joins the lower tube"},
          arm.upper_frame);
  v.quantity({"joins_at", optional, "where the upper arm joins, along the lower tube from its bolt",
              "it does not join the lower tube"},
             arm.joins_at, positive(length));
  constexpr std::array<Word<JoinsOn>, 2> kJoins = {
      Word<JoinsOn>{"the facing side", JoinsOn::facing_side},
      Word<JoinsOn>{"tabs on both sides", JoinsOn::tabs_on_sides}};
  v.choice({"joins_on", optional, "what of the lower tube the upper arm is welded to",
            "its weld is on the side that faces it"},
           arm.joins_on, kJoins);
  v.quantity({"join_width", optional, "each of those tabs, around the lower tube",
              "goes with tabs on both sides"},
             arm.join_width, positive(length));
  v.quantity({"join_length", optional, "each of those tabs, along the lower tube",
              "goes with tabs on both sides"},
             arm.join_length, positive(length));
  v.phrase({"lower", required, "lower tube or bar, with its steel"}, arm.lower);
  v.phrase({"upper", optional, "upper arm, with its steel", "an arm of one tube"}, arm.upper);
  v.phrase({"axle_joint", assumed, "joint at each axle bolt",
            "rubber bushings; common practice, no source"},
           arm.axle_joint);
  v.phrase({"frame_joint", assumed, "joint at the frame, of both arms",
            "rubber bushing; common practice, no source"},
           arm.frame_joint);
  v.quantity({"bolt_to_weld", optional, "how far from its bolt an eye's weld reaches",
              "the width of the part, twice that at a ball joint or rod end; proposal, no source"},
             arm.bolt_to_weld, positive(length));
  v.phrase({"bolt", optional, "bolt through each end: size, grade, how it is sheared",
            "its bolts are not checked"},
           arm.bolt);
  v.phrase({"end_weld", optional, "weld at each of its ends: fillet all round, fishmouth, rosettes",
            "those welds are not checked"},
           arm.end_weld);
  v.phrase(
      {"axle_tabs", optional, "tabs on the axle that its bolts go through", "they are not checked"},
      arm.axle_tabs);
  v.phrase({"frame_tabs", optional, "tabs on the frame that its bolt goes through",
            "they are not checked"},
           arm.frame_tabs);
  v.quantity({"static_rating", optional, "radial static rating of each ball joint or rod end",
              "their rating is not decided"},
             arm.static_rating, positive(force));
  v.quantity({"ultimate_rating", optional, "radial ultimate rating of each ball joint or rod end",
              "`static_rating` alone decides"},
             arm.ultimate_rating, positive(force));
  v.quantity({"axial_rating", optional, "static rating along the bolt of each such joint",
              "force along its bolt counts as force across it"},
             arm.axial_rating, positive(force));
  v.quantity({"joint_tilt", optional, "most each joint may tilt on its bolt, from its maker",
              "its tilt is shown, not judged"},
             arm.joint_tilt, positive(angle));
  v.flag({"mirror", assumed, "the same arm on the other side", "arms come in pairs"}, arm.mirror);
  v.flag({"shared_upper", optional, "one upper arm as its points lie, not one on each side"},
         arm.shared_upper);
}

}  // namespace parts
