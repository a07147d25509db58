#include "parts/frame.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "checks/bending_strength.hpp"
#include "parts/builder.hpp"
#include "parts/rail_root.hpp"
#include "parts/warped_twist.hpp"

namespace parts {
namespace {

constexpr double kSameStation = 1.0e-6;  // [m]
constexpr double kStiff = 1.0e10;        // [N/m], all but rigid beside a rail
constexpr double kStiffTurn = 2.0e9;     // [N m/rad]
constexpr double kOneOpenWall = 15.0e3;  // [N m/rad], one wall of an open rail; proposal, no source

/// Where the frame stands.
struct FramePlace {
  fea::Vector3 at_bolt_g;  ///< center of the bracket's rail, over the bolt
  double inward_y;         ///< toward the other rail: -1 or +1
};

/// A cross member along the rails, with what it carries between them.
struct CrossMember {
  double at;  ///< ahead of the bolt  [m]
  Stick stick;
  std::vector<double> carries_y;  ///< across the truck; from the bracket's rail on  [m]
};

bool same_place(double a, double b) {
  return std::abs(a - b) < kSameStation;
}

/// What the twist of an open rail is, about the bracket, over that by St. Venant alone: warping is
/// free or held at the cross members next to it.
double warping_share(const Design& design, const std::vector<CrossMember>& all, bool held) {
  Bracket between = *design.bracket;
  between.cross_member = {};
  between.cross_member_ahead = between.cross_member_behind = base::kUnset;
  for (const CrossMember& one : all) {
    const double at = std::abs(one.at);
    if (at < kSameStation) continue;
    double& nearest = one.at > 0.0 ? between.cross_member_ahead : between.cross_member_behind;
    if (!(nearest <= at)) nearest = at;
  }
  const sections::Material& steel = design.bracket->rail_steel.material;
  const double torsion =
      steel.shear_modulus() * sections::area_props(rail_stick(design).shape, steel.poisson).torsion;
  const double by_saint_venant =
      torsion * (1.0 / between.cross_member_ahead + 1.0 / between.cross_member_behind);
  return open_rail_root(between, held) / by_saint_venant;
}

/// Over St. Venant's alone: how stiffly a channel twists between ends that hold its warping.
double held_ends_share(const sections::Channel& channel, const sections::Material& steel,
                       double length) {
  const double p = 0.5 * length / warping_length(channel, steel);
  return 1.0 / (1.0 - std::tanh(p) / p);
}

/// The middle of what bolts the steering gear to a rail; its pitman arm's ball where that is not
/// known. The design has steering.
fea::Vector3 middle_of_gear(const Builder& builder) {
  const Steering& steering = *builder.design().steering;
  if (steering.gear_bolts_at.empty()) {
    return builder.point(steering.pitman_ball, "steering.pitman_ball");
  }
  fea::Vector3 sum = fea::Vector3::Zero();
  for (const std::string& name : steering.gear_bolts_at) {
    sum += builder.point(name, "steering.gear_bolts_at");
  }
  return sum / static_cast<double>(steering.gear_bolts_at.size());
}

class FrameBuilder {
 public:
  FrameBuilder(Builder& builder, FramePlace place)
      : builder_(builder),
        design_(builder.design()),
        frame_(*builder.design().frame),
        out_(builder.out()),
        place_(std::move(place)) {}

  void add() {
    for (const double at : frame_.cross_members_at) {
      cross_members_.push_back({at, frame_.cross_member, {}});
    }
    if (design_.arm && is_given(frame_.arm_cross_member)) cross_members_.push_back(arms_own());
    find_gear();
    find_stations();
    const bool left = place_.inward_y < 0.0;
    const std::vector<fea::NodeId> near = add_rail(left ? "left rail" : "right rail", 0.0);
    const std::vector<fea::NodeId> far =
        add_rail(left ? "right rail" : "left rail", frame_.rails_apart);
    out_.frame = FrameNodes{near[index_of(0.0)], far[index_of(0.0)], {}, {}};
    if (gear_) out_.frame->gear = (gear_on_near_ ? near : far)[index_of(*gear_)];
    for (std::size_t i = 0; i < cross_members_.size(); ++i) {
      const std::size_t at = index_of(cross_members_[i].at);
      add_cross_member(cross_members_[i], near[at], far[at],
                       cross_members_.size() > 1 ? fmt::format("cross member {}", i + 1)
                                                 : std::string("cross member"));
    }
  }

