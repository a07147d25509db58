#include "parts/arm.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "parts/bracket_weld.hpp"
#include "parts/builder.hpp"

namespace parts {
namespace {

// Of a bolt in an end piece, where nothing else gives: all but rigid beside the tube.
constexpr double kBoltRate = 1.0e9;      // [N/m]
constexpr double kBoltTurnRate = 1.0e8;  // [N m/rad]

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

/// A joint as a spring between two nodes, which can stand at the end of a beam that has several.
fea::Spring spring_of(const std::optional<fea::Joint>& joint) {
  const fea::Joint held = joint.value_or(fea::Joint{});
  fea::Spring spring{.a = {}, .axes_g = held.axes_g};
  for (int i = 0; i < 6; ++i) {
    const double rate = held.stiffness[static_cast<std::size_t>(i)];
    const double stiff = i < 3 ? kBoltRate : kBoltTurnRate;
    spring.stiffness(i, i) = std::isinf(rate) ? stiff : rate;
  }
  return spring;
}

/// One arm; `side` is +1 as the points are given, -1 for its mirror image.
class ArmBuilder {
 public:
  ArmBuilder(Builder& builder, std::string part, double side)
      : builder_(builder),
        arm_(*builder.design().arm),
        out_(builder.out()),
        part_(std::move(part)),
        side_(side) {}

  void add_lower() {
    lower_g_ = place(arm_.axle_lower, "arm.axle_lower");
    frame_g_ = place(arm_.frame, "arm.frame");
    require_length(lower_g_, frame_g_, "axle bolt and frame joint are at one place");
    switch (layout_of(arm_)) {
      case ArmLayout::one_bolt:
      case ArmLayout::separate:
        add_tube("lower tube", arm_.lower, {lower_g_, frame_g_, " frame joint"});
        break;
      case ArmLayout::two_bolts:
        add_tube_on_two_bolts();
        break;
      case ArmLayout::joined:
        add_joined();
    }
  }

  /// The separate upper arm; `joint` names its joint at the frame, behind the part's name.
  void add_upper(const std::string& joint) {
    const fea::Vector3 axle_g = place(arm_.axle_upper, "arm.axle_upper");
    const fea::Vector3 frame_g = place(arm_.upper_frame, "arm.upper_frame");
    require_length(axle_g, frame_g, "the upper arm's two joints are at one place");
    add_tube("upper arm", arm_.upper, {axle_g, frame_g, joint});
  }

 private:
  struct Line {
    fea::Vector3 axle_g;
    fea::Vector3 frame_g;
    std::string joint;  ///< what its joint at the frame is called, behind the part's name
  };

  [[nodiscard]] fea::Vector3 place(const std::string& name, const std::string& key) const {
    const fea::Vector3 at_g = builder_.point(name, key);
    return {at_g.x(), side_ * at_g.y(), at_g.z()};
  }

  static void require_length(const fea::Vector3& from, const fea::Vector3& to,
                             const std::string& why) {
    if ((to - from).norm() > 1.0e-6) return;
    throw base::InputError("arm", "it has no length: " + why);
  }

  [[nodiscard]] RunEnd at_axle(const fea::Vector3& at_g, const fea::Vector3& along_g) const {
    const fea::NodeId axle = axle_near(out_, at_g.y());
    return {axle, at_g - out_.model[axle].at_g,
            builder_.connection(arm_.axle_joint, "arm axle bushings", along_g)};
  }

  /// The place on the cross member that carries this arm; nothing when none does.
  [[nodiscard]] std::optional<fea::NodeId> carried_at(double y) const {
    if (!out_.frame) return std::nullopt;
    std::optional<fea::NodeId> nearest;
    for (const fea::NodeId node : out_.frame->arm_joints) {
      const double off = std::abs(out_.model[node].at_g.y() - y);
      if (!nearest || off < std::abs(out_.model[*nearest].at_g.y() - y)) nearest = node;
    }
    return nearest;
  }

  RunEnd at_frame(const std::string& name, const fea::Vector3& at_g, const fea::Vector3& along_g) {
    if (const auto carried = carried_at(at_g.y())) {
      return {*carried, at_g - out_.model[*carried].at_g,
              builder_.connection(arm_.frame_joint, "arm frame bushings", along_g)};
    }
    const fea::NodeId node = builder_.add_node(at_g, name, "arm.frame");
    out_.model.add(fea::Support{node, {true, true, true, true, true, true}});
    out_.held.push_back({name, node});
    return {node, fea::Vector3::Zero(),
            builder_.connection(arm_.frame_joint, "arm frame bushings", along_g)};
  }

