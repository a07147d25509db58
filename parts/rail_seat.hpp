#pragma once

#include <string>
#include <vector>

#include "checks/rail_wall.hpp"
#include "parts/bracket_weld.hpp"

/// What a bracket's root weld stands on.
namespace parts {

/// The face of the rail that the plates stand on, its walls, and where its middle is.
struct RootSeat {
  checks::RailSeat seat;
  bool on_side = false;  ///< one side of the rail; else its bottom
  fea::Vector3 middle_g;
};

/// The bottom, or the side when that alone is welded.
[[nodiscard]] RootSeat root_seat(const Bracket& bracket, const BracketPlace& place);

/// What a wrench on the root brings to the middle of its seat, axes of the case.
[[nodiscard]] checks::SeatLoad seat_load(const RootSeat& seat, const checks::Wrench& wrench);

/// The part of the root weld that counts.
struct BackedWeld {
  checks::WeldGroup group;
  std::string words;    ///< which part it is; empty = all of it
  std::string why_not;  ///< no method for the wall, and why; empty = there is one
};

/// On the seat's face only what the wall backs: from both corners of a boxed rail, at both ends of
/// a plate within one face, from the web of an open one. A line up a wall beside that face counts
/// whole, as that wall is stiff in its own plane; up the web of an open rail what it pulls is the
/// yield line's. All of it where no method covers the wall.
[[nodiscard]] BackedWeld backed_root_weld(const Bracket& bracket, const BracketPlace& place);

/// What a root weld's place on the rail asks for: ends at an edge, nearness to a bend, a line
/// across the flange; each with its source.
[[nodiscard]] std::vector<std::string> root_weld_warnings(const Bracket& bracket);

/// Stress along the rail from its own load: as given, else 0.4 of its yield strength.  [Pa]
[[nodiscard]] double rail_stress(const Bracket& bracket);

}  // namespace parts