 private:
  static bool is_given(const Stick& stick) { return !stick.material.id.empty(); }

  [[nodiscard]] fea::Vector3 at_g(double along, double across) const {
    return place_.at_bolt_g + fea::Vector3(along, place_.inward_y * across, 0.0);
  }

  /// At the arms' frame joints, and where it carries them.
  [[nodiscard]] CrossMember arms_own() const {
    const Arm& arm = *design_.arm;
    const fea::Vector3 joint = builder_.point(arm.frame, "arm.frame");
    CrossMember out{joint.x() - place_.at_bolt_g.x(), frame_.arm_cross_member, {}};
    for (const double side : {1.0, -1.0}) {
      if (side < 0.0 && !arm.mirror) break;
      const double across = place_.inward_y * (side * joint.y() - place_.at_bolt_g.y());
      if (!(across > kSameStation) || !(across < frame_.rails_apart - kSameStation)) {
        throw base::InputError("frame.arm_cross_member",
                               "the arms' frame joints lie on the center line of a rail or outside "
                               "of it, and a cross member runs between the rails; leave it out, or "
                               "mend the points");
      }
      out.carries_y.push_back(across);
    }
    std::sort(out.carries_y.begin(), out.carries_y.end());
    return out;
  }

  /// Where a steering gear is bolted on, where the rails reach that far.
  void find_gear() {
    if (!design_.steering) return;
    const fea::Vector3 from_bolt = middle_of_gear(builder_) - place_.at_bolt_g;
    const auto [first, last] = ends_of_rails();
    if (from_bolt.x() < first || from_bolt.x() > last) {
      throw base::InputError(
          "steering",
          "the steering gear lies beyond the ends of the rails that `frame` gives; add a place "
          "past it to `frame.held_at` or `frame.cross_members_at`, or mend its points");
    }
    gear_ = from_bolt.x();
    gear_on_near_ = place_.inward_y * from_bolt.y() < 0.5 * frame_.rails_apart;
  }

  [[nodiscard]] std::pair<double, double> ends_of_rails() const {
    double first = 0.0;
    double last = 0.0;
    const auto reach = [&](double at) {
      first = std::min(first, at);
      last = std::max(last, at);
    };
    for (const CrossMember& one : cross_members_) reach(one.at);
    for (const double at : frame_.held_at) reach(at);
    return {first, last};
  }

  void find_stations() {
    stations_ = {0.0};
    if (gear_) stations_.push_back(*gear_);
    for (const CrossMember& one : cross_members_) stations_.push_back(one.at);
    stations_.insert(stations_.end(), frame_.held_at.begin(), frame_.held_at.end());
    std::sort(stations_.begin(), stations_.end());
    stations_.erase(std::unique(stations_.begin(), stations_.end(), same_place), stations_.end());
  }

  [[nodiscard]] std::size_t index_of(double at) const {
    const auto found = std::find_if(stations_.begin(), stations_.end(),
                                    [&](double station) { return same_place(station, at); });
    return static_cast<std::size_t>(found - stations_.begin());
  }

  /// One rail, from its rear end to its front one; a channel is turned by running the other way.
  std::vector<fea::NodeId> add_rail(const std::string& name, double across) {
    std::vector<fea::NodeId> nodes;
    for (const double at : stations_) {
      nodes.push_back(builder_.add_node(at_g(at, across), "frame, " + name, "frame"));
    }
    for (std::size_t i = 0; i < frame_.held_at.size(); ++i) {
      const fea::NodeId node = nodes[index_of(frame_.held_at[i])];
      const bool turn = frame_.held == RailHold::clamped;
      out_.model.add(fea::Support{node, {true, true, true, turn, turn, turn}});
      out_.held.push_back({fmt::format("frame, {}, hold {}", name, i + 1), node});
    }
    RunSpec spec{.part = "frame", .name = name, .key = "frame", .stick = rail_stick(design_)};
    spec.pieces = 1;
    const bool open = !design_.bracket->rail.boxed;
    if (open) {
      spec.torsion_share = warping_share(design_, cross_members_, warping_held());
    }
    std::vector<fea::NodeId> way = nodes;
    if (open && flange_toward(across) < 0.0) std::reverse(way.begin(), way.end());
    std::vector<RunStop> through;
    for (std::size_t i = 1; i + 1 < way.size(); ++i) through.push_back({way[i]});
    const std::size_t piece = builder_.add_run(spec, {way.front(), fea::Vector3::Zero(), {}},
                                               through, {way.back(), fea::Vector3::Zero(), {}});
    out_.pieces[piece].length = longest_bay();
    if (open) {
      const bool reversed = way.front() != nodes.front();
      warp(out_.pieces[piece], rail_stick(design_), along_rail(twist_held_at(), reversed));
    }
    finish(piece, "the stress of the rail's own load is not in it");
    return nodes;
  }

