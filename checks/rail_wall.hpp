#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// A frame rail under a bracket whose plates stand across it, on one of its faces.
struct RailSeat {
  bool boxed = true;
  double face = base::kUnset;  ///< width of the face the plates stand on  [m]
  double side = base::kUnset;  ///< height of the walls beside that face  [m]
  double wall = base::kUnset;  ///< thickness  [m]
  double frame_plate = 0.0;    ///< plate between rail and bracket; 0 = none  [m]
  double line = base::kUnset;  ///< weld line of one plate on the face; 0 = none  [m]
  int walls_welded = 0;        ///< walls beside the face that the plates are welded up, 0 to 2
  double up_the_wall = 0.0;    ///< weld line up each of those  [m]
  int plates = 2;
  double plate = base::kUnset;        ///< thickness of one  [m]
  double gap = 0.0;                   ///< clear between two  [m]
  double plate_yield = base::kUnset;  ///< Fyp  [Pa]
  double yield = base::kUnset;        ///< Fy of rail and frame plate  [Pa]
  double tensile = base::kUnset;      ///< Fu  [Pa]
  double elastic = base::kUnset;      ///< [Pa]
  double own_stress = 0.0;            ///< along the rail, from its own load  [Pa]
  double holes_in_face = 0.0;   ///< left open under the bracket, their diameters added up  [m]
  double holes_in_walls = 0.0;  ///< the same in one wall beside the face, of two the worse  [m]

  /// Gross over net width, where the holes take most.
  [[nodiscard]] double net_increase() const;
};

/// How the rail takes what the plates bring.
enum class SeatKind {
  both_walls,  ///< the plates end at both corners, or are welded up both walls
  flat_face,   ///< they end within one face
  flange,      ///< on the bottom of an open rail, from its web to the flange's edge
  web,         ///< on the bottom of an open rail and up its web
  none,        ///< no method here
};

struct SeatMethod {
  SeatKind kind = SeatKind::none;
  std::string why_not = {};  ///< outside the method, and why; empty = inside
};

/// Which method covers a seat, and its range. Boxed rails: AISC 360-10 table K1.2A (from memory):
/// loaded wall of at most 35 thicknesses, plates over at least a quarter of a flat face, Fy up to
/// 360 MPa and up to 0.8 Fu (A500 grade C excepted). Open rails: plates over the whole flange.
/// Holes left in the rail: at most half of what carries, none in a flat face that no frame plate
/// covers (proposal).
[[nodiscard]] SeatMethod seat_method(const RailSeat& seat);

/// How much of a plate's weld line on the face the wall backs, from each end that it is backed at.
/// Boxed: half of 10 / (B / t) Fy t / (Fyp tp) Bp, t of the frame plate where there is one (AISC
/// 360-16 K5, from memory). Open: tw + 2.5 k t at the web, k = Fy t / (Fyp tp) <= 1 (half of EN
/// 1993-1-8 (4.6c), for a section with two webs, from memory).  [m]
[[nodiscard]] double backed_length(const RailSeat& seat);

/// What the plates bring to the middle of the face.
struct SeatLoad {
  double normal = 0.0;    ///< off or on the face  [N]
  double across = 0.0;    ///< along the plates, in the face  [N]
  double along = 0.0;     ///< along the rail  [N]
  double rolling = 0.0;   ///< about the rail's axis  [N m]
  double pitching = 0.0;  ///< about the line of the plates in the face  [N m]
  double twisting = 0.0;  ///< about the normal  [N m]
};

/// The safety factors asked of the ways in which a wall gives. In the ratio of AISC's Omega.
struct RailFactors {
  double yielding = 1.5;   ///< of walls, yield lines, distortion, shear
  double punching = 1.58;  ///< and of an unevenly loaded plate's width
  double crippling = 2.0;
};

/// What the check of a rail's wall needs.
struct RailWallInput {
  RailSeat seat;
  SeatLoad load;
  std::string strength_basis = {};  ///< where Fy comes from
  RailFactors asked = {};
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / demand
};

/// The wall of a rail under a bracket's root weld; nominal strengths, shares of them added up,
/// the root of that sum's square and shear's (proposal).
/// - Boxed, plates from corner to corner: yield and crippling of the walls beside the face, each
///   carrying half of the push and its part of the rolling moment, and the rail's distortion.
/// - Boxed, plates within one face: the face's yield lines as for a block, uneven plate, punching.
/// - Open: a yield line of the flange or the web under a 45 degree spread, named as such.
/// A frame plate is taken as wide as the face and welded all round: it spreads what goes into the
/// walls beside it, under 45 degrees through its thickness; on a flat face it acts alone, as where
/// it is pulled. The rail's own stress takes from walls and face of a boxed rail by kn.
/// The factor asked is that of the ways that give first, each by its part: the sum with every
/// strength over its own factor, over the sum of the nominal ones.
/// In its own plane a wall tears out beside each plate, or around two of them as one block, at 0.6
/// Fy (after AISC 360-22 J4.3, from memory); a block's end at the rail's corner counts as none.
/// Holes left in the rail come off the length of wall that carries, the shear area and the rail's
/// own section, as in AISC 360-22 B4.3 and J4 (from memory). Undecided outside `seat_method`.
/// Source: AISC 360-22 J10.2, J10.3 and 360-10 tables K1.2, K3.2, EN 1993-1-8 tables 7.11, 7.13 and
/// 7.14 (from memory); yield lines of open rails: own derivation, no source.
[[nodiscard]] Finding rail_wall(const RailWallInput& input);

}  // namespace checks
