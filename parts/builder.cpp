#include "parts/builder.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "checks/bend_flattening.hpp"
#include "checks/curved_bar.hpp"
#include "fea/rotation.hpp"
#include "parts/beams_of_straight.hpp"
#include "parts/center_line.hpp"
#include "parts/length_words.hpp"
#include "parts/taper.hpp"

namespace parts {
namespace {

constexpr double kSamePlace = 1.0e-6;         // [m]
constexpr double kShortestStraight = 1.0e-4;  // [m]
constexpr double kStraight = 1.0e-6;          // a corner below this turns nothing  [rad]
constexpr double kChordAngle = 5.0 * base::kDegree;

/// Two directions of the case as joint axes: x along the bolt, y and z square to it.
fea::Matrix3 bolt_axes(Axis axis) {
  fea::Matrix3 axes = fea::Matrix3::Zero();
  const int first = static_cast<int>(axis);
  for (int i = 0; i < 3; ++i) axes((first + i) % 3, i) = 1.0;
  return axes;
}

/// x along the given direction, y and z square to it.
fea::Matrix3 axes_along(const fea::Vector3& along_g) {
  const fea::Vector3 x = along_g.normalized();
  const fea::Vector3 hint = std::abs(x.z()) < 0.9 ? fea::Vector3::UnitZ() : fea::Vector3::UnitX();
  fea::Matrix3 axes;
  axes.col(0) = x;
  axes.col(1) = hint.cross(x).normalized();
  axes.col(2) = x.cross(axes.col(1));
  return axes;
}

/// Of a run's bends, over a straight bar.
struct BendFactors {
  double stress = 1.0;  ///< in bending, at the fiber where it is most
  double give = 1.0;    ///< in bending
};

/// The end of a tapered run decides at which it is more.
BendFactors bend_factors(const RunSpec& spec, const Taper& taper, bool inches,
                         std::vector<std::string>& notes) {
  double most = 1.0;
  checks::Flattening flat;
  for (const double part : {0.0, 1.0}) {
    const std::optional<double> factor =
        checks::curved_bar_factor(taper.shape(part), spec.bend_radius);
    if (!factor) {
      throw base::InputError(spec.key + ".bend_radius",
                             "too sharp a bend for this section: the stress in it is not known; "
                             "give a radius over the section's depth (over 13 times the depth "
                             "for twin plates and sections known by numbers)");
    }
    most = std::max(most, *factor);
    const checks::Flattening here = checks::bend_flattening(taper.shape(part), spec.bend_radius);
    flat = {std::max(flat.give, here.give), std::max(flat.stress, here.stress)};
  }
  const bool counts = most >= checks::kCurvedBarCounts;
  const bool flattens = flat.stress > most;
  notes.push_back(
      fmt::format("bend of {}: curvature raises the bending stress {:.3g} times (Winkler), {}",
                  length_words(spec.bend_radius, inches), most,
                  flattens ? "flattening more"
                  : counts ? "counted in My and Mz there"
                           : "negligible and left out"));
  if (flattens) {
    notes.push_back(fmt::format(
        "the tube flattens at its bend: {:.3g} times the bending stress counts in My and Mz there "
        "(1.30 / h^(2/3), h = t R / r^2, B2 of ASME III NB-3683, from memory)",
        flat.stress));
  }
  if (flat.give > 1.0) {
    notes.push_back(
        fmt::format("at its bend it gives {:.3g} times as much as a round tube (1.65 / "
                    "h, ASME B31.1 app. D, from memory): in the frame",
                    flat.give));
  }
  return {std::max(counts ? most : 1.0, flat.stress), flat.give};
}

sections::Shape thicker_end(const Taper& taper) {
  const sections::Shape from = taper.shape(0.0);
  const sections::Shape to = taper.shape(1.0);
  return sections::governing_thickness(to) > sections::governing_thickness(from) ? to : from;
}

/// A direction across a bar after the bar turns from one direction to another without a twist.
fea::Vector3 carried_round(const fea::Vector3& z_g, const fea::Vector3& from_g,
                           const fea::Vector3& to_g) {
  const fea::Vector3 axis = from_g.cross(to_g);
  const double sine = axis.norm();
  // Straight on; or back, which a turn about z itself does.
  if (sine == 0.0) return z_g;
  return fea::rotation_of(axis * (std::atan2(sine, from_g.dot(to_g)) / sine)) * z_g;
}

fea::BeamEnd beam_end(const RunEnd& end) {
  return {end.node, end.offset_g, end.joint};
}

}  // namespace

fea::NodeId Builder::add_node(const fea::Vector3& at_g, const std::string& name,
                              const std::string& key) {
  const fea::NodeId id = out_.model.add(fea::Node{at_g, name});
  out_.node_keys.push_back(key);
  return id;
}

fea::BeamId Builder::add_beam(const fea::Beam& beam, const std::string& part) {
  out_.beam_part.push_back(part);
  return out_.model.add(beam);
}

fea::Vector3 Builder::point(const std::string& name, const std::string& key) const {
  for (const Named<std::array<double, 3>>& p : design_.points) {
    if (p.name == name) return {p.value[0], p.value[1], p.value[2]};
  }
  throw base::InputError(key, fmt::format("there is no point `{}`", name));
}

fea::NodeId Builder::point_node(const std::string& name, const std::string& key) {
  for (const NamedNode& known : out_.points) {
    if (known.name == name) return known.node;
  }
  const fea::NodeId id = add_node(point(name, key), name, "points." + name);
  out_.points.push_back({name, id});
  return id;
}

Bound Builder::bound_of(const std::string& group) const {
  const auto found = set_.bushings.find(group);
  return found == set_.bushings.end() ? Bound::given : found->second;
}

std::optional<fea::Joint> Builder::connection(const JointSpec& joint, const std::string& group,
                                              const fea::Vector3& along_g) const {
  switch (joint.kind) {
    case JointKind::welded:
      return std::nullopt;
    case JointKind::pin:
      return fea::Joint{bolt_axes(joint.axis),
                        {fea::kRigid, fea::kRigid, fea::kRigid, 0.0, fea::kRigid, fea::kRigid}};
    case JointKind::ball:
      return fea::Joint{axes_along(along_g),
                        {fea::kRigid, fea::kRigid, fea::kRigid, kSpinStiffness, 0.0, 0.0}};
    case JointKind::bushing:
      break;
  }
  const bool own_rates = joint.grade == BushingGrade::given;
  const fea::Matrix3 axes = !own_rates       ? bolt_axes(joint.axis)
                            : joint.own_axes ? axes_along(along_g)
                                             : fea::Matrix3(fea::Matrix3::Identity());
  return fea::Joint{axes, rates_in(joint, bound_of(group))};
}

std::optional<fea::Vector3> Builder::direction(const Toward& toward, const fea::Vector3& at_g,
                                               const std::string& key) const {
  switch (toward.kind) {
    case Toward::Kind::usual:
      return std::nullopt;
    case Toward::Kind::axis:
      return fea::Vector3::Unit(static_cast<int>(toward.axis));
    case Toward::Kind::vector:
      return fea::Vector3(toward.vector[0], toward.vector[1], toward.vector[2]);
    case Toward::Kind::point:
      break;
  }
  const fea::Vector3 there = point(toward.point, key) - at_g;
  if (!(there.norm() > kSamePlace)) {
    throw base::InputError(
        key, fmt::format("`{}` is where it starts; give a point away from it", toward.point));
  }
  return there;
}

std::vector<RunStop> Builder::bends(const fea::Vector3& from_g,
                                    const std::vector<fea::Vector3>& corners,
                                    const fea::Vector3& to_g, const RunSpec& spec) {
  std::vector<RunStop> stops;
  std::vector<fea::Vector3> line = {from_g};
  line.insert(line.end(), corners.begin(), corners.end());
  line.push_back(to_g);
  double used = 0.0;  // of the straight before the corner, by the bend before
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const Corner corner(line[i - 1], line[i], line[i + 1]);
    if (std::isnan(spec.bend_radius) || !(corner.angle > kStraight)) {
      // Nothing bends to a sharp corner: taken as cut and welded.
      std::optional<double> weld;
      if (corner.angle > kStraight) {
        weld = miter_reach(half_outside(spec.stick.shape), corner.angle);
      }
      stops.push_back({add_node(line[i], spec.part + " bend", spec.key), false, weld});
      used = 0.0;
      continue;
    }
    const double tangent = spec.bend_radius * std::tan(0.5 * corner.angle);
    // A bend may meet the next one, but the run's ends are on a straight.
    const double before =
        (line[i] - line[i - 1]).norm() - used - (i == 1 ? kShortestStraight : 0.0);
    const double after =
        (line[i + 1] - line[i]).norm() - (i + 2 == line.size() ? kShortestStraight : 0.0);
    if (tangent > before * (1.0 + 1.0e-9) || tangent > after * (1.0 + 1.0e-9)) {
      throw base::InputError(
          spec.key + ".bend_radius",
          fmt::format("the bend does not fit: it takes {} of the straight on both sides of its "
                      "corner, and there are {}",
                      length_words(tangent, out_.inches),
                      length_words(std::min(before, after), out_.inches)));
    }
    const int n = static_cast<int>(std::ceil(corner.angle / kChordAngle));
    for (int k = 0; k <= n; ++k) {
      const fea::Vector3 at_g = corner.arc_at(spec.bend_radius, static_cast<double>(k) / n);
      const bool meets_last =
          !stops.empty() && (at_g - out_.model[stops.back().node].at_g).norm() < kSamePlace;
      if (!meets_last) stops.push_back({add_node(at_g, spec.part + " bend", spec.key), k > 0});
    }
    used = tangent;
  }
  return stops;
}

