#pragma once

#include <optional>
#include <string>
#include <vector>

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

/// What acts over what is carried of it, each by itself. NaN where one is not known.
struct Interaction {
  double axial = 0.0;    ///< Pr/Pc
  double bending = 0.0;  ///< Mr/Mc; about two axes their sum
  double shear = 0.0;    ///< Vr/Vc, of a tube
  double torque = 0.0;   ///< Tr/Tc, of a tube
  bool compressed = false;
  bool symmetric = true;  ///< as of the section
  /// Of the equation that rules these shares; 1 at the limit. It jumps from one equation to
  /// another.
  [[nodiscard]] double sum() const;
  /// How much of the limit is used: over it is the multiple at which the sum comes to 1 when all
  /// shares grow alike. In proportion to them, as the sum is not.
  [[nodiscard]] double used() const;
  /// More than one share counts, with over 1 % of the sum (proposal); or the sum is not known.
  [[nodiscard]] bool counts() const;
};

/// H1-1 with the moments of the second-order solution; H2 for an angle, a line of walls or a
/// section given by its numbers; H3-6 for a tube whose torque is over 0.2 Tn. Round sections take
/// the resultant moment (derived). Source: AISC 360-22 H1.1, H1.2, H2 and H3.2, from memory (H3-6
/// read in a handbook on the 2005 edition).
[[nodiscard]] Interaction interaction(const SectionStrength& strength,
                                      const CombinedDemand& demand);

/// The factor asked of an interaction, and what it comes from.
struct CombinedAsked {
  double value = base::kUnset;
  double of_compression = base::kUnset;  ///< the factor of buckling
  double of_rest = base::kUnset;         ///< that of yield
  Interaction shares;                    ///< the ones that use most with their factors
  double with_factors = base::kUnset;    ///< what those use, each times its factor
  double used = base::kUnset;            ///< the most that is used without factors
  double multiple = 1.0;                 ///< of the load, at which the shares are
};

/// What the shares use with the factor of buckling on compression and that of yield on all else.
[[nodiscard]] double used_with_factors(const Interaction& shares, double buckling, double yield);

/// The largest multiple of the load at the limit must be at least this many times it: as many times
/// as more of the limit is used once compression is multiplied by the factor of buckling and all
/// else by that of yield. In proportion, the check then holds just where H1 to H3 do under forces
/// so multiplied. In tension the factor of yield.
/// @param of_all  the shares at every place; not empty
/// @return a proposal, no source: with compression alone it is the column's factor, with bending
///         alone the section's
[[nodiscard]] CombinedAsked combined_asked(const std::vector<Interaction>& of_all, double buckling,
                                           double yield);

/// What the check of a straight member under several forces needs.
struct CombinedInput {
  BendingInput member;                  ///< with Fy at the section that decides
  std::string strength_basis = {};      ///< where its Fy comes from
  std::string place = {};               ///< where along the member that section is, in words
  CombinedDemand demand;                ///< at the load itself
  CombinedAsked asked;                  ///< its value is the required factor
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / used
};

/// Axial force with bending and torsion in a straight member.
/// @return undecided when the section has no nominal moment or torque (bending_strength.hpp)
/// Limits: straight members with a column check; torque of an open section is left to its stress.
/// Source: as `interaction`.
[[nodiscard]] Finding combined_forces(const CombinedInput& input);

}  // namespace checks
