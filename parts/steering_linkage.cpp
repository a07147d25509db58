#include <cmath>

#include <Eigen/Geometry>

#include "base/input_error.hpp"
#include "parts/builder.hpp"

namespace parts {
namespace {

// All but rigid beside the bars, and known to nobody: so large that it makes no difference.
constexpr double kKingpinRate = 1.0e9;      // [N/m]
constexpr double kKingpinTurnRate = 1.0e8;  // [N m/rad]
constexpr double kGearBoltRate = 1.0e9;     // [N/m]

fea::Vector3 vector_of(const std::array<double, 3>& a) {
  return {a[0], a[1], a[2]};
}

/// A knuckle, free about its kingpin, which it holds like a door its hinge.
fea::NodeId add_knuckle(Builder& builder, double side) {
  Assembly& out = builder.out();
  const std::string name = side > 0.0 ? "left kingpin" : "right kingpin";
  const fea::Vector3 at_g = vector_of(kingpin(builder.design(), side));
  const fea::NodeId node = builder.add_node(at_g, name, "steering");
  const fea::NodeId axle = axle_near(out, at_g.y());
  fea::Spring bearing{
      .a = axle, .b = node, .offset_a_g = at_g - out.model[axle].at_g, .name = name};
  for (int i = 0; i < 3; ++i) bearing.stiffness(i, i) = kKingpinRate;
  for (int i = 3; i < 5; ++i) bearing.stiffness(i, i) = kKingpinTurnRate;
  out.model.add(bearing);
  out.points.push_back({name, node});
  return node;
}

struct BarEnd {
  fea::NodeId node;
  fea::Vector3 at_g;
  std::string where;
};

void add_bar(Builder& builder, const std::string& part, const Stick& stick, const BarEnd& from,
             const BarEnd& to) {
  const Steering& steering = *builder.design().steering;
  Assembly& out = builder.out();
  const fea::Vector3 along = to.at_g - from.at_g;
  if (!(along.norm() > 1.0e-6)) {
    throw base::InputError("steering",
                           "the " + part + " has no length: both balls are at one place");
  }
  const auto end = [&](const BarEnd& e) {
    return RunEnd{e.node, e.at_g - out.model[e.node].at_g,
                  builder.connection(steering.ends.joint, "steering bushings", along)};
  };
  const double eye = eye_reach(base::kUnset, stick.shape, steering.ends.joint.kind);
  const RunSpec spec{.part = part,
                     .name = {},
                     .key = "steering",
                     .stick = stick,
                     .welded = steering.ends.welded,
                     .welds = {.start = eye, .end = eye},
                     .duty = checks::Duty::steering,
                     .z_toward_g = {}};
  const std::size_t index = builder.add_run(spec, end(from), {}, end(to));
  Piece& piece = out.pieces[index];
  piece.column = true;
  piece.spin_held = steering.ends.joint.kind == JointKind::ball;
  out.chords.push_back({part, piece.beams.front().beam, piece.beams.back().beam});
  JointSpec upright = steering.ends.joint;
  if (upright.kind == JointKind::ball) upright.axis = Axis::z;
  watch_end(out, piece, 0, from.where, upright, steering.joint_tilt);
  watch_end(out, piece, 1, to.where, upright, steering.joint_tilt);
  if (!piece.spin_held) return;
  RatedJoint like;
  like.static_rating = steering.static_rating;
  like.ultimate_rating = steering.ultimate_rating;
  like.axial_rating = steering.axial_rating;
  like.bolt_g = fea::Vector3::UnitZ();
  rate_end(out, piece, 0, from.where, like);
  rate_end(out, piece, 1, to.where, like);
}

/// As one piece with its rail.
void bolt_to_rail(Assembly& out, fea::NodeId node, fea::NodeId rail) {
  fea::Spring mount{.a = node, .b = rail, .name = "steering gear"};
  mount.offset_b_g = out.model[node].at_g - out.model[rail].at_g;
  for (int i = 0; i < 3; ++i) mount.stiffness(i, i) = kGearBoltRate;
  for (int i = 3; i < 6; ++i) mount.stiffness(i, i) = kKingpinTurnRate;
  out.model.add(mount);
}

/// Holds what the gear's case carries: its bolts, alike and stiff beside all else, so that what
/// each carries follows from statics about their middle alone (the elastic method for a bolt group
/// that is pulled off and sheared, with its neutral axis through the middle: AISC Manual part 7,
/// from memory); without them it is held. With a frame they ride on its rail.
void hold_gear(Builder& builder, fea::NodeId node, const std::string& name) {
  const Steering& steering = *builder.design().steering;
  Assembly& out = builder.out();
  const std::optional<fea::NodeId> rail =
      out.frame ? out.frame->gear : std::optional<fea::NodeId>();
  if (!rail) out.held.push_back({name, node});
  if (!steering.gear_bolts.given()) {
    if (rail) {
      bolt_to_rail(out, node, *rail);
    } else {
      out.model.add(fea::Support{node, {true, true, true, true, true, true}});
    }
    return;
  }
  const JointSpec along_y{.kind = JointKind::pin, .axis = Axis::y};
  for (const std::string& point : steering.gear_bolts_at) {
    const fea::Vector3 at_g = builder.point(point, "steering.gear_bolts_at");
    fea::Spring bolt{.a = node, .offset_a_g = at_g - out.model[node].at_g, .name = point};
    if (rail) {
      bolt.b = *rail;
      bolt.offset_b_g = at_g - out.model[*rail].at_g;
    }
    for (int i = 0; i < 3; ++i) bolt.stiffness(i, i) = kGearBoltRate;
    const fea::SpringId spring = out.model.add(bolt);
    bolt_spring(out, spring, "steering_gear", point, steering.gear_bolts, along_y);
    out.bolts.back().bolt.double_shear = false;
    out.bolts.back().in_group_g = at_g;
    out.bolts.back().one_plane = "one plane of shear: the gear lies against the rail";
  }
}

/// The pitman arm as a bar that its sector shaft holds fast: the drag link bends it, and twists it
/// where the ball stands off.
void add_pitman_arm(Builder& builder, fea::NodeId ball, const fea::Vector3& drag_link_g) {
  const Steering& steering = *builder.design().steering;
  Assembly& out = builder.out();
  const fea::Vector3 up = fea::Vector3::UnitZ();
  const fea::Vector3 to_shaft = up.cross(drag_link_g).normalized();
  const double drop = std::isnan(steering.pitman_drop) ? 0.0 : steering.pitman_drop;
  const fea::Vector3 root_g =
      out.model[ball].at_g + drop * up + builder.design().vehicle->pitman_arm * to_shaft;
  const fea::NodeId root = builder.add_node(root_g, "pitman shaft", "steering.pitman_arm");
  hold_gear(builder, root, "pitman shaft");
  RunSpec spec{
      .part = "pitman_arm", .name = {}, .key = "steering.pitman_arm", .stick = steering.pitman_arm};
  spec.welded = false;
  spec.duty = checks::Duty::steering;
  spec.pieces = 2;
  builder.add_run(spec, {ball, drop * up, {}}, {}, {root, fea::Vector3::Zero(), {}});
}

}  // namespace

void add_steering(Builder& builder) {
  if (!builder.design().steering) return;
  const Steering& steering = *builder.design().steering;
  Assembly& out = builder.out();
  if (!out.axle) {
    throw base::InputError("steering", "it needs an `axle:` whose knuckles it turns; add one");
  }
  const fea::NodeId left = add_knuckle(builder, 1.0);
  const fea::NodeId right = add_knuckle(builder, -1.0);
  out.knuckles = {left, right};

  const fea::Vector3 ball_g = builder.point(steering.tie_rod_ball, "steering.tie_rod_ball");
  const fea::Vector3 other_g(ball_g.x(), -ball_g.y(), ball_g.z());
  const bool given_left = ball_g.y() >= 0.0;
  add_bar(builder, "tie_rod", steering.tie_rod, {left, given_left ? ball_g : other_g, "left ball"},
          {right, given_left ? other_g : ball_g, "right ball"});

  const fea::Vector3 pitman_g = builder.point(steering.pitman_ball, "steering.pitman_ball");
  const fea::NodeId pitman = builder.add_node(pitman_g, "pitman arm ball", "steering.pitman_ball");
  const fea::Vector3 knuckle_g = builder.point(steering.knuckle_ball, "steering.knuckle_ball");
  if (has_pitman_arm(steering)) {
    add_pitman_arm(builder, pitman, knuckle_g - pitman_g);
  } else {
    hold_gear(builder, pitman, "pitman arm ball");
  }
  add_bar(builder, "drag_link", steering.drag_link, {pitman, pitman_g, "pitman arm ball"},
          {drag_link_side(builder.design()) > 0.0 ? left : right, knuckle_g, "knuckle ball"});
}

}  // namespace parts