double eye_reach(double bolt_to_weld, const sections::Shape& shape, JointKind kind) {
  if (!std::isnan(bolt_to_weld)) return bolt_to_weld;
  return (kind == JointKind::ball ? 4.0 : 2.0) * half_outside(shape);
}

namespace {

const PieceBeam& beam_at(const Piece& piece, int end) {
  return end == 0 ? piece.beams.front() : piece.beams.back();
}

/// The direction of a joint's bolt, where it is known.
std::optional<Axis> along_of(const JointSpec& joint) {
  const bool own_rates = joint.grade == BushingGrade::given;
  if (joint.kind == JointKind::ball || own_rates) return std::nullopt;
  return joint.axis;
}

}  // namespace

void rate_end(Assembly& out, const Piece& piece, int end, const std::string& where,
              const RatedJoint& like) {
  RatedJoint joint = like;
  joint.part = piece.part;
  joint.where = where;
  joint.beam = beam_at(piece, end);
  joint.end = end;
  out.rated_joints.push_back(std::move(joint));
}

void watch_end(Assembly& out, const Piece& piece, int end, const std::string& where,
               const JointSpec& joint, double most_tilt) {
  if (joint.kind != JointKind::bushing && joint.kind != JointKind::ball) return;
  TurningJoint watched{.part = piece.part, .where = where};
  watched.beam = beam_at(piece, end).beam;
  watched.end = end;
  watched.kind = joint.kind;
  watched.bolt_g = fea::Vector3::Unit(static_cast<int>(joint.axis));
  watched.most_tilt = most_tilt;
  out.joints.push_back(std::move(watched));
}

