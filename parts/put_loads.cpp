#include "parts/put_loads.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "parts/arm_twist.hpp"
#include "parts/length_words.hpp"

namespace parts {
namespace {

using loads::Role;

fea::Vector3 vector(const std::array<double, 3>& a) {
  return {a[0], a[1], a[2]};
}

bool is_wheel(Role role) {
  return role == Role::left_contact || role == Role::right_contact || role == Role::left_hub ||
         role == Role::right_hub;
}

/// On the rigid axle: at the wheel's center, with the moment of the point the ground pushes at. On
/// a knuckle at its kingpin, with the moment of that point about it: where the ground pushes does
/// not follow the small angle that play in the bushings steers, and a tire would find its own way.
NamedLoad wheel_load(const Assembly& assembly, const loads::Vehicle& vehicle,
                     const loads::Push& push) {
  const bool left = push.role == Role::left_contact || push.role == Role::left_hub;
  const bool contact = push.role == Role::left_contact || push.role == Role::right_contact;
  const fea::Vector3 force = vector(push.force);
  const double out = left ? 0.5 * vehicle.track : -0.5 * vehicle.track;
  const std::optional<fea::NodeId> knuckle = assembly.knuckles[left ? 0 : 1];
  const fea::NodeId node = knuckle.value_or(axle_near(assembly, out));
  fea::NodeLoad load{.node = node,
                     .offset_g = {0.0, out - assembly.model[node].at_g.y(), 0.0},
                     .force_g = force,
                     .moment_g = vector(push.moment)};
  fea::Vector3 arm(0.0, 0.0, contact ? -vehicle.tire_radius : 0.0);
  if (knuckle) {
    load.offset_g.setZero();
    arm.y() = out - assembly.model[*knuckle].at_g.y();
  }
  load.moment_g += arm.cross(force);
  return {left ? "left wheel" : "right wheel", load};
}

fea::NodeLoad at_axle_center(const Assembly& assembly, const fea::Vector3& force,
                             const fea::Vector3& moment) {
  return {
      .node = *assembly.axle, .offset_g = {0.0, 0.0, 0.0}, .force_g = force, .moment_g = moment};
}

/// What turns a knuckle about its kingpin.
NamedLoad knuckle_load(const Assembly& assembly, bool left, const fea::Vector3& moment) {
  const std::optional<fea::NodeId> knuckle = assembly.knuckles[left ? 0 : 1];
  INVARIANT(knuckle.has_value());
  return {left ? "left wheel, held by the ground" : "right wheel, held by the ground",
          fea::NodeLoad{.node = *knuckle,
                        .offset_g = {0.0, 0.0, 0.0},
                        .force_g = {0.0, 0.0, 0.0},
                        .moment_g = moment}};
}

/// The gear pushes with all its torque: the ground holds the wheel farther from the drag link.
NamedLoad wedged_wheel(const Assembly& assembly, const Design& design, const loads::Push& push) {
  return knuckle_load(assembly, drag_link_side(design) < 0.0,
                      {0.0, 0.0, wedged_wheel_moment(design, push.force[1])});
}

double beam_length(const Assembly& assembly, const PieceBeam& beam) {
  return fea::length(assembly.model, assembly.model[beam.beam]);
}

/// Loads on a member act at the section's centroid.
fea::BeamId loaded_axis(const PieceBeam& beam) {
  return beam.axial.value_or(beam.beam);
}

double center_line(const Assembly& assembly, const std::vector<PieceBeam>& run) {
  double sum = 0.0;
  for (const PieceBeam& beam : run) sum += beam_length(assembly, beam);
  return sum;
}

/// A load anywhere along a run of beams.
fea::BeamPointLoad point_load(const Assembly& assembly, const std::vector<PieceBeam>& run,
                              double from_start, const fea::Vector3& force,
                              const fea::Vector3& moment) {
  double at = from_start;
  std::size_t i = 0;
  for (; i + 1 < run.size() && at > beam_length(assembly, run[i]); ++i) {
    at -= beam_length(assembly, run[i]);
  }
  return {.beam = loaded_axis(run[i]),
          .at = std::min(at, beam_length(assembly, run[i])),
          .force_g = force,
          .moment_g = moment};
}

/// The middle of the lateral link along its run of beams.
NamedLoad link_load(const Assembly& assembly, const loads::Push& push) {
  const auto link = std::find_if(assembly.pieces.begin(), assembly.pieces.end(),
                                 [](const Piece& p) { return p.part == "lateral_link"; });
  INVARIANT(link != assembly.pieces.end());
  return {"rock, under the lateral link",
          fea::BeamPointLoad{.beam = loaded_axis(link->beams[link->beams.size() / 2]),
                             .at = 0.0,
                             .force_g = vector(push.force),
                             .moment_g = {0.0, 0.0, 0.0}}};
}

/// The middle of an arm's lower tube, axle bolt to frame joint.
NamedLoad arm_load(const Assembly& assembly, const Design& design, const loads::Push& push) {
  const bool left = push.role == Role::left_arm_midspan;
  INVARIANT(design.arm->mirror || arm_is_left(design) == left);
  const std::string part = design.arm->mirror ? (left ? "arm, left" : "arm, right") : "arm";
  std::vector<PieceBeam> run;
  for (const Piece& piece : assembly.pieces) {
    if (piece.part != part || piece.name.rfind("lower tube", 0) != 0) continue;
    run.insert(run.end(), piece.beams.begin(), piece.beams.end());
  }
  INVARIANT(!run.empty());
  return {left ? "rock, under the left arm" : "rock, under the right arm",
          point_load(assembly, run, 0.5 * center_line(assembly, run), vector(push.force),
                     fea::Vector3::Zero())};
}

/// Static wheel loads are carried by the coils at ride height: half each, less the axle's weight.
void add_ride_height(std::vector<NamedLoad>& out, const Assembly& assembly,
                     const loads::Vehicle& vehicle) {
  const double unsprung = std::isnan(vehicle.unsprung_weight) ? 0.0 : vehicle.unsprung_weight;
  for (const CoilSeat& seat : assembly.coil_seats) {
    out.push_back({seat.name,
                   fea::NodeLoad{.node = seat.node,
                                 .offset_g = seat.offset_g,
                                 .force_g = {0.0, 0.0, -seat.preload},
                                 .moment_g = {0.0, 0.0, 0.0}},
                   true});
  }
  out.push_back({"axle and wheels, weight",
                 at_axle_center(assembly, {0.0, 0.0, -unsprung}, {0.0, 0.0, 0.0})});
}

void add_pushes(std::vector<NamedLoad>& out, const Assembly& assembly, const Design& design,
                const std::vector<loads::Push>& pushes) {
  double lateral = 0.0;
  for (const loads::Push& push : pushes) {
    switch (push.role) {
      case Role::link_midspan:
        out.push_back(link_load(assembly, push));
        break;
      case Role::left_arm_midspan:
      case Role::right_arm_midspan:
        out.push_back(arm_load(assembly, design, push));
        break;
      case Role::left_knuckle:
      case Role::right_knuckle:
        out.push_back(knuckle_load(assembly, push.role == Role::left_knuckle, vector(push.moment)));
        break;
      case Role::pitman_end:
        out.push_back(wedged_wheel(assembly, design, push));
        break;
      default:
        if (!assembly.axle) {
          lateral += push.force[1];
        } else if (is_wheel(push.role)) {
          out.push_back(wheel_load(assembly, vehicle_of(design), push));
        } else {
          INVARIANT(push.role == Role::axle_center);
          out.push_back(
              {push.what, at_axle_center(assembly, vector(push.force), vector(push.moment))});
        }
    }
  }
  if (assembly.link_axle_end) {
    out.push_back({"axle, across the truck", fea::NodeLoad{.node = *assembly.link_axle_end,
                                                           .offset_g = {0.0, 0.0, 0.0},
                                                           .force_g = {0.0, lateral, 0.0},
                                                           .moment_g = {0.0, 0.0, 0.0}}});
  }
}

fea::NodeId node_of(const Assembly& assembly, const std::string& point) {
  const auto found = std::find_if(assembly.points.begin(), assembly.points.end(),
                                  [&](const NamedNode& p) { return p.name == point; });
  if (found == assembly.points.end()) {
    throw base::InputError("forces", "no part has a point `" + point + "`");
  }
  return found->node;
}

const Piece& member_piece(const Assembly& assembly, const std::string& name,
                          const std::string& key) {
  for (const auto& [member, index] : assembly.members) {
    if (member == name) return assembly.pieces[index];
  }
  throw base::InputError(key, "there is no member `" + name + "`");
}

/// @throws base::InputError when `at` is beyond the end of the member
void require_on(double at, double whole, const std::string& key, bool inches) {
  if (at <= whole * (1.0 + 1.0e-9)) return;
  throw base::InputError(key, fmt::format("{} is beyond the member, whose center line is {} long",
                                          length_words(at, inches), length_words(whole, inches)));
}

NamedLoad given_force(const Assembly& assembly, const Named<PlainForce>& named) {
  const PlainForce& force = named.value;
  const std::string key = "forces." + named.name;
  if (force.on.empty()) {
    return {fmt::format("force at {}", force.at), fea::NodeLoad{.node = node_of(assembly, force.at),
                                                                .offset_g = {0.0, 0.0, 0.0},
                                                                .force_g = vector(force.force),
                                                                .moment_g = vector(force.moment)}};
  }
  const Piece& piece = member_piece(assembly, force.on, key + ".on");
  require_on(force.from_start, center_line(assembly, piece.beams), key + ".from_start",
             assembly.inches);
  return {fmt::format("force on {}", force.on),
          point_load(assembly, piece.beams, force.from_start, vector(force.force),
                     vector(force.moment))};
}

void add_line(std::vector<NamedLoad>& out, const Assembly& assembly, const Named<LineLoad>& named) {
  const LineLoad& line = named.value;
  const std::string key = "line_loads." + named.name;
  const Piece& piece = member_piece(assembly, line.on, key + ".on");
  const double whole = center_line(assembly, piece.beams);
  const double to = std::isnan(line.to) ? whole : line.to;
  require_on(line.from, whole, key + ".from", assembly.inches);
  require_on(to, whole, key + ".to", assembly.inches);
  if (!(to > line.from)) throw base::InputError(key + ".to", "it ends before it starts");
  fea::Vector3 end_force = vector(line.end_force);
  for (int i = 0; i < 3; ++i) {
    if (std::isnan(end_force(i))) end_force(i) = line.force[static_cast<std::size_t>(i)];
  }
  const auto force_at = [&](double s) -> fea::Vector3 {
    const double part = (s - line.from) / (to - line.from);
    return (1.0 - part) * vector(line.force) + part * end_force;
  };
  double start = 0.0;
  for (const PieceBeam& beam : piece.beams) {
    const double length = beam_length(assembly, beam);
    const double a = std::max(line.from, start);
    const double b = std::min(to, start + length);
    if (b > a) {
      out.push_back({fmt::format("line load on {}", line.on),
                     fea::BeamLineLoad{.beam = loaded_axis(beam),
                                       .from = a - start,
                                       .to = std::min(b - start, length),
                                       .at_from_g = force_at(a),
                                       .at_to_g = force_at(b)}});
    }
    start += length;
  }
}

/// Heat and wrong fit of a member; its depth is taken as twice I / S.
void add_strain(std::vector<NamedLoad>& out, const Assembly& assembly,
                const Named<GivenStrain>& named) {
  const GivenStrain& given = named.value;
  const Piece& piece = member_piece(assembly, given.on, "strains." + named.name + ".on");
  const std::string what = "heat or fit of " + given.on;
  const double fit = given.too_long / center_line(assembly, piece.beams);
  for (const PieceBeam& beam : piece.beams) {
    const sections::AreaProps section = sections::area_props(beam.at_a);
    const double depth = 2.0 * section.iyy / section.modulus_y;
    out.push_back({what, fea::BeamStrain{.beam = loaded_axis(beam),
                                         .stretch = given.expansion * given.warmer + fit}});
    out.push_back({what, fea::BeamStrain{.beam = beam.beam,
                                         .bend_y = given.expansion * given.warmer_on_top / depth}});
  }
}

NamedLoad settlement(const Assembly& assembly, const Named<Settlement>& named) {
  fea::Vector6 by_g;
  by_g << vector(named.value.along), vector(named.value.about);
  const auto held = std::find_if(assembly.held.begin(), assembly.held.end(),
                                 [&](const NamedNode& n) { return n.name == named.value.at; });
  if (held == assembly.held.end()) {
    throw base::InputError("settlements." + named.name + ".at",
                           "no support holds `" + named.value.at + "`");
  }
  return {"support moved at " + named.value.at, fea::SupportMove{.node = held->node, .by_g = by_g}};
}

void add_to(fea::Loads& out, const fea::NodeLoad& load) {
  out.nodes.push_back(load);
}
void add_to(fea::Loads& out, const fea::BeamPointLoad& load) {
  out.points.push_back(load);
}
void add_to(fea::Loads& out, const fea::BeamLineLoad& load) {
  out.lines.push_back(load);
}
void add_to(fea::Loads& out, const fea::BeamStrain& load) {
  out.strains.push_back(load);
}
void add_to(fea::Loads& out, const fea::SupportMove& load) {
  out.moves.push_back(load);
}
void add_to(fea::Loads& out, const OwnWeight& load) {
  out.gravity_g += load.gravity_g;
}

}  // namespace

std::vector<NamedLoad> named_loads(const Assembly& assembly, const Design& design,
                                   const DesignCase& load_case) {
  std::vector<NamedLoad> out;
  if (!load_case.pushes.empty()) {
    if (assembly.axle) add_ride_height(out, assembly, vehicle_of(design));
    add_pushes(out, assembly, design, load_case.pushes);
  }
  for (const auto& force : load_case.forces) out.push_back(given_force(assembly, force));
  for (const auto& line : load_case.line_loads) add_line(out, assembly, line);
  for (const auto& strain : load_case.strains) add_strain(out, assembly, strain);
  for (const auto& move : load_case.settlements) out.push_back(settlement(assembly, move));
  for (const auto& weight : load_case.self_weight) {
    out.push_back({"own weight", OwnWeight{base::kGravity * vector(weight.value.times)}});
  }
  return out;
}

fea::Loads put(const Assembly& assembly, const Design& design, const DesignCase& load_case) {
  fea::Loads out;
  for (const NamedLoad& named : named_loads(assembly, design, load_case)) {
    std::visit([&](const auto& load) { add_to(out, load); }, named.load);
  }
  return out;
}

}  // namespace parts
