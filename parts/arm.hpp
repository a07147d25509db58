#pragma once

#include <string>

#include "parts/bolt_spec.hpp"
#include "parts/field.hpp"
#include "parts/joint_spec.hpp"
#include "parts/stick.hpp"

namespace parts {

/// A radius arm: a lower tube from the axle to the frame, and an upper arm from a second bolt at
/// the axle that joins the lower tube part-way. Without `axle_upper` it is a single-tube arm.
struct Arm {
  std::string axle_lower;          ///< point: lower bolt at the axle
  std::string axle_upper;          ///< point: upper bolt at the axle; empty = none
  std::string frame;               ///< point: joint at the frame
  double joins_at = base::kUnset;  ///< along the lower tube, from the axle bolt  [m]
  Stick lower;
  Stick upper;
  JointSpec axle_joint = {.kind = JointKind::bushing, .axis = Axis::y};
  JointSpec frame_joint = {.kind = JointKind::bushing, .axis = Axis::y};
  double bolt_to_weld = base::kUnset;  ///< farthest of an eye's welds; unset = its outside size [m]
  BoltSpec bolt;                       ///< through each end
  bool mirror = true;                  ///< the same arm on the other side
  bool operator==(const Arm&) const = default;
};

template <class Visitor>
void fields(Visitor& v, Arm& arm) {
  using enum Dimension;
  using enum Presence;
  v.point({"axle_lower", required, "lower bolt at the axle"}, arm.axle_lower);
  v.point({"axle_upper", optional, "upper bolt at the axle", "an arm of one tube"}, arm.axle_upper);
  v.point({"frame", required, "joint at the frame"}, arm.frame);
  v.quantity({"joins_at", optional, "where the upper arm joins, along the lower tube from its bolt",
              "an arm of one tube"},
             arm.joins_at, positive(length));
  v.phrase({"lower", required, "lower tube or bar, with its steel"}, arm.lower);
  v.phrase({"upper", optional, "upper arm, with its steel", "an arm of one tube"}, arm.upper);
  v.phrase({"axle_joint", assumed, "joint at each axle bolt",
            "rubber bushings; common practice, no source"},
           arm.axle_joint);
  v.phrase(
      {"frame_joint", assumed, "joint at the frame", "rubber bushing; common practice, no source"},
      arm.frame_joint);
  v.quantity({"bolt_to_weld", optional, "how far from its bolt an eye's weld reaches",
              "the width of the part, twice that at a ball joint or rod end; proposal, no source"},
             arm.bolt_to_weld, positive(length));
  v.phrase({"bolt", optional, "bolt through each end: size, grade, how it is sheared",
            "its bolts are not checked"},
           arm.bolt);
  v.flag({"mirror", assumed, "the same arm on the other side", "arms come in pairs"}, arm.mirror);
}

}  // namespace parts