void bolt_end(Assembly& out, const Piece& piece, int end, const std::string& where,
              const BoltSpec& bolt, const JointSpec& joint) {
  if (!bolt.given() || joint.kind == JointKind::welded) return;
  BoltedJoint bolted{
      .part = piece.part, .where = where, .beam = beam_at(piece, end), .end = end, .bolt = bolt};
  bolted.along = along_of(joint);
  out.bolts.push_back(std::move(bolted));
}

void bolt_spring(Assembly& out, fea::SpringId spring, const std::string& part,
                 const std::string& where, const BoltSpec& bolt, const JointSpec& joint) {
  if (!bolt.given() || joint.kind == JointKind::welded) return;
  BoltedJoint bolted{.part = part, .where = where, .beam = {}, .bolt = bolt};
  bolted.along = along_of(joint);
  bolted.spring = spring;
  bolted.spring_axes_g = out.model[spring].axes_g;
  out.bolts.push_back(std::move(bolted));
}

checks::BoltStack stack_between(double plate, double gap, const BoltSpec& bolt) {
  return {.plate = plate, .eye = gap, .loose = bolt.loose_stack, .spacer = bolt.spacer};
}

std::optional<checks::BoltStack> stack_of_tabs(const TabSpec& tabs, const BoltSpec& bolt) {
  if (tabs.plates.count != 2 || !(tabs.gap > 0.0)) return std::nullopt;
  return stack_between(tabs.plates.thickness, tabs.gap, bolt);
}

void tab_end(Assembly& out, std::size_t before, checks::Duty duty, const TabSpec& tabs,
             const std::string& where, double filler) {
  if (!tabs.given() || out.bolts.size() == before) return;
  const std::size_t bolt = out.bolts.size() - 1;
  out.bolts[bolt].stack = stack_of_tabs(tabs, out.bolts[bolt].bolt);
  out.tabs.push_back({out.bolts[bolt].part, where, bolt, tabs, filler, duty, out.en_welds});
}

