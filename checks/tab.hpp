#pragma once

#include <string>

#include "checks/finding.hpp"

namespace checks {

/// One plate with a hole that a pin or bolt pulls in its plane.
struct EyePlate {
  double thickness = base::kUnset;  ///< [m]
  double bolt = base::kUnset;       ///< diameter  [m]
  double hole = base::kUnset;       ///< diameter  [m]
  double ahead = base::kUnset;      ///< hole's center to the edge that the bolt pulls toward  [m]
  double beside = base::kUnset;     ///< hole's center to the nearer edge beside it  [m]
  double yield = base::kUnset;      ///< [Pa]
  double tensile = base::kUnset;    ///< [Pa]
};

/// Nominal strengths of one plate; of ASME BTH-1 with N_d = 1 and its 1.20 on fracture.  [N]
struct EyeStrengths {
  double tension = base::kUnset;        ///< AISC D5: Fu 2 t be, be <= 2 t + 16 mm
  double shear = base::kUnset;          ///< AISC D5: 0.60 Fu 2 t (a + d / 2)
  double bearing = base::kUnset;        ///< AISC J7: 1.8 Fy d t
  double gross = base::kUnset;          ///< AISC D2: Fy w t, w twice the distance beside
  double net = base::kUnset;            ///< AISC J4.1: Fu (w - hole - 1/16 in) t
  double bth_tension = base::kUnset;    ///< BTH-1 3-3.3.1, net section
  double bth_splitting = base::kUnset;  ///< BTH-1 3-3.3.1, single plane beyond the hole
  double bth_shear = base::kUnset;      ///< BTH-1 3-3.3.1, two planes beyond the hole
  double bth_bearing = base::kUnset;    ///< BTH-1 3-3.3.4: 1.25 Fy d t
  [[nodiscard]] double least() const;
};

/// @param plate  edges beyond half of the hole
/// Source: AISC 360-22 D5, J4.1 and J7 (formulas read in AISC LRFD 1999 D3; net section from
/// memory); ASME BTH-1, 3-3.3 (eqs. read in a page of the 2008 edition; bearing from memory). Cr by
/// its formula whatever the fit (proposal, errs to less strength).
[[nodiscard]] EyeStrengths eye_strengths(const EyePlate& plate);

/// What the check of tabs at a bolt needs.
struct TabInput {
  EyePlate plate;
  int plates = 2;
  double force = 0.0;  ///< in their plane, on all of them  [N]
  /// How far the middle of the force lies from the middle of a single plate; 0 = not counted, unset
  /// = not known, and not decided  [m]
  double off = 0.0;
  std::string strength_basis = {};  ///< where the strengths come from
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = capacity / force
};

/// Tabs or an eye at a bolt: the lower of AISC D5 with J4 and J7, and ASME BTH-1 with N_d = 1. A
/// force that lies off the plate's middle leaves it sqrt((2 e / t)^2 + 1) - 2 e / t of that:
/// plastic bending of the section beside (statics, no source). Limits: Fy up to 690 MPa; the
/// force's direction is not asked: both edges count as they are given.
[[nodiscard]] Finding tab(const TabInput& input);

}  // namespace checks
