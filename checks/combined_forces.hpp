#pragma once

#include <optional>
#include <string>

#include "checks/bending_strength.hpp"
#include "checks/finding.hpp"
#include "checks/tube_torsion.hpp"
#include "sections/stress.hpp"

namespace checks {

/// What one section of a straight member carries of each force by itself.
struct SectionStrength {
  double tension = base::kUnset;  ///< Fy A  [N]
  BendingStrength bending;
  double first_yield_y = base::kUnset;  ///< Fy S  [N m]
  double first_yield_z = base::kUnset;
  std::optional<TubeTorsion> tube;  ///< torsion and shear, of a tube
  bool round = false;               ///< moments about two axes are one
  bool symmetric = true;            ///< about an axis at least: H1, otherwise H2
};

/// @param member  with Fy at the section
[[nodiscard]] SectionStrength section_strength(const BendingInput& member);

/// What acts on a straight member.
struct CombinedDemand {
  double axial = 0.0;                    ///< compression or tension, both > 0  [N]
  double axial_capacity = base::kUnset;  ///< Pn of the column check, or Fy A  [N]
  bool compressed = false;
  sections::Resultants at;  ///< Vy, Vz, T, My and Mz at a section
};

/// The terms of an interaction, which add up to 1 at the limit. NaN where one is not known.
struct Interaction {
  double axial = 0.0;
  double bending = 0.0;
  double twisting = 0.0;  ///< shear with torsion, squared
  bool compressed = false;
  [[nodiscard]] double sum() const { return axial + bending + twisting; }
  /// More than one of them counts, with over 0.5 % of the sum; or the sum is not known.
  [[nodiscard]] bool counts() const;
};

/// H1-1 with the moments of the second-order solution; H2 for an angle, a line of walls or a
/// section given by its numbers; H3-6 for a tube whose torque is over 0.2 Tn. Round sections take
/// the resultant moment (derived). Source: AISC 360-22 H1.1, H1.2, H2 and H3.2, from memory (H3-6
/// read in a handbook on the 2005 edition).
[[nodiscard]] Interaction interaction(const SectionStrength& strength,
                                      const CombinedDemand& demand);

/// The factor asked of an interaction: of compression that of buckling, of all else that of yield,
/// each by its part of the sum. In tension that of yield.
/// @return a proposal, no source: with compression alone it is the column's, with bending alone the
///         section's
[[nodiscard]] double combined_required(const Interaction& terms, double buckling, double yield);

/// What the check of a straight member under several forces needs.
struct CombinedInput {
  BendingInput member;                    ///< with Fy at the section that decides
  std::string strength_basis = {};        ///< where its Fy comes from
  std::string place = {};                 ///< where along the member that section is, in words
  CombinedDemand demand;                  ///< at the load itself
  double buckling_factor = base::kUnset;  ///< asked of compression
  double yield_factor = base::kUnset;     ///< asked of all else
  double required = base::kUnset;         ///< combined_required at the load itself
  double safety_factor = base::kUnset;    ///< largest multiple of the load, multiplied before the
                                          ///< solve; unset = 1 / sum
};

/// Axial force with bending and torsion in a straight member.
/// @return undecided when the section has no nominal moment or torque (bending_strength.hpp)
/// Limits: straight members with a column check; torque of an open section is left to its stress.
/// Source: as `interaction`.
[[nodiscard]] Finding combined_forces(const CombinedInput& input);

}  // namespace checks
