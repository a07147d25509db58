#pragma once

#include <string>

#include "checks/finding.hpp"
#include "checks/weld_group.hpp"

namespace checks {

/// What the check of a weld group, of fillets or grooves, needs.
struct WeldInput {
  WeldGroup group;
  Wrench wrench;  ///< in the axes of the group
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / demand
  double thinner_part = base::kUnset;   ///< thickness, for the minimum leg; unset = no note  [m]
  double edge = base::kUnset;  ///< thickness of a plate along whose edge the weld runs, for the
                               ///< maximum leg; unset = none  [m]
  double uneven = 1.0;         ///< times the throat stress, where what it is welded to gives
  bool skewed = false;         ///< lines of a throat less than their leg's: the leg is `skewed_leg`
  double skewed_leg = base::kUnset;    ///< unset = not looked at  [m]
  double base_tensile = base::kUnset;  ///< Fu beside the weld, of the weaker part joined; unset =
                                       ///< not known, and its fusion face not counted  [Pa]
  std::string base_basis = {};         ///< where that comes from
  double part = base::kUnset;  ///< thickness of the part that the lines hold, whose own shear
                               ///< rupture caps them; unset = not counted  [m]
  int part_lines = 1;          ///< lines beside each other that share that thickness
  double part_tensile = base::kUnset;  ///< its Fu beside the weld  [Pa]
  /// Fillets gain with the angle of their load, by kds of J2.4, where all lines are parallel; not
  /// of grooves, nor at the end of a hollow section, nor by EN.
  bool directional = false;
  /// Judged by EN 1993-1-8 4.5.3.3, which hangs on `base_tensile`.
  bool en = false;
  std::string backed = {};  ///< which part of longer lines the group holds; empty = all of them
};

/// Smallest leg for the thickness of the thinner part joined: 1/8, 3/16, 1/4 or 5/16 in, or 3, 5, 6
/// or 8 mm, whichever is smaller.  [m]
/// @param thinner_part  up to 1/4, 1/2, 3/4 in and over; unset gives 0  [m]
/// Source: AISC 360-05 Table J2.4 (read).
[[nodiscard]] double minimum_leg(double thinner_part);

/// Shear rupture of the part beside its welds, 0.60 Fu t, as a stress on the thickest throat.  [Pa]
/// @return infinity where the part is not given
/// Source: AISC 360-22 J4.2, from memory.
[[nodiscard]] double part_rupture(const WeldInput& input);

/// What the fusion face of the base metal carries, as a stress on the throat: shear rupture
/// 0.60 Fu on a fillet's leg, on a groove's throat.  [Pa]
/// Source: AISC 360-22 J2.4 and J4.2, from memory; on the leg: machine practice (Shigley, 9th ed.,
/// example 9-2, read, there 0.40 Sy).
[[nodiscard]] double fusion_face(double base_tensile, bool groove);

/// Largest leg along the edge of a plate: its thickness under 6 mm, else 1/16 in less.  [m]
/// @param edge  thickness of the plate; unset gives infinity  [m]
/// Source: AISC 360 J2.2b (read; 2 mm in its metric form).
[[nodiscard]] double maximum_leg(double edge);

/// beta_w of the steel beside a weld: 0.80 up to fu 360 MPa, 0.85 to 430, 0.90 to 510, 1.00 over.
/// @param base_tensile  fu  [Pa]
/// Source: EN 1993-1-8 table 4.1, from memory; its steels by their fu.
[[nodiscard]] double beta_w(double base_tensile);

/// Weld group against the nominal strength 0.60 F_EXX of its throat, without the increase for the
/// direction of the load (kds = 1) unless it is asked for, that of the fusion face, and the shear
/// rupture of the part that it holds, whichever is least. By EN: fu / (sqrt(3) beta_w) of the
/// weaker part joined (simplified method).
/// @return undecided when all lines lie on one axis and the moment turns about it; by EN also when
///         the steel beside it is not known or a part is under 4 mm
/// Limits: as worst_throat_stress; the parts' own sections beside the weld are not part of it.
/// Source: AISC 360-22 J2.4, from memory (0.60 F_EXX read in AISC LRFD 1999, Table J2.5); EN
/// 1993-1-8 4.1 and 4.5.3.3, from memory.
[[nodiscard]] Finding weld(const WeldInput& input);

/// Throat stress over capacity at the worst point of a weld: demand over capacity of `weld`,
/// without its words; unset where that is not decided. Limits and source: as there.
[[nodiscard]] double weld_use(const WeldInput& input);

}  // namespace checks
