#pragma once

#include "checks/bolt_slip.hpp"
#include "checks/plug_weld.hpp"
#include "checks/tab.hpp"
#include "checks/tab_root.hpp"
#include "checks/threaded_end.hpp"
#include "checks/weld.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"

/// What the tabs and threads at the ends of parts are checked with, from a solution.
namespace studies {

/// Force across a bolt and along it.
struct BoltForce {
  double across = 0.0;  ///< [N]
  double along = 0.0;   ///< [N]
};
[[nodiscard]] BoltForce bolt_force(const parts::BoltedJoint& joint, const fea::Solution& solution);

/// Force on the end of a beam, axes of the case.  [N]
[[nodiscard]] fea::Vector3 end_force_g(const parts::PieceBeam& beam, int end,
                                       const fea::Solution& solution);

[[nodiscard]] checks::TabInput tab_input(const parts::TabbedJoint& joint,
                                         const parts::Assembly& assembly,
                                         const fea::Solution& solution);
[[nodiscard]] checks::TabRootInput tab_root_input(const parts::TabbedJoint& joint,
                                                  const parts::Assembly& assembly,
                                                  const fea::Solution& solution);
/// How many of the tabs at a bolt carry: one where it is in single shear.
[[nodiscard]] int tabs_that_carry(const parts::TabbedJoint& joint, const parts::Assembly& assembly);

/// What one tab's weld carries: a force across the tab, and one in its plane of any direction.
struct TabForce {
  double across = 0.0;    ///< [N]
  double in_plane = 0.0;  ///< [N]
};
/// The weld of one tab: two lines along it, or one; the force in the tab's plane in the direction
/// that loads it most.
[[nodiscard]] checks::WeldInput tab_weld_of(const parts::TabbedJoint& joint, const TabForce& force);
[[nodiscard]] checks::WeldInput tab_weld_input(const parts::TabbedJoint& joint,
                                               const parts::Assembly& assembly,
                                               const fea::Solution& solution);

/// The fillet around an end, at its place: a ring, or the saddle of a fishmouth, turned about the
/// bar so that it is loaded most, as the direction of what it stands on is not asked.
[[nodiscard]] checks::WeldInput end_weld_input(const parts::EndWeld& weld,
                                               const fea::Solution& solution);
[[nodiscard]] checks::RosetteInput rosette_input(const parts::EndWeld& weld,
                                                 const fea::Solution& solution);
/// The faces that the bolt of a joint clamps.
[[nodiscard]] checks::BoltSlipInput slip_input(const parts::BoltedJoint& joint,
                                               const fea::Solution& solution);

[[nodiscard]] checks::ThreadedShankInput shank_input(const parts::ThreadedJoint& joint,
                                                     const fea::Solution& solution);
[[nodiscard]] checks::ThreadEngagementInput engagement_input(const parts::ThreadedJoint& joint,
                                                             const fea::Solution& solution);

}  // namespace studies
