#include "parts/put_loads.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>

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
  for (const Named<PlainForce>& force : design.forces) {
    auto found = std::find_if(cases.begin(), cases.end(),
                              [&](const DesignCase& c) { return c.name == force.value.load_case; });
    if (found == cases.end()) {
      cases.push_back({.name = force.value.load_case,
                       .abuse = !force.value.routine,
                       .basis = "forces given in the case file",
                       .pushes = {},
                       .forces = {}});
      found = cases.end() - 1;
    }
    found->forces.push_back(force);
    found->abuse = found->abuse && !force.value.routine;
  }
  return cases;
}

fea::Loads put(const Assembly& assembly, const Design& design, const DesignCase& load_case) {
  fea::Loads out;
  if (!load_case.pushes.empty()) {
    const loads::Vehicle vehicle = to_vehicle(*design.vehicle);
    if (assembly.axle) add_ride_height(out, assembly, vehicle);
    add_pushes(out, assembly, vehicle, load_case.pushes);
  }
  for (const Named<PlainForce>& force : load_case.forces) {
    out.nodes.push_back({.node = node_of(assembly, force.value.at),
                         .offset_g = {0.0, 0.0, 0.0},
                         .force_g = vector(force.value.force),
                         .moment_g = vector(force.value.moment)});
  }
  return out;
}

}  // namespace parts
