#include "studies/joint_criterion.hpp"

#include <algorithm>
#include <cmath>

#include "parts/piece_forces.hpp"

namespace studies {
namespace {

int tabs_that_carry(const parts::TabbedJoint& joint, const parts::Assembly& assembly) {
  return assembly.bolts[joint.bolt].bolt.double_shear ? joint.tabs.plates.count : 1;
}

/// What acts across the tabs: what the frame says, and a share of the rest.
double across_tabs(const parts::TabbedJoint& joint, const BoltForce& force) {
  return force.along + joint.tabs.side_force * force.across;
}

}  // namespace

fea::Vector3 end_force_g(const parts::PieceBeam& beam, int end, const fea::Solution& solution) {
  const fea::Vector12 ends = parts::end_forces(beam, solution);
  return solution.axes(beam.beam).transpose() * ends.segment<3>(6 * end);
}

BoltForce bolt_force(const parts::BoltedJoint& joint, const fea::Solution& solution) {
  const fea::Vector3 force_g = end_force_g(joint.beam, joint.end, solution);
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

checks::WeldInput tab_weld_input(const parts::TabbedJoint& joint, const parts::Assembly& assembly,
                                 const fea::Solution& solution) {
  const parts::TabSpec& tabs = joint.tabs;
  const BoltForce force = bolt_force(assembly.bolts[joint.bolt], solution);
  const int count = tabs_that_carry(joint, assembly);
  const double off = tabs.plates.count == 1 && tabs.off > 0.0 ? tabs.off : 0.0;
  const double half = 0.5 * tabs.root_width();
  // x along the bolt, y along the tab's root, z from the weld to the bolt.
  checks::WeldGroup group{.lines = {}, .filler_tensile = joint.filler};
  for (const double side : {-0.5, 0.5}) {
    if (side < 0.0 && !tabs.weld.both_sides) continue;
    const double x = side * tabs.plates.thickness;
    group.lines.push_back({{x, -half, 0.0}, {x, half, 0.0}, tabs.weld.leg});
  }
  return {.group = group,
          .wrench = {.force = {across_tabs(joint, force) / count, force.across / count, 0.0},
                     .moment = Eigen::Vector3d::Zero(),
                     .at = {off, 0.0, tabs.height}},
          .thinner_part = tabs.plates.thickness,
          .edge = base::kUnset};
}

checks::WeldInput end_weld_input(const parts::EndWeld& weld, const fea::Solution& solution) {
  const double length = solution.stations(weld.beam.beam).back();
  const double from_end = std::min(weld.at, length);
  const sections::Resultants cut =
      parts::forces_at(weld.beam, solution, weld.end == 0 ? from_end : length - from_end);
  return {.group = {.lines = checks::ring_weld(Eigen::Vector3d::Zero(), Eigen::Vector3d::UnitX(),
                                               weld.radius, weld.leg),
                    .filler_tensile = weld.filler},
          .wrench = {.force = {cut.n, cut.vy, cut.vz},
                     .moment = {cut.t, cut.my, cut.mz},
                     .at = Eigen::Vector3d::Zero()},
          .thinner_part = weld.thinner,
          .edge = base::kUnset};
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