  /// Cross members hold a rail's twist, and what holds its direction.
  [[nodiscard]] std::vector<double> twist_held_at() const {
    std::vector<double> at;
    for (const CrossMember& one : cross_members_) at.push_back(one.at);
    if (frame_.held == RailHold::clamped) {
      at.insert(at.end(), frame_.held_at.begin(), frame_.held_at.end());
    }
    return at;
  }

  /// The same along the rail's center line, from its first end.
  [[nodiscard]] std::vector<double> along_rail(std::vector<double> at, bool reversed) const {
    for (double& one : at) one = reversed ? stations_.back() - one : one - stations_.front();
    std::sort(at.begin(), at.end());
    at.erase(std::unique(at.begin(), at.end(), same_place), at.end());
    return at;
  }

  /// @param stick  a channel
  void warp(Piece& piece, const Stick& stick, std::vector<double> twist_held_at) const {
    piece.warping =
        Warping{.length = warping_length(std::get<sections::Channel>(stick.shape), stick.material),
                .held = warping_held(),
                .twist_held_at = std::move(twist_held_at)};
  }

  [[nodiscard]] bool warping_held() const { return builder_.set().rail == Bound::high; }

  /// Between cross members and holds, which hold a rail sideways.  [m]
  [[nodiscard]] double longest_bay() const {
    double longest = 0.0;
    for (std::size_t i = 1; i < stations_.size(); ++i) {
      longest = std::max(longest, stations_[i] - stations_[i - 1]);
    }
    return longest;
  }

  /// Which way across the truck a channel's flanges point, on the rail that lies `across`.
  [[nodiscard]] double flange_toward(double across) const {
    const RailFaces& faces = design_.bracket->welded_to;
    const bool web_inside = faces.inner_side && !faces.outer_side;
    const double inward = across > 0.0 ? -place_.inward_y : place_.inward_y;
    return web_inside ? -inward : inward;
  }

  void add_cross_member(const CrossMember& one, fea::NodeId near, fea::NodeId far,
                        const std::string& name) {
    RunSpec spec{.part = "frame", .name = name, .key = "frame", .stick = one.stick};
    spec.pieces = 2;
    // Welded to the rails' sides.
    const double to_weld = 0.5 * design_.bracket->rail.width;
    spec.welds = {to_weld, to_weld};
    std::vector<RunStop> through;
    for (const double across : one.carries_y) {
      const fea::NodeId node =
          builder_.add_node(at_g(one.at, across), "frame, " + name, "frame.arm_cross_member");
      through.push_back({node, false, 0.0});
      out_.frame->arm_joints.push_back(node);
    }
    const auto* channel = std::get_if<sections::Channel>(&one.stick.shape);
    if (channel != nullptr && warping_held()) {
      spec.torsion_share = held_ends_share(*channel, one.stick.material, frame_.rails_apart);
    }
    const std::size_t piece = builder_.add_run(spec, {near, fea::Vector3::Zero(), {}}, through,
                                               {far, fea::Vector3::Zero(), {}});
    if (channel != nullptr) warp(out_.pieces[piece], one.stick, {0.0, frame_.rails_apart});
    finish(piece, "");
  }

  /// The stress of a channel that warps is known, that of other open sections is not: those are in
  /// the model alone.
  void finish(std::size_t piece, const std::string& note) {
    Piece& last = out_.pieces[piece];
    last.column = !last.warping;
    if (!note.empty()) last.notes.push_back(note);
    if (sections::is_open(last.beams.front().at_a) && !last.warping) out_.pieces.pop_back();
  }