void weld_end(Assembly& out, const Piece& piece, int end, double at, const EndWeldSpec& weld,
              const std::string& where, double filler) {
  if (!weld.given()) return;
  const PieceBeam& beam = beam_at(piece, end);
  const sections::Shape& shape = end == 0 ? beam.at_a : beam.at_b;
  out.end_welds.push_back({piece.part, where, beam, end, at, half_outside(shape),
                           sections::governing_thickness(shape), weld, piece.material, filler});
}

void thread_end(Assembly& out, const Piece& piece, int end, const ThreadSpec& thread, bool insert) {
  if (!thread.given()) return;
  const sections::Material tapped = insert ? *sections::find_material("A36") : piece.material;
  const std::string basis =
      (insert ? "an insert of steel not given, taken as " : "") + parent_words(tapped);
  out.threads.push_back({piece.part, end == 0 ? "rod end, first end" : "rod end, far end",
                         beam_at(piece, end), end, thread, tapped.tensile, basis});
}

void set_weld_zones(Piece& piece, std::vector<Weld> welds, const sections::Shape& thickest) {
  piece.weld_places = welds;
  if (!piece.material.weakened_by_welding()) return;
  piece.weld_zones = weld_zones(welds, beyond_weld(thickest), piece.center_line);
  piece.welds = std::move(welds);
}

namespace {

/// Whether the end of a run turns in its joint, about any axis.
bool turns(const RunEnd& end) {
  if (!end.joint) return false;
  const auto& about = end.joint->stiffness;
  return std::none_of(about.begin() + 3, about.end(), [](double k) { return std::isinf(k); });
}

/// Where around the piece a weld on its side is, in the axes of the beam it stands on.
/// @throws base::InputError when it is beyond the piece, or on no side of it
Weld weld_on_side(const fea::Model& model, const Piece& piece, const SideWeldOnRun& side) {
  if (!side.key.empty() && side.at > piece.center_line) {
    throw base::InputError(side.key + ".from_start", "it is beyond the end of what it is on");
  }
  const PieceBeam* on = &piece.beams.front();
  for (const PieceBeam& beam : piece.beams) {
    if (beam.starts_at <= side.at + kSamePlace) on = &beam;
  }
  const fea::Vector3 toward_l = fea::member_axes(model, model[on->beam]) * side.toward_g;
  if (!(std::hypot(toward_l.y(), toward_l.z()) > 1.0e-3 * toward_l.norm())) {
    if (side.key.empty()) return {side.at, side.reach};
    throw base::InputError(side.key + ".toward",
                           "it points along the bar; give a direction across");
  }
  const double middle = std::atan2(toward_l.z(), toward_l.y());
  return {side.at, side.reach, side_of_outline(on->at_a, side.width, middle)};
}

}  // namespace