  [[nodiscard]] double eye(const Stick& stick, const JointSpec& joint) const {
    return eye_reach(arm_.bolt_to_weld, stick.shape, joint.kind);
  }

  [[nodiscard]] bool on_balls() const {
    return arm_.axle_joint.kind == JointKind::ball && arm_.frame_joint.kind == JointKind::ball;
  }

  /// One straight bar from one bolt at the axle to the frame.
  void add_tube(const std::string& name, const Stick& stick, const Line& line) {
    const fea::Vector3 along_g = line.frame_g - line.axle_g;
    RunSpec spec{.part = part_, .name = name, .key = "arm", .stick = stick};
    spec.welds = {eye(stick, arm_.axle_joint), eye(stick, arm_.frame_joint)};
    const RunEnd frame = at_frame(part_ + line.joint, line.frame_g, along_g);
    const std::size_t index = builder_.add_run(spec, at_axle(line.axle_g, along_g), {}, frame);
    out_.pieces[index].spin_held = on_balls();
    finish_tube(index);
    rate_axle_end(index, name + ", axle end");
    rate_frame_end(index, name + ", frame end");
    axle_bolt(index, "axle bolt");
    frame_bolt(index);
  }

  void axle_bolt(std::size_t index, const std::string& name) {
    const std::size_t before = out_.bolts.size();
    watch(out_.pieces[index], 0, name, arm_.axle_joint);
    bolt_end(out_, out_.pieces[index], 0, name, arm_.bolt, arm_.axle_joint);
    tab_end(out_, before, out_.pieces[index].duty, arm_.axle_tabs, "tabs at the " + name,
            filler_of(builder_.design()));
    weld_eye(index, 0, arm_.axle_joint, "tube at the " + name);
  }

  void frame_bolt(std::size_t index) {
    const std::size_t before = out_.bolts.size();
    watch(out_.pieces[index], 1, "frame bolt", arm_.frame_joint);
    bolt_end(out_, out_.pieces[index], 1, "frame bolt", arm_.bolt, arm_.frame_joint);
    tab_end(out_, before, out_.pieces[index].duty, arm_.frame_tabs, "tabs at the frame bolt",
            filler_of(builder_.design()));
    weld_eye(index, 1, arm_.frame_joint, "tube at the frame bolt");
  }

  void weld_eye(std::size_t index, int end, const JointSpec& joint, const std::string& where) {
    const Piece& tube = out_.pieces[index];
    const sections::Shape& shape = end == 0 ? tube.beams.front().at_a : tube.beams.back().at_b;
    weld_end(out_, tube, end, eye_reach(arm_.bolt_to_weld, shape, joint.kind), arm_.end_weld, where,
             filler_of(builder_.design()));
  }

  void watch(const Piece& piece, int end, const std::string& where, const JointSpec& joint) {
    const std::string of_piece = arm_has_two_tubes() ? piece.name + ", " + where : where;
    watch_end(out_, piece, end, of_piece, joint, arm_.joint_tilt);
  }
  [[nodiscard]] bool arm_has_two_tubes() const { return layout_of(arm_) == ArmLayout::separate; }

  void finish_tube(std::size_t index) {
    Piece& tube = out_.pieces[index];
    tube.column = true;
    tube.reach_assumed = std::isnan(arm_.bolt_to_weld);
    out_.chords.push_back({tube.part, tube.beams.front().beam, tube.beams.back().beam});
  }

