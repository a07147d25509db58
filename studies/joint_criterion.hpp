#pragma once

#include <cstddef>
#include <vector>

#include "checks/bolt_group.hpp"
#include "checks/bolt_hole.hpp"
#include "checks/bolt_shear.hpp"
#include "checks/bolt_slip.hpp"
#include "checks/plug_weld.hpp"
#include "checks/rated_load.hpp"
#include "checks/tab.hpp"
#include "checks/tab_root.hpp"
#include "checks/tab_wall.hpp"
#include "checks/threaded_end.hpp"
#include "checks/tube_net_section.hpp"
#include "checks/weld.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"

/// What the tabs and threads at the ends of parts are checked with, from a solution.
namespace studies {

inline constexpr const char* kAskedAsLink =
    "asked what the lateral link is asked: one rule for all that holds it (proposal, no source)";

/// Force across a bolt and along it.
struct BoltForce {
  double across = 0.0;  ///< [N]
  double along = 0.0;   ///< [N]
};
[[nodiscard]] BoltForce bolt_force(const parts::BoltedJoint& joint, const fea::Solution& solution);

/// Force on the end of a beam, axes of the case.  [N]
[[nodiscard]] fea::Vector3 end_force_g(const parts::PieceBeam& beam, int end,
                                       const fea::Solution& solution);

/// How a bolt's force follows from what all bolts of its group carry, as worked lines; nothing for
/// a bolt by itself, or where the frame shares it in another way (bolts that are not in one plane).
[[nodiscard]] std::vector<checks::WorkedLine> bolt_share_lines(
    const std::vector<parts::BoltedJoint>& bolts, std::size_t which, const fea::Solution& solution);

[[nodiscard]] checks::BoltInput bolt_input(const parts::BoltedJoint& joint, const BoltForce& force);
/// Of a bolt of the assembly, with what another part on it brings.
[[nodiscard]] checks::BoltInput bolt_input(const std::vector<parts::BoltedJoint>& bolts,
                                           std::size_t which, const fea::Solution& solution);
[[nodiscard]] checks::TabInput tab_input(const parts::TabbedJoint& joint,
                                         const parts::BoltSpec& bolt, const BoltForce& force);
[[nodiscard]] checks::TabRootInput tab_root_input(const parts::TabbedJoint& joint,
                                                  const parts::BoltSpec& bolt,
                                                  const BoltForce& force);
/// The wall of the round tube that tabs stand on.
[[nodiscard]] checks::TabWallInput tab_wall_input(const parts::TabbedJoint& joint,
                                                  const parts::BoltSpec& bolt,
                                                  const BoltForce& force);
/// How many of the tabs at a bolt carry: one where it is in single shear.
[[nodiscard]] int tabs_that_carry(const parts::TabbedJoint& joint, const parts::BoltSpec& bolt);

/// Bolts that hold an end together: what the frame brings to that end, in axes that turn with it.
[[nodiscard]] checks::BoltGroupInput group_input(const parts::BoltGroupAt& group,
                                                 const fea::Solution& solution);
/// The plates at the bolt of a group that is sheared most.
[[nodiscard]] checks::BoltHoleInput group_hole_input(const parts::BoltGroupAt& group,
                                                     const fea::Solution& solution);

/// What decides a check, besides its numbers.
struct Decided {
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< unset = capacity over demand
};

/// The checks of tabs at a bolt.
enum class TabCheck { hole, root, wall, weld };
/// @param force  on the bolt
[[nodiscard]] checks::Finding tab_finding(TabCheck check, const parts::TabbedJoint& joint,
                                          const parts::BoltSpec& bolt, const BoltForce& force,
                                          const Decided& by);

/// What one tab's weld carries: a force across the tab, and one in its plane of any direction.
struct TabForce {
  double across = 0.0;    ///< [N]
  double in_plane = 0.0;  ///< [N]
};
/// The weld of one tab: two lines along it, or one; the force in the tab's plane in the direction
/// that loads it most.
[[nodiscard]] checks::WeldInput tab_weld_of(const parts::TabbedJoint& joint, const TabForce& force);
[[nodiscard]] checks::WeldInput tab_weld_input(const parts::TabbedJoint& joint,
                                               const parts::BoltSpec& bolt, const BoltForce& force);

/// The fillet around an end, at its place: a ring, or the saddle of a fishmouth, turned about the
/// bar so that it is loaded most, as the direction of what it stands on is not asked.
[[nodiscard]] checks::WeldInput end_weld_input(const parts::EndWeld& weld,
                                               const fea::Solution& solution);
[[nodiscard]] checks::RosetteInput rosette_input(const parts::EndWeld& weld,
                                                 const fea::Solution& solution);
/// The tube where its rosettes are.
[[nodiscard]] checks::TubeNetSectionInput net_section_input(const parts::EndWeld& weld,
                                                            const fea::Solution& solution);
/// The fillet around a seat or pad, under a force along its axis that lies off it by a tenth of its
/// diameter (proposal, no source).
[[nodiscard]] checks::WeldInput ring_weld_input(const parts::RingWeld& weld, double force);
/// What a coil carries; what it and a bump stop are pressed by, and may be.  [N]
/// @param multiple  of the load in the solution, which holds the coil's preload too
[[nodiscard]] double coil_force(const parts::CoilSeat& seat, const fea::Solution& solution,
                                double multiple);
[[nodiscard]] checks::RatedLoadInput coil_load_input(const parts::CoilSeat& seat,
                                                     const fea::Solution& solution,
                                                     double multiple);
[[nodiscard]] checks::RatedLoadInput stop_load_input(const parts::TravelStop& stop,
                                                     const fea::Solution& solution);
/// The faces that the bolt of a joint clamps.
[[nodiscard]] checks::BoltSlipInput slip_input(const parts::BoltedJoint& joint,
                                               const fea::Solution& solution);

[[nodiscard]] checks::ThreadedShankInput shank_input(const parts::ThreadedJoint& joint,
                                                     const fea::Solution& solution);
[[nodiscard]] checks::ThreadEngagementInput engagement_input(const parts::ThreadedJoint& joint,
                                                             const fea::Solution& solution);

}  // namespace studies