  Builder& builder_;
  const Design& design_;
  const Frame& frame_;
  Assembly& out_;
  FramePlace place_;
  std::vector<CrossMember> cross_members_;
  std::vector<double> stations_;  ///< of the nodes of both rails, ahead of the bolt  [m]
  std::optional<double> gear_;    ///< of the steering gear, ahead of the bolt  [m]
  bool gear_on_near_ = true;      ///< on the bracket's rail, else on the opposite one
};

/// What the root's own give is, besides the rails'; unset = none.  [N m/rad]
double wall_give(const Bracket& bracket, Bound bound) {
  if (bound != Bound::low) return base::kUnset;
  if (!bracket.rail.boxed) {
    return bracket.welded_to.one_flat_face() ? kOneOpenWall : base::kUnset;
  }
  return reaches_both_corners(bracket) ? base::kUnset : wall_root(bracket);
}

}  // namespace

Stick rail_stick(const Design& design) {
  const Rail& rail = design.bracket->rail;
  const sections::Material& steel = design.bracket->rail_steel.material;
  if (!rail.boxed) {
    return {sections::Channel{
                .depth = rail.height, .width = rail.width, .web = rail.wall, .flange = rail.wall},
            steel};
  }
  return {sections::RectangularTube{
              .depth = rail.height, .width = rail.width, .wall = rail.wall, .corner = rail.wall},
          steel};
}

Brace placed_brace(const Design& design) {
  Brace brace = *design.brace;
  const bool given = !std::isnan(brace.length) || !std::isnan(brace.slope);
  if (given || !design.frame) return brace;
  const Bracket& bracket = *design.bracket;
  const double across = design.frame->rails_apart - 0.5 * bracket.rail.width;
  const double up = bracket.drop - brace.meets_bracket.above_bolt + 0.5 * bracket.rail.height;
  brace.length = std::hypot(across, up);
  brace.slope = std::atan2(up, across);
  return brace;
}

std::array<double, 2> brace_end_off(const Design& design) {
  const Brace brace = placed_brace(design);
  const Bracket& bracket = *design.bracket;
  return {brace.length * std::cos(brace.slope) - design.frame->rails_apart,
          brace.meets_bracket.above_bolt + brace.length * std::sin(brace.slope) - bracket.drop -
              0.5 * bracket.rail.height};
}

bool frame_root_is_bounded(const Design& design) {
  const Bracket& bracket = *design.bracket;
  const auto is_channel = [](const Stick& stick) {
    return std::holds_alternative<sections::Channel>(stick.shape);
  };
  return !bracket.rail.boxed || !reaches_both_corners(bracket) ||
         is_channel(design.frame->cross_member) || is_channel(design.frame->arm_cross_member);
}

std::string frame_root_words(const Bracket& bracket) {
  if (!bracket.rail.boxed) {
    return "rails as channels whose warping is free, or held, at the cross members beside the "
           "bracket" +
           std::string(bracket.welded_to.one_flat_face()
                           ? "; soft end with 15 kN m/rad of that one wall (proposal, no source)"
                           : "");
  }
  if (reaches_both_corners(bracket)) return "as the rails twist; plates reach both corners";
  return fmt::format(
      "as the rails twist, soft end with the give of the wall under the plates, {:.4g} kN m/rad "
      "(derived, no source)",
      wall_root(bracket) / 1000.0);
}

void add_frame(Builder& builder, const fea::Vector3& bolt_g, double inward_y) {
  if (!builder.design().frame) return;
  const Bracket& bracket = *builder.design().bracket;
  const fea::Vector3 up(0.0, 0.0, bracket.drop + 0.5 * bracket.rail.height);
  FrameBuilder(builder, {bolt_g + up, inward_y}).add();
}

fea::SpringId add_root_to_frame(Builder& builder, fea::NodeId root) {
  Assembly& out = builder.out();
  fea::Spring spring{.a = root, .b = out.frame->rail, .name = "rail"};
  spring.offset_b_g = out.model[root].at_g - out.model[out.frame->rail].at_g;
  for (int i = 0; i < 6; ++i) spring.stiffness(i, i) = i < 3 ? kStiff : kStiffTurn;
  const double give = wall_give(*builder.design().bracket, builder.set().rail);
  if (!std::isnan(give)) spring.stiffness(3, 3) = give;
  return out.model.add(spring);
}

}  // namespace parts