  /// A tube whose end piece, taken as rigid, sits on both bolts. It begins on the line from the
  /// middle between them to the frame, beside the bolt nearer to the frame.
  void add_tube_on_two_bolts() {
    const fea::Vector3 upper_g = place(arm_.axle_upper, "arm.axle_upper");
    const fea::Vector3 middle_g = 0.5 * (lower_g_ + upper_g);
    require_length(middle_g, frame_g_, "its frame joint is in the middle of its axle bolts");
    const fea::Vector3 along_g = (frame_g_ - middle_g).normalized();
    const fea::Vector3 start_g =
        middle_g + std::abs(0.5 * (upper_g - lower_g_).dot(along_g)) * along_g;
    const fea::NodeId start = builder_.add_node(start_g, part_ + " end piece", "arm.axle_upper");
    add_bolt(start, lower_g_, along_g, part_ + " lower bolt");
    add_bolt(start, upper_g, along_g, part_ + " upper bolt");
    RunSpec spec{.part = part_, .name = "lower tube", .key = "arm", .stick = arm_.lower};
    spec.welds = {eye(arm_.lower, arm_.axle_joint), eye(arm_.lower, arm_.frame_joint)};
    const RunEnd frame = at_frame(part_ + " frame joint", frame_g_, along_g);
    const std::size_t index = builder_.add_run(spec, {start, fea::Vector3::Zero(), {}}, {}, frame);
    finish_tube(index);
    rate_frame_end(index, "frame end");
    frame_bolt(index);
  }

  void add_bolt(fea::NodeId start, const fea::Vector3& at_g, const fea::Vector3& along_g,
                const std::string& name) {
    const RunEnd end = at_axle(at_g, along_g);
    fea::Spring bolt = spring_of(end.joint);
    bolt.a = end.node;
    bolt.b = start;
    bolt.offset_a_g = end.offset_g;
    bolt.offset_b_g = at_g - out_.model[start].at_g;
    bolt.name = name;
    const fea::SpringId spring = out_.model.add(bolt);
    TurningJoint watched{.part = part_, .where = bolt.name.substr(part_.size() + 1)};
    watched.spring = spring;
    watched.bar_g = along_g;
    watched.kind = arm_.axle_joint.kind;
    watched.bolt_g = fea::Vector3::Unit(static_cast<int>(arm_.axle_joint.axis));
    watched.most_tilt = arm_.joint_tilt;
    const bool turns = watched.kind == JointKind::bushing || watched.kind == JointKind::ball;
    if (turns) out_.joints.push_back(std::move(watched));
    const std::size_t before = out_.bolts.size();
    const std::string where = name.substr(part_.size() + 1);
    bolt_spring(out_, spring, part_, where, arm_.bolt, arm_.axle_joint);
    tab_end(out_, before, checks::Duty::ordinary, arm_.axle_tabs, "tabs at the " + where,
            filler_of(builder_.design()));
    if (arm_.axle_joint.kind != JointKind::ball) return;
    RatedJoint joint = rated(name);
    joint.spring = spring;
    out_.rated_joints.push_back(std::move(joint));
  }

  void add_joined() {
    const fea::Vector3 chord = frame_g_ - lower_g_;
    if (!(arm_.joins_at < chord.norm())) {
      throw base::InputError("arm.joins_at", "it is beyond the lower tube's end");
    }
    const RunEnd frame = at_frame(part_ + " frame joint", frame_g_, chord);
    const fea::NodeId join = builder_.add_node(lower_g_ + arm_.joins_at * chord.normalized(),
                                               part_ + " junction", "arm.joins_at");
    const RunEnd junction{join, fea::Vector3::Zero(), {}};
    const fea::Vector3 upper_g = place(arm_.axle_upper, "arm.axle_upper");
    const fea::Vector3 upper_along = out_.model[join].at_g - upper_g;
    const JunctionWeld weld = junction_weld(arm_, chord, upper_along);
    RunSpec spec{.part = part_,
                 .name = "lower tube ahead of the junction",
                 .key = "arm",
                 .stick = arm_.lower};
    // The lower tube goes through: the weld of the upper arm is on its side.
    spec.welds = {eye(arm_.lower, arm_.axle_joint), {}};
    spec.side_welds = join_welds(arm_.joins_at, weld.on_lower, chord, upper_along);
    const std::size_t ahead =
        finish_lower(builder_.add_run(spec, at_axle(lower_g_, chord), {}, junction));
    spec.name = "lower tube behind the junction";
    spec.welds = {{}, eye(arm_.lower, arm_.frame_joint)};
    spec.side_welds = join_welds(0.0, weld.on_lower, chord, upper_along);
    const std::size_t behind = finish_lower(builder_.add_run(spec, junction, {}, frame));
    out_.pieces[behind].column_from = arm_.joins_at;
    spec.name = "upper arm";
    spec.stick = arm_.upper;
    spec.welds = {eye(arm_.upper, arm_.axle_joint), weld.on_upper};
    spec.side_welds.clear();
    const std::size_t upper = builder_.add_run(spec, at_axle(upper_g, upper_along), {}, junction);
    out_.pieces[upper].column = true;
    rate_axle_end(ahead, "lower bolt");
    rate_axle_end(upper, "upper bolt");
    rate_frame_end(behind, "frame end");
    axle_bolt(ahead, "lower axle bolt");
    axle_bolt(upper, "upper axle bolt");
    frame_bolt(behind);
    out_.chords.push_back(
        {part_, out_.pieces[ahead].beams.front().beam, out_.pieces[behind].beams.back().beam});
  }

