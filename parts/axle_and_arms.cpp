#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "parts/builder.hpp"

namespace parts {
namespace {

fea::Vector3 mirrored(const fea::Vector3& at_g, double side) {
  return {at_g.x(), side * at_g.y(), at_g.z()};
}

/// How far the weld where the upper arm joins lies from the junction, along each of the two.  [m]
struct JunctionWeld {
  double on_lower;
  double on_upper;
};

JunctionWeld junction_weld(const Arm& arm, const fea::Vector3& lower_g,
                           const fea::Vector3& upper_g) {
  const double lower = half_outside(arm.lower.shape);
  const double upper = half_outside(arm.upper.shape);
  const double across = lower_g.normalized().cross(upper_g.normalized()).norm();
  const double acute = std::asin(std::min(across, 1.0));
  return {weld_reach(lower, upper, acute), weld_reach(upper, lower, acute)};
}

RunEnd arm_frame_end(Builder& builder, const std::string& part, const fea::Vector3& frame_g,
                     const fea::Vector3& along_g) {
  Assembly& out = builder.out();
  const fea::NodeId frame = builder.add_node(frame_g, part + " frame joint", "arm.frame");
  out.model.add(fea::Support{frame, {true, true, true, true, true, true}});
  out.held.push_back({part + " frame joint", frame});
  return {frame, fea::Vector3::Zero(),
          builder.connection(builder.design().arm->frame_joint, "arm frame bushings", along_g)};
}

/// One arm; `side` is +1 as the points are given, -1 for its mirror image.
void add_arm(Builder& builder, const std::string& part, double side) {
  const Arm& arm = *builder.design().arm;
  Assembly& out = builder.out();
  const fea::NodeId axle = *out.axle;
  const fea::Vector3 lower_g = mirrored(builder.point(arm.axle_lower, "arm.axle_lower"), side);
  const fea::Vector3 frame_g = mirrored(builder.point(arm.frame, "arm.frame"), side);
  const fea::Vector3 chord = frame_g - lower_g;
  if (!(chord.norm() > 1.0e-6)) {
    throw base::InputError("arm", "it has no length: axle bolt and frame joint are at one place");
  }
  const RunEnd frame_end = arm_frame_end(builder, part, frame_g, chord);
  const auto at_axle = [&](const fea::Vector3& at_g, const fea::Vector3& along) {
    return RunEnd{axle, at_g - out.model[axle].at_g,
                  builder.connection(arm.axle_joint, "arm axle bushings", along)};
  };
  RunSpec spec{.part = part, .name = "lower tube", .key = "arm", .stick = arm.lower};
  const auto finish = [&](std::size_t index) {
    out.pieces[index].column = true;
    out.pieces[index].spin_held = arm.axle_upper.empty() &&
                                  arm.axle_joint.kind == JointKind::ball &&
                                  arm.frame_joint.kind == JointKind::ball;
    return out.pieces[index];
  };
  const double axle_eye = eye_reach(arm.bolt_to_weld, arm.lower.shape, arm.axle_joint.kind);
  const double frame_eye = eye_reach(arm.bolt_to_weld, arm.lower.shape, arm.frame_joint.kind);
  if (arm.axle_upper.empty()) {
    spec.welds = {axle_eye, frame_eye};
    const Piece tube = finish(builder.add_run(spec, at_axle(lower_g, chord), {}, frame_end));
    bolt_end(out, tube, 0, "axle bolt", arm.bolt, arm.axle_joint);
    bolt_end(out, tube, 1, "frame bolt", arm.bolt, arm.frame_joint);
    out.chords.push_back({part, tube.beams.front().beam, tube.beams.back().beam});
    return;
  }
  if (!(arm.joins_at < chord.norm())) {
    throw base::InputError("arm.joins_at", "it is beyond the lower tube's end");
  }
  const fea::NodeId join = builder.add_node(lower_g + arm.joins_at * chord.normalized(),
                                            part + " junction", "arm.joins_at");
  const RunEnd junction{join, fea::Vector3::Zero(), {}};
  const fea::Vector3 upper_g = mirrored(builder.point(arm.axle_upper, "arm.axle_upper"), side);
  const fea::Vector3 upper_along = out.model[join].at_g - upper_g;
  const JunctionWeld weld = junction_weld(arm, chord, upper_along);
  spec.name = "lower tube ahead of the junction";
  spec.welds = {axle_eye, weld.on_lower};
  // The junction holds the tube up and down, but nothing holds it sideways between its joints.
  const auto finish_lower = [&](std::size_t index) {
    out.pieces[index].length = chord.norm();
    return finish(index);
  };
  const Piece ahead = finish_lower(builder.add_run(spec, at_axle(lower_g, chord), {}, junction));
  spec.name = "lower tube behind the junction";
  spec.welds = {weld.on_lower, frame_eye};
  const std::size_t behind_index = builder.add_run(spec, junction, {}, frame_end);
  out.pieces[behind_index].column_from = arm.joins_at;
  const Piece behind = finish_lower(behind_index);
  spec.name = "upper arm";
  spec.stick = arm.upper;
  spec.welds = {eye_reach(arm.bolt_to_weld, arm.upper.shape, arm.axle_joint.kind), weld.on_upper};
  const Piece upper = finish(builder.add_run(spec, at_axle(upper_g, upper_along), {}, junction));
  bolt_end(out, ahead, 0, "lower axle bolt", arm.bolt, arm.axle_joint);
  bolt_end(out, upper, 0, "upper axle bolt", arm.bolt, arm.axle_joint);
  bolt_end(out, behind, 1, "frame bolt", arm.bolt, arm.frame_joint);
  out.chords.push_back({part, ahead.beams.front().beam, behind.beams.back().beam});
}

}  // namespace

void add_axle(Builder& builder) {
  if (!builder.design().axle) return;
  const Axle& axle = *builder.design().axle;
  Assembly& out = builder.out();
  const double hub = to_vehicle(*builder.design().vehicle).tire_radius;
  const fea::NodeId node = builder.add_node({0.0, 0.0, hub}, "axle", "axle");
  out.axle = node;
  out.points.push_back({"axle", node});
  out.held.push_back({"axle, by coils and bump stops", node});
  const double seat = (std::isnan(axle.seat_height) ? hub : axle.seat_height) - hub;
  for (const double side : {1.0, -1.0}) {
    const fea::Vector3 offset(0.0, side * 0.5 * axle.coil_spacing, seat);
    fea::Spring coil{
        .a = node, .b = {}, .offset_a_g = offset, .name = side > 0.0 ? "left coil" : "right coil"};
    coil.stiffness(2, 2) = axle.coil_rate;
    out.model.add(coil);
    out.stops.push_back({node, offset, axle.bump_travel, axle.stop_rate,
                         side > 0.0 ? "left bump stop" : "right bump stop"});
  }
}

void add_arms(Builder& builder) {
  if (!builder.design().arm) return;
  const Arm& arm = *builder.design().arm;
  if (!builder.out().axle) {
    throw base::InputError("arm", "an arm needs an `axle:` to hold; add one");
  }
  const double y = builder.point(arm.axle_lower, "arm.axle_lower").y();
  const std::string given = y >= 0.0 ? "left" : "right";
  const std::string other = y >= 0.0 ? "right" : "left";
  add_arm(builder, arm.mirror ? "arm, " + given : "arm", 1.0);
  if (arm.mirror) add_arm(builder, "arm, " + other, -1.0);
}

}  // namespace parts
