#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "checks/caveat.hpp"
#include "parts/bracket_section.hpp"
#include "parts/bracket_weld.hpp"
#include "parts/builder.hpp"
#include "parts/length_words.hpp"
#include "parts/side_force.hpp"
#include "parts/taper.hpp"
#include "parts/taper_give.hpp"

namespace parts {
namespace {

struct LinkPlace {
  fea::Vector3 frame_g;
  fea::Vector3 axle_g;
};

/// By its points, or by tape lengths with the axle's center under the middle of the link.
LinkPlace place_link(const Builder& builder, const LateralLink& link) {
  if (!link.frame_bolt.empty()) {
    return {builder.point(link.frame_bolt, "lateral_link.frame_bolt"),
            builder.point(link.axle_bolt, "lateral_link.axle_bolt")};
  }
  const double run = std::sqrt(link.bolt_to_bolt * link.bolt_to_bolt - link.rise * link.rise);
  const double height =
      builder.design().vehicle ? to_vehicle(*builder.design().vehicle).tire_radius : 0.0;
  return {{0.0, 0.5 * run, height + link.rise}, {0.0, -0.5 * run, height}};
}

fea::Vector3 direction(BendToward toward) {
  switch (toward) {
    case BendToward::up:
      return fea::Vector3::UnitZ();
    case BendToward::down:
      return -fea::Vector3::UnitZ();
    case BendToward::forward:
      return fea::Vector3::UnitX();
    case BendToward::rearward:
      break;
  }
  return -fea::Vector3::UnitX();
}

/// A bent link's center line between its bolts, with a bow of chord/1000 toward the offset added
/// (design allowance for straightness, as AISC 360 E3 rests on; from memory).
std::vector<fea::Vector3> way_points(const Builder& builder, const LateralLink& link,
                                     const LinkPlace& place) {
  std::vector<fea::Vector3> ways;
  const fea::Vector3 chord = place.axle_g - place.frame_g;
  for (const std::string& name : link.through) {
    const fea::Vector3 at = builder.point(name, "lateral_link.through");
    const double along = (at - place.frame_g).dot(chord) / chord.squaredNorm();
    const fea::Vector3 off = at - (place.frame_g + along * chord);
    const double bow = std::sin(base::kPi * along) * chord.norm() / 1000.0;
    ways.push_back(off.norm() > 0.0 ? fea::Vector3(at + bow * off.normalized()) : at);
  }
  if (link.bend.off_straight > 0.0) {
    const fea::Vector3 along = chord.normalized();
    const fea::Vector3 toward = direction(link.bend.toward);
    const fea::Vector3 square = (toward - toward.dot(along) * along).normalized();
    ways.push_back(place.frame_g + 0.5 * chord +
                   (link.bend.off_straight + chord.norm() / 1000.0) * square);
  }
  return ways;
}

/// Angle at which a brace leaves the plates, the acute one.  [rad]
double from_plates(const Brace& brace) {
  return 0.5 * base::kPi - std::abs(brace.slope);
}

/// How far the brace's first weld lies from where it meets the bracket: of its eye at the bolt, or
/// at the edge of the plates.  [m]
double first_brace_weld(const Bracket& bracket, const Brace& brace) {
  if (brace.meets_bracket.at_bolt())
    return eye_reach(brace.bolt_to_weld, brace.stick.shape, JointKind::pin);
  const double above = brace.meets_bracket.above_bolt;
  return weld_reach(half_outside(brace.stick.shape), 0.5 * plate_depth(bracket, above),
                    from_plates(brace));
}

/// The plates are welded at the rail, and to a brace that meets them above the bolt.
std::vector<Weld> plate_welds(const Design& design) {
  const Bracket& bracket = *design.bracket;
  std::vector<Weld> welds = {{bracket.drop, 0.0}};
  if (!design.brace || design.brace->meets_bracket.at_bolt()) return welds;
  const double at = design.brace->meets_bracket.above_bolt;
  welds.push_back(
      {at, weld_reach(0.5 * plate_depth(bracket, at), half_outside(design.brace->stick.shape),
                      from_plates(placed_brace(design)))});
  return welds;
}

// Plates are judged between so many equal parts of a beam.
constexpr int kPlateParts = 8;

/// Where the plates' beams begin and end, up from the bolt.  [m]
std::vector<double> plate_stations(const Bracket& bracket, double brace_at) {
  const double near = 1e-9 * bracket.drop;
  const bool between = brace_at >= near && bracket.drop - brace_at >= near;
  return between ? std::vector<double>{0.0, brace_at, bracket.drop}
                 : std::vector<double>{0.0, bracket.drop};
}

/// Plates from the bolt up to the rail, as beams whose depth follows the taper, broken where the
/// brace meets them. @return the node where the brace meets the bracket, if it does
std::optional<fea::NodeId> add_plates(Builder& builder, fea::NodeId bolt, fea::NodeId root,
                                      const BracketPlace& place) {
  const fea::Vector3& rail_bottom_g = place.rail_bottom_g;
  const Bracket& bracket = *builder.design().bracket;
  const sections::Material& steel = bracket.plates.material;
  const fea::Vector3 bolt_g = builder.out().model[bolt].at_g;
  const double brace_at =
      builder.design().brace ? builder.design().brace->meets_bracket.above_bolt : 0.0;
  if (!(brace_at < bracket.drop)) {
    throw base::InputError("brace.meets_bracket", "it is above the rail: give less than the drop");
  }
  Piece piece{.part = "bracket",
              .name = "plates",
              .beams = {},
              .material = steel,
              .duty = checks::Duty::lateral_link};
  piece.length = bracket.drop;
  piece.center_line = bracket.drop;
  piece.mass = 0.0;
  const auto shape_at = [&](double s) { return bracket_section(bracket, s, place.inward_y); };
  const auto props_at = [&](double s) { return sections::area_props(shape_at(s), steel.poisson); };
  INVARIANT(changes_evenly(shape_at(0.0), shape_at(bracket.drop)));
  const std::vector<double> stations = plate_stations(bracket, brace_at);
  std::optional<fea::NodeId> brace_node;
  if (builder.design().brace && builder.design().brace->meets_bracket.at_bolt()) brace_node = bolt;
  fea::NodeId last = bolt;
  for (std::size_t i = 1; i < stations.size(); ++i) {
    const bool closes = i + 1 == stations.size();
    const fea::Vector3 at_g = bolt_g + fea::Vector3(0.0, 0.0, stations[i]);
    fea::BeamEnd end;
    if (closes) {
      end = {root, rail_bottom_g - builder.out().model[root].at_g, {}};
    } else {
      end = {builder.add_node(at_g, "bracket", "bracket"), fea::Vector3::Zero(), {}};
    }
    const double from = stations[i - 1];
    const double high = stations[i] - from;
    const sections::AreaProps section = props_at(from + 0.5 * high);
    // Plates tied on one edge have their centroid nearer to it than the bolt is.
    const auto off = [&](double s) -> fea::Vector3 { return {0.0, props_at(s).centroid_z, 0.0}; };
    end.offset_g += off(stations[i]);
    const fea::BeamId beam =
        builder.add_beam({.a = {last, off(from), {}},
                          .b = end,
                          .section = section,
                          .elastic = {steel.elastic, steel.shear_modulus()},
                          .density = steel.density,
                          .z_toward_g = fea::Vector3::UnitY(),
                          .name = "bracket",
                          .taper = taper_give([&](double x) { return props_at(from + x); }, high)},
                         "bracket");
    piece.beams.push_back({.beam = beam,
                           .at_a = shape_at(from),
                           .at_b = shape_at(stations[i]),
                           .starts_at = from,
                           .parts = kPlateParts});
    piece.mass += section.area * high * steel.density;
    if (brace_at > 0.0 && std::abs(stations[i] - brace_at) < 1e-9 * bracket.drop) {
      brace_node = end.node;
    }
    last = end.node;
  }
  // Back and face plates are welded all along the others' edges.
  const bool welded_along = bracket.back_plate > 0.0 || bracket.face_plate > 0.0;
  set_weld_zones(piece, welded_along ? std::vector<Weld>{} : plate_welds(builder.design()),
                 shape_at(bracket.drop));
  builder.out().chords.push_back({"bracket", piece.beams.front().beam, piece.beams.back().beam});
  builder.out().pieces.push_back(std::move(piece));
  return brace_node;
}

/// The bolt of link and bracket. Where a brace is on it too, it is enough to name it for one.
BoltSpec frame_bolt_of(const Design& design) {
  const BoltSpec& own = design.lateral_link->bolt;
  return on_one_bolt(design) && !own.given() ? design.brace->bolt : own;
}

BoltSpec brace_bolt_of(const Design& design) {
  const BoltSpec& own = design.brace->bolt;
  return on_one_bolt(design) && !own.given() ? design.lateral_link->bolt : own;
}

/// Whether a brace is bolted where the link is.
bool shares_frame_bolt(const Design& design) {
  return on_one_bolt(design) && brace_bolt_of(design).given();
}

void in_one_plane(BoltedJoint& joint, const std::string& reason) {
  joint.bolt.double_shear = false;
  joint.one_plane = "one plane of shear: " + reason;
}

constexpr const char* kBraceAtBracket = "bolt at the bracket";
constexpr const char* kEyesPush = "link and brace on one bolt push against each other";

/// The bolts of the brace's bolted ends; at the bracket it shares the link's place.
void bolt_brace(Assembly& out, const Piece& piece, const Brace& brace, const BoltSpec& at_bracket,
                double filler) {
  const JointSpec pin{.kind = JointKind::pin, .axis = Axis::x};
  if (brace.meets_bracket.at_bolt()) {
    const std::size_t before = out.bolts.size();
    bolt_end(out, piece, 0, kBraceAtBracket, at_bracket, pin);
    if (out.bolts.size() > before) {
      in_one_plane(out.bolts[before], kEyesPush);
    }
  }
  if (brace.far_end == BraceEnd::bolted) {
    const std::size_t before = out.bolts.size();
    const BoltSpec& bolt = brace.far_bolt.given() ? brace.far_bolt : brace.bolt;
    bolt_end(out, piece, 1, "bolt at the far end", bolt, pin);
    tab_end(out, before, piece.duty, brace.far_tabs, "tabs at the far end", filler);
  }
}

/// Where the brace ends: on the opposite rail, or held.
RunEnd far_end_of(Builder& builder, const fea::Vector3& at_g) {
  Assembly& out = builder.out();
  if (out.frame) {
    const fea::NodeId rail = out.frame->opposite_rail;
    return {rail, at_g - out.model[rail].at_g, {}};
  }
  const fea::NodeId far = builder.add_node(at_g, "brace far end", "brace");
  out.model.add(fea::Support{far, {true, true, true, true, true, true}});
  out.held.push_back({"brace far end", far});
  return {far, fea::Vector3::Zero(), {}};
}

/// Of a brace whose place is given by its length and slope alone, where that is off the rail: a
/// drop that changes leaves both as they are.
std::optional<std::string> far_end_caveat(const Bracket& bracket, const Brace& brace, bool inches) {
  constexpr double kNear = 0.050;  // of the rail's walls: rails are not level to less
  const double up =
      brace.meets_bracket.above_bolt + brace.length * std::sin(brace.slope) - bracket.drop;
  const bool below = up < -kNear;
  if (!below && !(up > bracket.rail.height + kNear)) return std::nullopt;
  return fmt::format(
      "{}it ends {} {} of a rail level with this one; give the length and slope that "
      "this drop has",
      checks::kCaveat, length_words(below ? -up : up - bracket.rail.height, inches),
      below ? "below the bottom" : "above the top");
}

void add_brace(Builder& builder, fea::NodeId at, double inward_y) {
  const Brace brace = placed_brace(builder.design());
  Assembly& out = builder.out();
  const fea::Vector3 along(0.0, inward_y * std::cos(brace.slope), std::sin(brace.slope));
  RunEnd far = far_end_of(builder, out.model[at].at_g + brace.length * along);

  constexpr double kSoftMount = 10.0e6;  // [N/m], proposal, no source
  const double mount = !std::isnan(brace.end_mount)            ? brace.end_mount
                       : builder.set().brace_end == Bound::low ? kSoftMount
                                                               : fea::kRigid;
  fea::Matrix3 axes;
  axes.col(0) = along;
  axes.col(1) = fea::Vector3::UnitX();
  axes.col(2) = along.cross(fea::Vector3::UnitX());
  const double turn = brace.far_end == BraceEnd::bolted ? 0.0 : fea::kRigid;
  far.joint = fea::Joint{axes, {mount, fea::kRigid, fea::kRigid, fea::kRigid, turn, fea::kRigid}};
  std::optional<fea::Joint> near_joint;
  if (brace.meets_bracket.at_bolt()) {
    near_joint =
        builder.connection({.kind = JointKind::pin, .axis = Axis::x}, "brace bushings", along);
  }
  RunSpec spec{.part = "brace", .name = {}, .key = "brace", .stick = brace.stick};
  spec.duty = checks::Duty::lateral_link;
  spec.welds.start = first_brace_weld(*builder.design().bracket, brace);
  spec.welds.end = brace.far_end == BraceEnd::bolted
                       ? eye_reach(brace.bolt_to_weld, brace.stick.shape, JointKind::pin)
                       : 0.0;
  spec.side_welds = side_welds_on(builder, "brace", out.model[at].at_g);
  const std::size_t piece = builder.add_run(spec, {at, fea::Vector3::Zero(), near_joint}, {}, far);
  out.pieces[piece].column = true;
  out.pieces[piece].reach_assumed = std::isnan(brace.bolt_to_weld);
  if (!out.frame) {
    const auto caveat = far_end_caveat(*builder.design().bracket, brace, out.inches);
    if (caveat) out.pieces[piece].notes.push_back(*caveat);
  }
  bolt_brace(out, out.pieces[piece], brace, brace_bolt_of(builder.design()),
             filler_of(builder.design()));
  weld_end(out, out.pieces[piece], 0, spec.welds.start.value_or(0.0), brace.end_weld,
           "at the bracket", filler_of(builder.design()));
  weld_end(out, out.pieces[piece], 1, spec.welds.end.value_or(0.0), brace.end_weld,
           "at the far end", filler_of(builder.design()));
}

/// The root on a rail that is known by its stiffness alone.
void hold_root(Builder& builder, fea::NodeId root) {
  Assembly& out = builder.out();
  out.model.add(fea::Support{root, {true, true, true, false, true, true}});
  fea::Spring spring{.a = root, .b = {}, .name = "rail"};
  spring.stiffness(3, 3) = root_stiffness(*builder.design().bracket, builder.set().rail).value;
  out.model.add(spring);
  out.held.push_back({"bracket root", root});
}

void add_bracket(Builder& builder, fea::NodeId bolt, double inward_y) {
  const Bracket& bracket = *builder.design().bracket;
  Assembly& out = builder.out();
  const fea::Vector3 bottom_g = out.model[bolt].at_g + fea::Vector3(0.0, 0.0, bracket.drop);
  const checks::WeldGroup group = root_weld(bracket, {bottom_g, inward_y});
  const fea::Vector3 centroid_g = checks::weld_properties(group.lines).centroid;
  const fea::NodeId root = builder.add_node(centroid_g, "bracket root", "bracket");
  std::optional<fea::SpringId> to_frame;
  if (out.frame) {
    to_frame = add_root_to_frame(builder, root);
  } else {
    hold_root(builder, root);
  }
  out.points.push_back({"bracket root", root});
  const double rail_wall = bracket.rail.frame_plate > 0.0
                               ? std::min(bracket.rail.frame_plate, bracket.rail.wall)
                               : bracket.rail.wall;
  const sections::Material& of_plates = bracket.plates.material;
  const sections::Material& of_rail = bracket.rail_steel.material;
  const sections::Material& weaker =
      of_rail.haz_tensile < of_plates.haz_tensile ? of_rail : of_plates;
  out.root = RootWeld{.part = "bracket",
                      .node = root,
                      .spring = to_frame,
                      .at_g = centroid_g,
                      .group = group,
                      .backed = backed_root_weld(bracket, {bottom_g, inward_y}),
                      .directional = bracket.weld.directional && !bracket.rail.boxed,
                      .seat = root_seat(bracket, {bottom_g, inward_y}),
                      .warnings = root_weld_warnings(bracket),
                      .rail_basis = parent_words(bracket.rail_steel.material),
                      .plate = bracket.plates.thickness,
                      .thinner = std::min(bracket.plates.thickness, rail_wall),
                      .base_tensile = weaker.haz_tensile,
                      .base_basis = weld_zone_words(weaker)};
  const std::optional<fea::NodeId> brace_node =
      add_plates(builder, bolt, root, {bottom_g, inward_y});
  if (brace_node) add_brace(builder, *brace_node, inward_y);
}

/// How the link meets the axle: at the beam axle, or at a node that only moves across the truck.
RunEnd end_at_axle(Builder& builder, const fea::Vector3& axle_g) {
  Assembly& out = builder.out();
  if (out.axle) {
    const fea::NodeId node = axle_near(out, axle_g.y());
    return {node, axle_g - out.model[node].at_g, {}};
  }
  const fea::NodeId axle = builder.add_node(axle_g, "axle bolt", "lateral_link");
  out.model.add(fea::Support{axle, {true, false, true, true, true, true}});
  out.points.push_back({"axle bolt", axle});
  out.held.push_back({"axle bolt", axle});
  out.link_axle_end = axle;
  out.assumed.emplace_back("the axle bolt moves across the truck only; all else there is held");
  return {axle, fea::Vector3::Zero(), {}};
}

/// Where two tapered plates, held from turning at both ends, do not bend as one end is pushed
/// aside: the middle of the drop, weighted by 1 / depth (slope-deflection).  [m]
double straight_at(const Bracket& bracket) {
  const double taper = bracket.depth_at_rail / depth_at_bolt(bracket) - 1.0;
  if (std::abs(taper) < 1e-3) return 0.5 * bracket.drop;
  return bracket.drop * (1.0 / std::log1p(taper) - 1.0 / taper);
}

/// The side force on the bracket, from the end of the link at its bolt.
void add_side_force(Builder& builder, const Piece& link_piece) {
  const Bracket& bracket = *builder.design().bracket;
  Assembly& out = builder.out();
  if (!(bracket.side_force > 0.0)) return;
  SideForce side{.share = bracket.side_force,
                 .link = link_piece.beams.front(),
                 .end = 0,
                 .spacing = bracket.gap + bracket.plates.thickness};
  const bool alone = bracket.plates.count == 2 && !is_tied(bracket);
  if (alone && !frame_bolt_of(builder.design()).loose_stack) {
    side.straight_at = straight_at(bracket);
  }
  for (Piece& piece : out.pieces) {
    if (piece.part != out.root->part) continue;
    piece.side_force = side;
    piece.notes.push_back(side_force_words(side));
  }
  out.root->side_force = side;
}

/// The bolt of link and brace bends under both, loose if it is said of either.
void put_side_by_side(Assembly& out, std::size_t frame_bolt) {
  BoltedJoint& of_link = out.bolts[frame_bolt];
  const auto of_brace =
      std::find_if(out.bolts.begin(), out.bolts.end(), [](const BoltedJoint& bolt) {
        return bolt.part == "brace" && bolt.where == kBraceAtBracket;
      });
  if (of_brace == out.bolts.end() || !of_link.stack) return;
  of_link.stack->loose = of_link.stack->loose || of_brace->bolt.loose_stack;
  const bool assumed = of_link.bolt.clamp_assumed && of_brace->bolt.clamp_assumed;
  of_link.bolt.clamp_assumed = of_brace->bolt.clamp_assumed = assumed;
  of_link.stack->spacers_left_out = of_link.bolt.spacer > 0.0 || of_brace->bolt.spacer > 0.0;
  of_link.stack->spacer = 0.0;
  of_brace->stack = of_link.stack;
  of_link.beside = static_cast<std::size_t>(of_brace - out.bolts.begin());
  of_brace->beside = frame_bolt;
}

/// The bolts of the link, and the plates that its frame bolt goes through.
void bolt_link(Builder& builder, const Piece& link_piece) {
  const LateralLink& link = *builder.design().lateral_link;
  Assembly& out = builder.out();
  const std::size_t frame_bolt = out.bolts.size();
  const JointSpec& axle_joint = axle_end_of(link).joint;
  watch_end(out, link_piece, 0, "frame bolt", link.ends.joint, link.joint_tilt);
  watch_end(out, link_piece, 1, "axle bolt", axle_joint, link.joint_tilt);
  const BoltSpec at_frame = frame_bolt_of(builder.design());
  bolt_end(out, link_piece, 0, "frame bolt", at_frame, link.ends.joint);
  const std::size_t before = out.bolts.size();
  bolt_end(out, link_piece, 1, "axle bolt", link.bolt, axle_joint);
  tab_end(out, before, link_piece.duty, link.axle_tabs, "tabs at the axle bolt",
          filler_of(builder.design()));
  if (out.bolts.size() == frame_bolt || !builder.design().bracket) return;
  const Bracket& bracket = *builder.design().bracket;
  if (bracket.plates.count == 1) {
    in_one_plane(out.bolts[frame_bolt], "the bracket has one plate");
  } else if (shares_frame_bolt(builder.design())) {
    in_one_plane(out.bolts[frame_bolt], kEyesPush);
  }
  if (bracket.plates.count == 2) {
    out.bolts[frame_bolt].stack = stack_between(bracket.plates.thickness, bracket.gap, at_frame);
    // The axle's bracket is not described: it is taken as alike where the bolt is said to be loose.
    if (link.bolt.loose_stack && out.bolts.size() > before && !out.bolts[before].stack) {
      out.bolts[before].stack = out.bolts[frame_bolt].stack;
    }
  }
  if (shares_frame_bolt(builder.design())) put_side_by_side(out, frame_bolt);
  const auto plates = std::find_if(out.pieces.begin(), out.pieces.end(),
                                   [](const Piece& piece) { return piece.part == "bracket"; });
  out.bolted_plates = BoltedPlates{.part = "bracket",
                                   .plates = plates->beams.front(),
                                   .bolt = frame_bolt,
                                   .edge = edge_distance(bracket),
                                   .thickness = bracket.plates.thickness,
                                   .count = bracket.plates.count,
                                   .material = bracket.plates.material};
}

/// How far an end's weld reaches from its bolt; nothing where nothing is welded.  [m]
std::optional<double> weld_of(const LateralLink& link, const LinkEnds& end) {
  if (!end.welded) return std::nullopt;
  return eye_reach(link.bolt_to_weld, link.stick.shape, end.joint.kind);
}

/// The weld, rating and thread of one end of the link. @param end  0 = at the frame, 1 = at the
/// axle
void finish_end(Builder& builder, const Piece& piece, int end, const LinkEnds& made) {
  const LateralLink& link = *builder.design().lateral_link;
  Assembly& out = builder.out();
  const std::string where = end == 0 ? "frame end" : "axle end";
  if (const std::optional<double> weld = weld_of(link, made)) {
    weld_end(out, piece, end, *weld, link.end_weld, "at the " + where, filler_of(builder.design()));
  }
  if (made.joint.kind != JointKind::ball) return;
  RatedJoint like;
  like.static_rating = link.static_rating;
  like.ultimate_rating = link.ultimate_rating;
  like.axial_rating = link.axial_rating;
  like.bolt_g = fea::Vector3::Unit(static_cast<int>(made.joint.axis));
  rate_end(out, piece, end, where, like);
  thread_end(out, piece, end, link.thread, made.welded);
}

}  // namespace

void add_link_and_bracket(Builder& builder) {
  if (!builder.design().lateral_link) return;
  const LateralLink& link = *builder.design().lateral_link;
  Assembly& out = builder.out();
  const LinkPlace place = place_link(builder, link);
  const fea::Vector3 chord = place.axle_g - place.frame_g;
  if (!(chord.norm() > 1.0e-6)) {
    throw base::InputError("lateral_link", "it has no length: both bolts are at the same place");
  }
  const fea::NodeId bolt = builder.add_node(place.frame_g, "frame bolt", "lateral_link");
  out.points.push_back({"frame bolt", bolt});
  const double inward_y = chord.y() > 0.0 ? 1.0 : -1.0;
  if (builder.design().bracket) {
    out.bracket_bolt = bolt;
    add_frame(builder, place.frame_g, inward_y);
    add_bracket(builder, bolt, inward_y);
  } else {
    out.model.add(fea::Support{bolt, {true, true, true, true, true, true}});
    out.held.push_back({"frame bolt", bolt});
  }

  RunEnd axle_end = end_at_axle(builder, place.axle_g);
  const std::vector<fea::Vector3> corners = way_points(builder, link, place);
  const fea::Vector3 first =
      corners.empty() ? chord : fea::Vector3(corners.front() - place.frame_g);
  const fea::Vector3 last = corners.empty() ? chord : fea::Vector3(place.axle_g - corners.back());
  axle_end.joint = builder.connection(axle_end_of(link).joint, "link bushings", last);
  const RunSpec spec{
      .part = "lateral_link",
      .name = {},
      .key = "lateral_link",
      .stick = link.stick,
      .welded = has_welded_end(link),
      .welds = {.start = weld_of(link, link.ends), .end = weld_of(link, axle_end_of(link))},
      .side_welds = side_welds_on(builder, "lateral_link", place.frame_g),
      .duty = checks::Duty::lateral_link,
      .z_toward_g = {},
      .bend_radius = link.bend_radius};
  const std::vector<RunStop> through = builder.bends(place.frame_g, corners, place.axle_g, spec);
  const std::size_t index = builder.add_run(
      spec,
      {bolt, fea::Vector3::Zero(), builder.connection(link.ends.joint, "link bushings", first)},
      through, axle_end);
  Piece& piece = out.pieces[index];
  piece.column = true;
  piece.bent = !through.empty();
  piece.reach_assumed = std::isnan(link.bolt_to_weld);
  piece.spin_held =
      link.ends.joint.kind == JointKind::ball && axle_end_of(link).joint.kind == JointKind::ball;
  if (builder.design().bracket) add_side_force(builder, piece);
  out.chords.push_back({"lateral_link", piece.beams.front().beam, piece.beams.back().beam});
  bolt_link(builder, piece);
  finish_end(builder, piece, 0, link.ends);
  finish_end(builder, piece, 1, axle_end_of(link));
}

}  // namespace parts
