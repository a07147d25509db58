#pragma once

#include "parts/bracket.hpp"

/// How a frame rail between two cross members resists a bracket that twists it.
namespace parts {

/// Stiffness with which a cross member holds a rail against twist: bent upright, its far end free
/// to turn, 3 E I / L (statics). Infinite when its section is not given.  [N m/rad]
[[nodiscard]] double cross_member_stiffness(const Bracket& bracket);

/// A closed rail: G J / a to either side, each in series with its cross member; J by Bredt along
/// the middle line. Where the cross member's section is not given, 0.8 of it (proposal, no source).
/// @return [N m/rad]
[[nodiscard]] double closed_rail_root(const Bracket& bracket);

/// An open rail, a channel of one wall thickness: torsion with restrained warping (Vlasov) between
/// ends that do not twist, whose warping is free or held; closed form and exact elements, derived.
/// The give of cross members is added by the shares of the torque they hold. Channel
/// Cw = (t h^2 b^3 / 12) (2 h + 3 b) / (h + 6 b), middle line (from memory).
/// @return [N m/rad]
[[nodiscard]] double open_rail_root(const Bracket& bracket, bool warping_held);

/// Give of a flat wall under plates that end within it: a strip with clamped edges,
/// k = 16 D le / b per radian, le the length of the bracket along the rail, b the width of the
/// bottom, or the height where only a side is welded (derived, no source).
/// @return [N m/rad]
[[nodiscard]] double wall_root(const Bracket& bracket);

/// The plates end at both corners of the rail's bottom, or are welded to both of its sides.
[[nodiscard]] bool reaches_both_corners(const Bracket& bracket);

}  // namespace parts