  /// Where the upper arm is welded to the lower tube.
  /// @param at  along the piece that has the junction at one end  [m]
  [[nodiscard]] std::vector<SideWeldOnRun> join_welds(double at, double reach,
                                                      const fea::Vector3& lower_g,
                                                      const fea::Vector3& upper_g) const {
    if (arm_.joins_on == JoinsOn::facing_side) {
      return {{at, reach, 2.0 * half_outside(arm_.upper.shape), -upper_g}};
    }
    const fea::Vector3 side_g = lower_g.cross(upper_g);
    const double half_length = 0.5 * arm_.join_length;
    return {{at, half_length, arm_.join_width, side_g},
            {at, half_length, arm_.join_width, -side_g}};
  }

  [[nodiscard]] RatedJoint rated(const std::string& where) const {
    RatedJoint joint{.part = part_, .where = where, .beam = {}};
    joint.static_rating = arm_.static_rating;
    joint.ultimate_rating = arm_.ultimate_rating;
    joint.axial_rating = arm_.axial_rating;
    joint.reversing = false;
    return joint;
  }

  void rate_axle_end(std::size_t index, const std::string& where) {
    if (arm_.axle_joint.kind == JointKind::ball) rate(index, where, 0, arm_.axle_joint.axis);
  }
  void rate_frame_end(std::size_t index, const std::string& where) {
    if (arm_.frame_joint.kind == JointKind::ball) rate(index, where, 1, arm_.frame_joint.axis);
  }
  void rate(std::size_t index, const std::string& where, int end, Axis bolt) {
    const Piece& piece = out_.pieces[index];
    RatedJoint joint = rated(where);
    joint.bolt_g = fea::Vector3::Unit(static_cast<int>(bolt));
    joint.beam = end == 0 ? piece.beams.front() : piece.beams.back();
    joint.end = end;
    out_.rated_joints.push_back(std::move(joint));
  }

  /// The junction holds the tube up and down, but nothing holds it sideways between its joints.
  std::size_t finish_lower(std::size_t index) {
    out_.pieces[index].length = (frame_g_ - lower_g_).norm();
    out_.pieces[index].column = true;
    out_.pieces[index].reach_assumed = std::isnan(arm_.bolt_to_weld);
    return index;
  }

  Builder& builder_;
  const Arm& arm_;
  Assembly& out_;
  std::string part_;
  double side_;
  fea::Vector3 lower_g_ = fea::Vector3::Zero();
  fea::Vector3 frame_g_ = fea::Vector3::Zero();
};

}  // namespace

ArmLayout layout_of(const Arm& arm) {
  if (arm.axle_upper.empty()) return ArmLayout::one_bolt;
  if (!has_upper_arm(arm)) return ArmLayout::two_bolts;
  return arm.upper_frame.empty() ? ArmLayout::joined : ArmLayout::separate;
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
  const bool separate = layout_of(arm) == ArmLayout::separate;
  const auto add_side = [&](const std::string& part, double side) {
    ArmBuilder one(builder, part, side);
    one.add_lower();
    if (separate && !arm.shared_upper) one.add_upper(" upper frame joint");
  };
  add_side(arm.mirror ? "arm, " + given : "arm", 1.0);
  if (arm.mirror) add_side("arm, " + other, -1.0);
  if (separate && arm.shared_upper)
    ArmBuilder(builder, "arm, upper", 1.0).add_upper(" frame joint");
  if (layout_of(arm) == ArmLayout::two_bolts) {
    builder.out().assumed.emplace_back(
        "arm: the end piece that sits on both axle bolts is rigid and not checked; its tube begins "
        "beside the bolt nearer to the frame");
  }
}

}  // namespace parts