std::size_t Builder::add_run(const RunSpec& spec, const RunEnd& from,
                             const std::vector<RunStop>& through, const RunEnd& to) {
  const sections::Material& steel = spec.stick.material;
  Piece piece{
      .part = spec.part, .name = spec.name, .beams = {}, .material = steel, .duty = spec.duty};
  piece.mass = 0.0;

  std::vector<RunEnd> ends = {from};
  for (const RunStop& stop : through) ends.push_back({stop.node, fea::Vector3::Zero(), {}});
  ends.push_back(to);
  const auto place = [&](const RunEnd& end) -> fea::Vector3 {
    return out_.model[end.node].at_g + end.offset_g;
  };
  const auto is_arc = [&](std::size_t leg) { return leg < through.size() && through[leg].arc; };
  double whole = 0.0;
  for (std::size_t leg = 0; leg + 1 < ends.size(); ++leg) {
    const double length = (place(ends[leg + 1]) - place(ends[leg])).norm();
    if (!(length > kSamePlace)) {
      throw base::InputError(spec.key, "it has no length: its two ends are at the same place");
    }
    whole += length;
  }
  const auto used = [&](const sections::Shape& shape) {
    return sections::used_shape(shape, steel, design_.sizes);
  };
  const Taper taper = spec.shape_at_end
                          ? Taper(used(spec.stick.shape), used(*spec.shape_at_end), steel.poisson)
                          : Taper(used(spec.stick.shape), steel.poisson);
  const bool bent =
      std::any_of(through.begin(), through.end(), [](const RunStop& stop) { return stop.arc; });
  const BendFactors at_bends =
      bent ? bend_factors(spec, taper, out_.inches, piece.notes) : BendFactors{};
  if (spec.shape_at_end) piece.notes.push_back(taper.note());
  // The beam that carries the normal force beside an offset shear center stays straight between its
  // ends: more of them follow the bow.
  constexpr int kStraightBeams = 12;
  const bool offset = has_offset_shear_center(taper.props(0.5));
  const auto n_beams = [&](double straight, bool held) {
    const int own = spec.pieces ? *spec.pieces
                    : straights_ == Straights::in_four
                        ? 4
                        : beams_of_straight(taper.props(0.5), steel, straight, held);
    return std::max({own, taper.pieces(), offset ? kStraightBeams : 1});
  };
  const std::string name =
      spec.name.empty() ? spec.part : fmt::format("{}, {}", spec.part, spec.name);
  std::vector<Weld> welds;
  if (spec.welds.start) welds.push_back({0.0, *spec.welds.start});
  double at = 0.0;
  fea::Vector3 z_g = fea::Vector3::UnitZ();      // the section's, on the leg before
  fea::Vector3 along_g = fea::Vector3::UnitX();  // that leg's direction
  for (std::size_t leg = 0; leg + 1 < ends.size(); ++leg) {
    const fea::Vector3 start = place(ends[leg]);
    const fea::Vector3 end = place(ends[leg + 1]);
    const double length = (end - start).norm();
    const bool held = !turns(ends[leg]) && !turns(ends[leg + 1]);
    const int n = is_arc(leg) ? 1 : n_beams(length, held);
    RunEnd last = ends[leg];
    for (int i = 1; i <= n; ++i) {
      const RunEnd next =
          i == n ? ends[leg + 1]
                 : RunEnd{add_node(start + (end - start) * (i / static_cast<double>(n)), name,
                                   spec.key),
                          fea::Vector3::Zero(),
                          {}};
      const double from_part = (at + length * (i - 1) / n) / whole;
      const double to_part = (at + length * i / n) / whole;
      sections::AreaProps section = taper.props(0.5 * (from_part + to_part));
      section.torsion *= spec.torsion_share;
      if (is_arc(leg)) {
        section.iyy /= at_bends.give;
        section.izz /= at_bends.give;
      }
      piece.mass += length / n * section.area * steel.density;
      fea::Beam beam{.a = beam_end(last),
                     .b = beam_end(next),
                     .section = section,
                     .elastic = {steel.elastic, steel.shear_modulus()},
                     .density = steel.density,
                     .z_toward_g = spec.z_toward_g,
                     .name = name};
      if (leg > 0) beam.z_toward_g = carried_round(z_g, along_g, end - start);
      const fea::Matrix3 axes_lg = fea::member_axes(out_.model, beam);
      if (from.own_axes && leg == 0 && i == 1) beam.a.joint->axes_g = axes_lg.transpose();
      if (to.own_axes && leg + 2 == ends.size() && i == n) {
        beam.b.joint->axes_g = axes_lg.transpose();
      }
      if (i == n) {
        z_g = axes_lg.row(2);
        along_g = end - start;
      }
      piece.beams.push_back(
          add_section_beam(beam, taper.shape(from_part), taper.shape(to_part), spec.part));
      piece.beams.back().curved = is_arc(leg) ? at_bends.stress : 1.0;
      piece.beams.back().starts_at = at + length * (i - 1) / n;
      last = next;
      last.joint.reset();
    }
    at += length;
    if (leg < through.size() && through[leg].weld) welds.push_back({at, *through[leg].weld});
  }
  if (spec.welds.end) welds.push_back({whole, *spec.welds.end});
  if (!spec.welded) welds.clear();
  // Where it is welded besides is not known: all of it is a zone already.
  const bool zone_is_all = spec.welded && welds.empty();
  piece.center_line = whole;
  for (const SideWeldOnRun& side : spec.side_welds) {
    const Weld weld = weld_on_side(out_.model, piece, side);
    if (!zone_is_all) welds.push_back(weld);
  }
  if (spec.welded || !welds.empty()) set_weld_zones(piece, std::move(welds), thicker_end(taper));
  piece.length = (place(ends.back()) - place(ends.front())).norm();
  out_.pieces.push_back(std::move(piece));
  return out_.pieces.size() - 1;
}

}  // namespace parts
