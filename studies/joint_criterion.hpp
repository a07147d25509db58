#pragma once

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
/// The weld of one tab: two lines along it, or one.
[[nodiscard]] checks::WeldInput tab_weld_input(const parts::TabbedJoint& joint,
                                               const parts::Assembly& assembly,
                                               const fea::Solution& solution);

/// The fillet around an end, at its place.
[[nodiscard]] checks::WeldInput end_weld_input(const parts::EndWeld& weld,
                                               const fea::Solution& solution);

[[nodiscard]] checks::ThreadedShankInput shank_input(const parts::ThreadedJoint& joint,
                                                     const fea::Solution& solution);
[[nodiscard]] checks::ThreadEngagementInput engagement_input(const parts::ThreadedJoint& joint,
                                                             const fea::Solution& solution);

}  // namespace studies
