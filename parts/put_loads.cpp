#include "parts/put_loads.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "loads/vehicle.hpp"

namespace parts {
namespace {

fea::Vector3 vector(const std::array<double, 3>& a) {
  return {a[0], a[1], a[2]};
}

/// On the rigid axle: at the wheel's center, with the moment of the point the ground pushes at.
fea::NodeLoad wheel_load(const Assembly& assembly, const loads::Vehicle& vehicle,
                         const loads::Push& push) {
  const bool left = push.role == loads::Role::left_contact || push.role == loads::Role::left_hub;
  const bool contact =
      push.role == loads::Role::left_contact || push.role == loads::Role::right_contact;
  const fea::Vector3 force = vector(push.force);
  const fea::Vector3 arm(0.0, 0.0, contact ? -vehicle.tire_radius : 0.0);
  return {.node = *assembly.axle,
          .offset_g = {0.0, left ? 0.5 * vehicle.track : -0.5 * vehicle.track, 0.0},
          .force_g = force,
          .moment_g = arm.cross(force)};
}

/// The middle of the lateral link along its run of beams.
fea::BeamPointLoad midspan_load(const Assembly& assembly, const loads::Push& push) {
  const auto link = std::find_if(assembly.pieces.begin(), assembly.pieces.end(),
                                 [](const Piece& p) { return p.part == "lateral_link"; });
  const PieceBeam& middle = link->beams[link->beams.size() / 2];
  // On the line of centroids, which a channel's or an angle's beam does not run along.
  const fea::BeamId beam = middle.axial.value_or(middle.beam);
  return {.beam = beam, .at = 0.0, .force_g = vector(push.force), .moment_g = {0.0, 0.0, 0.0}};
}

/// Static wheel loads are carried by the coils at ride height: half each, less the axle's weight.
void add_ride_height(fea::Loads& out, const Assembly& assembly, const loads::Vehicle& vehicle) {
  const double unsprung = std::isnan(vehicle.unsprung_weight) ? 0.0 : vehicle.unsprung_weight;
  const double preload = 0.5 * (vehicle.axle_weight - unsprung);
  for (const BumpStop& seat : assembly.stops) {
    out.nodes.push_back({.node = *assembly.axle,
                         .offset_g = seat.offset_g,
                         .force_g = {0.0, 0.0, -preload},
                         .moment_g = {0.0, 0.0, 0.0}});
  }
  out.nodes.push_back({.node = *assembly.axle,
                       .offset_g = {0.0, 0.0, 0.0},
                       .force_g = {0.0, 0.0, -unsprung},
                       .moment_g = {0.0, 0.0, 0.0}});
}

void add_pushes(fea::Loads& out, const Assembly& assembly, const loads::Vehicle& vehicle,
                const std::vector<loads::Push>& pushes) {
  double lateral = 0.0;
  for (const loads::Push& push : pushes) {
    if (push.role == loads::Role::link_midspan) {
      out.points.push_back(midspan_load(assembly, push));
    } else if (assembly.axle) {
      out.nodes.push_back(wheel_load(assembly, vehicle, push));
    } else {
      lateral += push.force[1];
    }
  }
  if (assembly.link_axle_end) {
    out.nodes.push_back({.node = *assembly.link_axle_end,
                         .offset_g = {0.0, 0.0, 0.0},
                         .force_g = {0.0, lateral, 0.0},
                         .moment_g = {0.0, 0.0, 0.0}});
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

/// Puts everything of one kind that the case file gives into the load case it names.
template <class T>
void gather(std::vector<DesignCase>& cases, const std::vector<Named<T>>& all,
            std::vector<Named<T>> DesignCase::*kind) {
  for (const Named<T>& one : all) {
    const GivenCase& given = one.value.given;
    auto found = std::find_if(cases.begin(), cases.end(),
                              [&](const DesignCase& c) { return c.name == given.load_case; });
    if (found == cases.end()) {
      cases.push_back({.name = given.load_case,
                       .abuse = !given.routine,
                       .basis = "loads given in the case file",
                       .pushes = {},
                       .forces = {}});
      found = cases.end() - 1;
    }
    ((*found).*kind).push_back(one);
    found->abuse = found->abuse && !given.routine;
  }
}

const Piece& member_piece(const Assembly& assembly, const std::string& name,
                          const std::string& key) {
  for (const auto& [member, index] : assembly.members) {
    if (member == name) return assembly.pieces[index];
  }
  throw base::InputError(key, "there is no member `" + name + "`");
}

double beam_length(const Assembly& assembly, const PieceBeam& beam) {
  return fea::length(assembly.model, assembly.model[beam.beam]);
}

/// Loads on a member act at the section's centroid.
fea::BeamId loaded_axis(const PieceBeam& beam) {
  return beam.axial.value_or(beam.beam);
}

double center_line(const Assembly& assembly, const Piece& piece) {
  double sum = 0.0;
  for (const PieceBeam& beam : piece.beams) sum += beam_length(assembly, beam);
  return sum;
}

/// @throws base::InputError when `at` is beyond the end of the member
void require_on(double at, double whole, const std::string& key) {
  if (at <= whole * (1.0 + 1.0e-9)) return;
  throw base::InputError(key, fmt::format("{:.4g} mm is beyond the member, whose center line is "
                                          "{:.4g} mm long",
                                          1000.0 * at, 1000.0 * whole));
}

void add_force(fea::Loads& out, const Assembly& assembly, const Named<PlainForce>& named) {
  const PlainForce& force = named.value;
  const std::string key = "forces." + named.name;
  if (force.on.empty()) {
    out.nodes.push_back({.node = node_of(assembly, force.at),
                         .offset_g = {0.0, 0.0, 0.0},
                         .force_g = vector(force.force),
                         .moment_g = vector(force.moment)});
    return;
  }
  const Piece& piece = member_piece(assembly, force.on, key + ".on");
  require_on(force.from_start, center_line(assembly, piece), key + ".from_start");
  double at = force.from_start;
  std::size_t i = 0;
  for (; i + 1 < piece.beams.size() && at > beam_length(assembly, piece.beams[i]); ++i) {
    at -= beam_length(assembly, piece.beams[i]);
  }
  out.points.push_back({.beam = loaded_axis(piece.beams[i]),
                        .at = std::min(at, beam_length(assembly, piece.beams[i])),
                        .force_g = vector(force.force),
                        .moment_g = vector(force.moment)});
}

void add_line(fea::Loads& out, const Assembly& assembly, const Named<LineLoad>& named) {
  const LineLoad& line = named.value;
  const std::string key = "line_loads." + named.name;
  const Piece& piece = member_piece(assembly, line.on, key + ".on");
  const double whole = center_line(assembly, piece);
  const double to = std::isnan(line.to) ? whole : line.to;
  require_on(line.from, whole, key + ".from");
  require_on(to, whole, key + ".to");
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
      out.lines.push_back({.beam = loaded_axis(beam),
                           .from = a - start,
                           .to = std::min(b - start, length),
                           .at_from_g = force_at(a),
                           .at_to_g = force_at(b)});
    }
    start += length;
  }
}

/// Heat and wrong fit of a member; its depth is taken as twice I / S.
void add_strain(fea::Loads& out, const Assembly& assembly, const Named<GivenStrain>& named) {
  const GivenStrain& given = named.value;
  const Piece& piece = member_piece(assembly, given.on, "strains." + named.name + ".on");
  const double fit = given.too_long / center_line(assembly, piece);
  for (const PieceBeam& beam : piece.beams) {
    const sections::AreaProps section = sections::area_props(beam.at_a);
    const double depth = 2.0 * section.iyy / section.modulus_y;
    out.strains.push_back(
        {.beam = loaded_axis(beam), .stretch = given.expansion * given.warmer + fit});
    out.strains.push_back(
        {.beam = beam.beam, .bend_y = given.expansion * given.warmer_on_top / depth});
  }
}

void add_settlement(fea::Loads& out, const Assembly& assembly, const Named<Settlement>& named) {
  fea::Vector6 by_g;
  by_g << vector(named.value.along), vector(named.value.about);
  const auto held = std::find_if(assembly.held.begin(), assembly.held.end(),
                                 [&](const NamedNode& n) { return n.name == named.value.at; });
  if (held == assembly.held.end()) {
    throw base::InputError("settlements." + named.name + ".at",
                           "no support holds `" + named.value.at + "`");
  }
  out.moves.push_back({.node = held->node, .by_g = by_g});
}

}  // namespace

std::vector<DesignCase> design_cases(const Design& design) {
  std::vector<DesignCase> cases;
  if (design.vehicle) {
    const std::vector<std::string> names =
        design.load_cases.empty() ? default_load_cases(design) : design.load_cases;
    for (loads::LoadCase& c : loads::built_in_cases(to_vehicle(*design.vehicle), names)) {
      cases.push_back({.name = c.name,
                       .abuse = c.severity == loads::Severity::abuse,
                       .basis = c.basis,
                       .pushes = std::move(c.pushes),
                       .forces = {}});
    }
  }
  gather(cases, design.forces, &DesignCase::forces);
  gather(cases, design.line_loads, &DesignCase::line_loads);
  gather(cases, design.strains, &DesignCase::strains);
  gather(cases, design.settlements, &DesignCase::settlements);
  gather(cases, design.self_weight, &DesignCase::self_weight);
  return cases;
}

fea::Loads put(const Assembly& assembly, const Design& design, const DesignCase& load_case) {
  fea::Loads out;
  if (!load_case.pushes.empty()) {
    const loads::Vehicle vehicle = to_vehicle(*design.vehicle);
    if (assembly.axle) add_ride_height(out, assembly, vehicle);
    add_pushes(out, assembly, vehicle, load_case.pushes);
  }
  for (const Named<PlainForce>& force : load_case.forces) add_force(out, assembly, force);
  for (const Named<LineLoad>& line : load_case.line_loads) add_line(out, assembly, line);
  for (const Named<GivenStrain>& strain : load_case.strains) add_strain(out, assembly, strain);
  for (const Named<Settlement>& move : load_case.settlements) add_settlement(out, assembly, move);
  for (const Named<SelfWeight>& weight : load_case.self_weight) {
    out.gravity_g += base::kGravity * vector(weight.value.times);
  }
  return out;
}

}  // namespace parts
