#include "studies/joint_criterion.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "checks/saddle_weld.hpp"
#include "checks/weld_group.hpp"
#include "parts/piece_forces.hpp"

namespace studies {
namespace {

/// The direction of the force in the tab's plane, which is not known, that loads the weld most:
/// from along the root to square off it, pulled or pushed, by 5 degrees (0.1 % of the largest).
/// @param at  the bolt
checks::Wrench worst_way(const checks::WeldGroup& group, const TabForce& force,
                         const Eigen::Vector3d& at) {
  constexpr double kStep = 5.0 * base::kDegree;
  checks::Wrench worst;
  double most = -1.0;
  for (int i = -18; i <= 18; ++i) {
    const checks::Wrench wrench{.force = {force.across, force.in_plane * std::cos(kStep * i),
                                          force.in_plane * std::sin(kStep * i)},
                                .moment = Eigen::Vector3d::Zero(),
                                .at = at};
    const std::optional<checks::ThroatStress> stress = checks::worst_throat_stress(group, wrench);
    const double here = stress ? stress->resultant : base::kUnset;
    if (here <= most) continue;
    most = here;
    worst = wrench;
    if (!stress) break;
  }
  return worst;
}

/// What is cut through at an end's weld.
sections::Resultants cut_at_weld(const parts::EndWeld& weld, const fea::Solution& solution) {
  const double length = solution.stations(weld.beam.beam).back();
  const double from_end = std::min(weld.at, length);
  return parts::forces_at(weld.beam, solution, weld.end == 0 ? from_end : length - from_end);
}

/// What acts across the tabs: what the frame says, and a share of the rest.
double across_tabs(const parts::TabbedJoint& joint, const BoltForce& force) {
  return force.along + joint.tabs.side_force * force.across;
}

}  // namespace

int tabs_that_carry(const parts::TabbedJoint& joint, const parts::Assembly& assembly) {
  return assembly.bolts[joint.bolt].bolt.double_shear ? joint.tabs.plates.count : 1;
}

fea::Vector3 end_force_g(const parts::PieceBeam& beam, int end, const fea::Solution& solution) {
  const fea::Vector12 ends = parts::end_forces(beam, solution);
  return solution.axes(beam.beam).transpose() * ends.segment<3>(6 * end);
}

BoltForce bolt_force(const parts::BoltedJoint& joint, const fea::Solution& solution) {
  const fea::Vector3 force_g =
      joint.spring
          ? fea::Vector3(joint.spring_axes_g * solution.spring_force(*joint.spring).head<3>())
          : end_force_g(joint.beam, joint.end, solution);
  const double along = joint.along ? force_g[static_cast<int>(*joint.along)] : 0.0;
  return {std::sqrt(std::max(0.0, force_g.squaredNorm() - along * along)), std::abs(along)};
}

checks::TabInput tab_input(const parts::TabbedJoint& joint, const parts::Assembly& assembly,
                           const fea::Solution& solution) {
  const parts::TabSpec& tabs = joint.tabs;
  const sections::BoltThread& thread = assembly.bolts[joint.bolt].bolt.thread;
  return {.plate = {.thickness = tabs.plates.thickness,
                    .bolt = thread.diameter,
                    .hole = thread.standard_hole(),
                    .ahead = tabs.edge,
                    .beside = tabs.edge,
                    .yield = tabs.plates.material.yield,
                    .tensile = tabs.plates.material.tensile},
          .plates = tabs_that_carry(joint, assembly),
          .force = bolt_force(assembly.bolts[joint.bolt], solution).across,
          .off = tabs.plates.count == 1 ? tabs.off : 0.0,
          .strength_basis = parts::parent_words(tabs.plates.material)};
}

checks::TabRootInput tab_root_input(const parts::TabbedJoint& joint,
                                    const parts::Assembly& assembly,
                                    const fea::Solution& solution) {
  const parts::TabSpec& tabs = joint.tabs;
  const BoltForce force = bolt_force(assembly.bolts[joint.bolt], solution);
  return {.plates = tabs_that_carry(joint, assembly),
          .thickness = tabs.plates.thickness,
          .width = tabs.root_width(),
          .height = tabs.height,
          .off = tabs.plates.count == 1 ? tabs.off : 0.0,
          .force = force.across,
          .side = across_tabs(joint, force),
          .yield = tabs.plates.material.haz_yield,
          .strength_basis = parts::weld_zone_words(tabs.plates.material)};
}

checks::WeldInput tab_weld_of(const parts::TabbedJoint& joint, const TabForce& force) {
  const parts::TabSpec& tabs = joint.tabs;
  const double off = tabs.plates.count == 1 && tabs.off > 0.0 ? tabs.off : 0.0;
  const double half = 0.5 * tabs.root_width();
  // x along the bolt, y along the tab's root, z from the weld to the bolt.
  checks::WeldGroup group{.lines = {}, .filler_tensile = joint.filler};
  for (const double side : {-0.5, 0.5}) {
    if (side < 0.0 && !tabs.weld.both_sides) continue;
    const double x = side * tabs.plates.thickness;
    group.lines.push_back({{x, -half, 0.0}, {x, half, 0.0}, tabs.weld.leg});
  }
  const checks::Wrench wrench = worst_way(group, force, {off, 0.0, tabs.height});
  return {.group = std::move(group),
          .wrench = wrench,
          .thinner_part = tabs.plates.thickness,
          .edge = base::kUnset};
}

checks::WeldInput tab_weld_input(const parts::TabbedJoint& joint, const parts::Assembly& assembly,
                                 const fea::Solution& solution) {
  const BoltForce force = bolt_force(assembly.bolts[joint.bolt], solution);
  const double count = tabs_that_carry(joint, assembly);
  return tab_weld_of(joint, {across_tabs(joint, force) / count, force.across / count});
}

checks::WeldInput end_weld_input(const parts::EndWeld& weld, const fea::Solution& solution) {
  const sections::Resultants cut = cut_at_weld(weld, solution);
  const checks::Wrench wrench{.force = {cut.n, cut.vy, cut.vz},
                              .moment = {cut.t, cut.my, cut.mz},
                              .at = Eigen::Vector3d::Zero()};
  const double leg = weld.weld.leg;
  checks::WeldInput input{.group = {.lines = {}, .filler_tensile = weld.filler},
                          .wrench = wrench,
                          .thinner_part = weld.thinner,
                          .edge = base::kUnset};
  if (!(weld.weld.around > 0.0)) {
    input.group.lines =
        checks::ring_weld(Eigen::Vector3d::Zero(), Eigen::Vector3d::UnitX(), weld.radius, leg);
    return input;
  }
  const std::vector<checks::WeldLine> along_z =
      checks::saddle_weld(weld.radius, 0.5 * weld.weld.around, leg);
  checks::WeldGroup along_y{.lines = along_z, .filler_tensile = weld.filler};
  for (checks::WeldLine& line : along_y.lines) {
    std::swap(line.from.y(), line.from.z());
    std::swap(line.to.y(), line.to.z());
  }
  input.group.lines = along_z;
  const auto stress_of = [&](const checks::WeldGroup& group) {
    return checks::worst_throat_stress(group, wrench)->resultant;
  };
  if (stress_of(along_y) > stress_of(input.group)) input.group = along_y;
  input.uneven = checks::uneven_saddle(leg, weld.thinner);
  input.skewed = true;
  return input;
}

checks::RosetteInput rosette_input(const parts::EndWeld& weld, const fea::Solution& solution) {
  const sections::Resultants cut = cut_at_weld(weld, solution);
  return {.count = weld.weld.rosettes,
          .hole = weld.weld.rosette,
          .outside = 2.0 * weld.radius,
          .wall = weld.thinner,
          .filler_tensile = weld.filler,
          .axial = std::abs(cut.n),
          .across = std::hypot(cut.vy, cut.vz),
          .torque = std::abs(cut.t),
          .bending = std::hypot(cut.my, cut.mz)};
}

checks::BoltSlipInput slip_input(const parts::BoltedJoint& joint, const fea::Solution& solution) {
  const BoltForce force = bolt_force(joint, solution);
  return {.thread = joint.bolt.thread,
          .grade = joint.bolt.grade,
          .planes = joint.bolt.double_shear ? 2 : 1,
          .shear = force.across,
          .tension = force.along};
}

checks::ThreadedShankInput shank_input(const parts::ThreadedJoint& joint,
                                       const fea::Solution& solution) {
  const fea::Vector3 force = parts::end_forces(joint.beam, solution).segment<3>(6 * joint.end);
  return {.thread = joint.thread.thread,
          .yield = joint.thread.yield,
          .axial = std::abs(force.x()),
          .across = std::hypot(force.y(), force.z()),
          .out = joint.thread.out};
}

checks::ThreadEngagementInput engagement_input(const parts::ThreadedJoint& joint,
                                               const fea::Solution& solution) {
  const fea::Vector3 force = parts::end_forces(joint.beam, solution).segment<3>(6 * joint.end);
  return {.thread = joint.thread.thread,
          .engaged = joint.thread.engaged,
          .tensile = joint.tapped_tensile,
          .strength_basis = joint.tapped_basis,
          .axial = std::abs(force.x())};
}

}  // namespace studies
