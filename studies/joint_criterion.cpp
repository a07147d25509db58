#include "studies/joint_criterion.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "checks/saddle_weld.hpp"
#include "checks/weld_group.hpp"
#include "parts/piece_forces.hpp"
#include "parts/weld_zone.hpp"
#include "studies/set_model.hpp"

namespace studies {
namespace {

/// The direction of the force in the tab's plane, which is not known, that loads the weld most:
/// from along the root to square off it, pulled or pushed, by 5 degrees (0.1 % of the largest).
/// @param weld  whose wrench is not looked at
/// @param at  the bolt
checks::Wrench worst_way(checks::WeldInput weld, const TabForce& force, const Eigen::Vector3d& at) {
  constexpr double kStep = 5.0 * base::kDegree;
  checks::Wrench worst;
  double most = -1.0;
  for (int i = -18; i <= 18; ++i) {
    weld.wrench = {.force = {force.across, force.in_plane * std::cos(kStep * i),
                             force.in_plane * std::sin(kStep * i)},
                   .moment = Eigen::Vector3d::Zero(),
                   .at = at};
    const double here = checks::weld_use(weld);
    if (here <= most) continue;
    most = here;
    worst = weld.wrench;
    if (std::isnan(here)) break;
  }
  return worst;
}

/// What is cut through at an end's weld.
sections::Resultants cut_at_weld(const parts::EndWeld& weld, const fea::Solution& solution) {
  const double length = solution.length(weld.beam.beam);
  const double from_end = std::min(weld.at, length);
  return parts::forces_at(weld.beam, solution, weld.end == 0 ? from_end : length - from_end);
}

/// Axes of the case.  [N]
fea::Vector3 spring_force_g(const parts::BoltedJoint& joint, const fea::Solution& solution) {
  return joint.spring_axes_g * solution.spring_force(*joint.spring).head<3>();
}

/// What acts across the tabs: what the frame says, and a share of the rest.
double across_tabs(const parts::TabbedJoint& joint, const BoltForce& force) {
  return force.along + joint.tabs.side_force * force.across;
}

}  // namespace

int tabs_that_carry(const parts::TabbedJoint& joint, const parts::BoltSpec& bolt) {
  return bolt.double_shear ? joint.tabs.plates.count : 1;
}

fea::Vector3 end_force_g(const parts::PieceBeam& beam, int end, const fea::Solution& solution) {
  const fea::Vector12 ends = parts::end_forces(beam, solution);
  return solution.axes(beam.beam).transpose() * ends.segment<3>(6 * end);
}

BoltForce bolt_force(const parts::BoltedJoint& joint, const fea::Solution& solution) {
  if (joint.strap) return {std::max(0.0, force_of(*joint.strap, solution)), 0.0};
  const fea::Vector3 force_g =
      joint.spring ? spring_force_g(joint, solution) : end_force_g(joint.beam, joint.end, solution);
  const double along = joint.along ? force_g[static_cast<int>(*joint.along)] : 0.0;
  return {std::sqrt(std::max(0.0, force_g.squaredNorm() - along * along)), std::abs(along)};
}

std::vector<checks::WorkedLine> bolt_share_lines(const std::vector<parts::BoltedJoint>& bolts,
                                                 std::size_t which, const fea::Solution& solution) {
  constexpr double kSame = 1e-4;
  const parts::BoltedJoint& bolt = bolts[which];
  if (!bolt.in_group_g || !bolt.along) return {};
  checks::BoltGroup group{.at = {}, .along = fea::Vector3::Unit(static_cast<int>(*bolt.along))};
  checks::Wrench all{
      .force = fea::Vector3::Zero(), .moment = fea::Vector3::Zero(), .at = fea::Vector3::Zero()};
  std::size_t in_group = 0;
  for (std::size_t i = 0; i < bolts.size(); ++i) {
    if (bolts[i].part != bolt.part || !bolts[i].in_group_g) continue;
    if (i == which) in_group = group.at.size();
    const fea::Vector3 force_g = spring_force_g(bolts[i], solution);
    group.at.push_back(*bolts[i].in_group_g);
    all.force += force_g;
    all.moment += group.at.back().cross(force_g);
  }
  const std::vector<checks::BoltShare> shares = checks::bolt_shares(group, all);
  if (shares.empty()) return {};
  const BoltForce solved = bolt_force(bolt, solution);
  const double off =
      std::hypot(shares[in_group].shear - solved.across, shares[in_group].tension - solved.along);
  if (off > kSame * std::hypot(solved.across, solved.along)) return {};
  return checks::share_lines(group, all, in_group);
}

checks::BoltInput bolt_input(const parts::BoltedJoint& joint, const BoltForce& force) {
  return {.thread = joint.bolt.thread,
          .grade = joint.bolt.grade,
          .planes = joint.bolt.double_shear ? 2 : 1,
          .threads_in_plane = joint.bolt.threads_in_plane,
          .shear = force.across,
          .tension = force.along,
          .stack = joint.stack,
          .loose = joint.bolt.loose_stack,
          .clamp_assumed = joint.bolt.clamp_assumed,
          .planes_basis = joint.one_plane};
}

checks::BoltInput bolt_input(const std::vector<parts::BoltedJoint>& bolts, std::size_t which,
                             const fea::Solution& solution) {
  const parts::BoltedJoint& joint = bolts[which];
  checks::BoltInput input = bolt_input(joint, bolt_force(joint, solution));
  if (!joint.beside || !input.stack || !joint.along) return input;
  const auto across = [&](const parts::BoltedJoint& bolt) {
    const fea::Vector3 force_g = end_force_g(bolt.beam, bolt.end, solution);
    const int along = static_cast<int>(*joint.along);
    return checks::AcrossBolt{force_g[(along + 1) % 3], force_g[(along + 2) % 3]};
  };
  input.stack->two_eyes = checks::TwoEyes{across(joint), across(bolts[*joint.beside])};
  return input;
}

checks::BoltGroupInput group_input(const parts::BoltGroupAt& group, const fea::Solution& solution) {
  const fea::Vector12 ends = parts::end_forces(group.beam, solution);
  const fea::Matrix3 to_case = group.axes_lg.transpose();
  const parts::BoltSpec& bolt = group.bolt;
  return {.group = {.at = group.bolts_from_end_g, .along = group.along_g},
          .wrench = {.force = to_case * ends.segment<3>(6 * group.end),
                     .moment = to_case * ends.segment<3>(6 * group.end + 3),
                     .at = Eigen::Vector3d::Zero()},
          .bolt = {.thread = bolt.thread,
                   .grade = bolt.grade,
                   .planes = bolt.double_shear ? 2 : 1,
                   .threads_in_plane = bolt.threads_in_plane,
                   .loose = bolt.loose_stack}};
}

checks::BoltHoleInput group_hole_input(const parts::BoltGroupAt& group,
                                       const fea::Solution& solution) {
  const checks::BoltGroupInput bolts = group_input(group, solution);
  const std::vector<checks::BoltShare> shares = checks::bolt_shares(bolts.group, bolts.wrench);
  double most = shares.empty() ? base::kUnset : 0.0;
  for (const checks::BoltShare& share : shares) most = std::max(most, share.shear);
  return {.force = most,
          .bolt = group.bolt.thread.diameter,
          .hole = group.bolt.thread.standard_hole(),
          .edge = group.edge,
          .thickness = group.plates.thickness,
          .plates = group.bolt.double_shear ? group.plates.count : 1,
          .tensile = group.plates.material.tensile,
          .strength_basis = parts::parent_words(group.plates.material),
          .unknown_force = shares.empty() ? checks::bolt_group(bolts).reason : ""};
}

checks::TabInput tab_input(const parts::TabbedJoint& joint, const parts::BoltSpec& bolt,
                           const BoltForce& force) {
  const parts::TabSpec& tabs = joint.tabs;
  const sections::BoltThread& thread = bolt.thread;
  return {.plate = {.thickness = tabs.plates.thickness,
                    .bolt = thread.diameter,
                    .hole = thread.standard_hole(),
                    .ahead = tabs.edge,
                    .beside = tabs.edge,
                    .yield = tabs.plates.material.yield,
                    .tensile = tabs.plates.material.tensile},
          .plates = tabs_that_carry(joint, bolt),
          .force = force.across,
          .off = tabs.plates.count == 1 ? tabs.off : 0.0,
          .strength_basis = parts::parent_words(tabs.plates.material)};
}

checks::TabRootInput tab_root_input(const parts::TabbedJoint& joint, const parts::BoltSpec& bolt,
                                    const BoltForce& force) {
  const parts::TabSpec& tabs = joint.tabs;
  return {.plates = tabs_that_carry(joint, bolt),
          .thickness = tabs.plates.thickness,
          .width = tabs.root_width(),
          .height = tabs.height,
          .off = tabs.plates.count == 1 ? tabs.off : 0.0,
          .force = force.across,
          .side = across_tabs(joint, force),
          .yield = tabs.plates.material.haz_yield,
          .strength_basis = parts::weld_zone_words(tabs.plates.material)};
}

checks::TabWallInput tab_wall_input(const parts::TabbedJoint& joint, const parts::BoltSpec& bolt,
                                    const BoltForce& force) {
  const parts::TabSpec& tabs = joint.tabs;
  const auto& tube = std::get<sections::RoundTube>(tabs.on.shape);
  const double side = across_tabs(joint, force);
  // Two tabs on one bolt hold it by pulling and pushing, as far apart as their middles.
  const double apart = tabs.gap + tabs.plates.thickness;
  return {.outside = tube.outside,
          .wall = tube.wall,
          .yield = tabs.on.material.haz_yield,
          .tensile = tabs.on.material.haz_tensile,
          .strength_basis = parts::weld_zone_words(tabs.on.material),
          .across = tabs.across,
          .width = tabs.root_width(),
          .height = tabs.height,
          .force = force.across / tabs_that_carry(joint, bolt),
          .pull = side > 0.0 ? side * tabs.height / apart : 0.0};
}

checks::WeldInput tab_weld_of(const parts::TabbedJoint& joint, const TabForce& force) {
  const parts::TabSpec& tabs = joint.tabs;
  const double off = tabs.plates.count == 1 && tabs.off > 0.0 ? tabs.off : 0.0;
  const double half = 0.5 * tabs.root_width();
  // x along the bolt, y along the tab's root, z from the weld to the bolt.
  checks::WeldGroup group{.lines = {}, .filler_tensile = joint.filler};
  for (const double side : {-0.5, 0.5}) {
    if (side < 0.0 && !tabs.weld.both_sides) continue;
    // A groove's throat lies inside the plate.
    const double inside = tabs.weld.groove > 0.0 ? tabs.weld.groove : 0.0;
    const double x = side * (tabs.plates.thickness - inside);
    group.lines.push_back({{x, -half, 0.0}, {x, half, 0.0}, tabs.weld.leg, tabs.weld.groove});
  }
  checks::WeldInput weld{.group = std::move(group),
                         .wrench = {},
                         .thinner_part = tabs.plates.thickness,
                         .edge = base::kUnset,
                         .base_tensile = tabs.plates.material.haz_tensile,
                         .base_basis = parts::weld_zone_words(tabs.plates.material),
                         .part = tabs.plates.thickness,
                         .part_lines = tabs.weld.both_sides ? 2 : 1,
                         .part_tensile = tabs.plates.material.haz_tensile,
                         .directional = tabs.weld.directional && !tabs.on_tube(),
                         .en = joint.en_weld};
  weld.wrench = worst_way(weld, force, {off, 0.0, tabs.height});
  return weld;
}

checks::WeldInput tab_weld_input(const parts::TabbedJoint& joint, const parts::BoltSpec& bolt,
                                 const BoltForce& force) {
  const double count = tabs_that_carry(joint, bolt);
  return tab_weld_of(joint, {across_tabs(joint, force) / count, force.across / count});
}

checks::Finding tab_finding(TabCheck check, const parts::TabbedJoint& joint,
                            const parts::BoltSpec& bolt, const BoltForce& force,
                            const Decided& by) {
  const auto placed = [&](auto input) {
    input.required = by.required;
    input.safety_factor = by.safety_factor;
    return input;
  };
  switch (check) {
    case TabCheck::hole:
      return checks::tab(placed(tab_input(joint, bolt, force)));
    case TabCheck::wall:
      return checks::tab_wall(placed(tab_wall_input(joint, bolt, force)));
    case TabCheck::root: {
      checks::Finding root = checks::tab_root(placed(tab_root_input(joint, bolt, force)));
      if (joint.duty == checks::Duty::lateral_link) root.notes.emplace_back(kAskedAsLink);
      return root;
    }
    case TabCheck::weld:
      break;
  }
  checks::Finding weld = checks::weld(placed(tab_weld_input(joint, bolt, force)));
  weld.check = "tab weld";
  weld.notes.emplace_back(
      "the force's direction in the tab's plane is not known: taken as the one that loads the "
      "weld most");
  return weld;
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
                          .edge = base::kUnset,
                          .base_tensile = weld.material.haz_tensile,
                          .base_basis = parts::weld_zone_words(weld.material),
                          .part = weld.thinner,
                          .part_tensile = weld.material.haz_tensile};
  if (weld.weld.groove > 0.0) {
    const double throat = std::min(weld.weld.groove, weld.thinner);
    input.group.lines = checks::ring_weld(Eigen::Vector3d::Zero(), Eigen::Vector3d::UnitX(),
                                          weld.radius - 0.5 * throat, throat);
    checks::make_grooves(input.group.lines, throat);
    return input;
  }
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
  input.skewed_leg = leg;
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

checks::TubeNetSectionInput net_section_input(const parts::EndWeld& weld,
                                              const fea::Solution& solution) {
  const sections::Resultants cut = cut_at_weld(weld, solution);
  return {.outside = 2.0 * weld.radius,
          .wall = weld.thinner,
          .holes = weld.weld.rosettes,
          .hole = weld.weld.rosette,
          .tensile = weld.material.haz_tensile,
          .strength_basis = parts::weld_zone_words(weld.material),
          .axial = std::abs(cut.n),
          .bending = std::hypot(cut.my, cut.mz)};
}

checks::WeldInput ring_weld_input(const parts::RingWeld& weld, double force) {
  constexpr double kOff = 0.1;  // of its diameter
  checks::WeldInput input{
      .group = {.lines = checks::ring_weld(Eigen::Vector3d::Zero(), Eigen::Vector3d::UnitZ(),
                                           0.5 * weld.diameter, weld.leg),
                .filler_tensile = weld.filler},
      .wrench = {.force = {0.0, 0.0, -force},
                 .moment = Eigen::Vector3d::Zero(),
                 .at = {kOff * weld.diameter, 0.0, 0.0}}};
  return input;
}

double coil_force(const parts::CoilSeat& seat, const fea::Solution& solution, double multiple) {
  return std::max(
      0.0, multiple * seat.preload + seat.rate * rise_of(seat.node, seat.offset_g, solution));
}

checks::RatedLoadInput coil_load_input(const parts::CoilSeat& seat, const fea::Solution& solution,
                                       double multiple) {
  return {.preload = multiple * seat.preload,
          .rate = seat.rate,
          .travel = rise_of(seat.node, seat.offset_g, solution),
          .force = coil_force(seat, solution, multiple),
          .rating = seat.rating};
}

checks::RatedLoadInput stop_load_input(const parts::TravelStop& stop,
                                       const fea::Solution& solution) {
  const double force = std::max(0.0, force_of(stop, solution));
  return {.preload = 0.0,
          .rate = stop.rate,
          .travel = force / stop.rate,
          .force = force,
          .rating = stop.rating};
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
