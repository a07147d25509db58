#pragma once

/// Strengths of straight and slightly bowed columns, as plain formulas.
namespace checks {

/// Slenderness Lc / r at which E3 passes from inelastic to elastic buckling: 4.71 sqrt(E / Fy).
[[nodiscard]] double column_e3_limit(double elastic, double yield);

/// Nominal buckling stress Fn of a column.
/// @param elastic  E  [Pa]
/// @param yield  Fy  [Pa]
/// @param slenderness  Lc / r, > 0  [-]
/// @return 0.658^(Fy / Fe) Fy up to 4.71 sqrt(E / Fy), beyond it 0.877 Fe  [Pa]
/// Source: AISC 360-22 E3, from memory; the same curve read in AISC LRFD 1999, appendix E.
[[nodiscard]] double column_e3(double elastic, double yield, double slenderness);

/// Elastic buckling stresses of a member that is free to twist between its ends.
struct FlexuralTorsional {
  double about_y;    ///< pi^2 E / (Lc/r)^2 about its principal y axis  [Pa]
  double about_z;    ///< the same about z  [Pa]
  double torsional;  ///< (G J + pi^2 E Cw / Lc^2) / (A ro^2)  [Pa]
  double offset_y;   ///< shear center from centroid along y, over ro  [-]
  double offset_z;   ///< along z, over ro; ro^2 = (Iy + Iz) / A + both offsets squared  [-]
};

/// Least root of equation E4-4: bending and twisting together.  [Pa]
/// Source: AISC 360-22 E4, from memory.
[[nodiscard]] double flexural_torsional_e4(const FlexuralTorsional& member);

/// Effective over gross area of a round tube in compression.
/// @param diameter_over_wall  D / t, under 0.45 E / Fy  [-]
/// @return 0.038 E / (Fy D/t) + 2/3, at most 1; 1 up to D/t = 0.11 E / Fy  [-]
/// Source: AISC 360-22 E7, from memory.
[[nodiscard]] double round_tube_e7(double elastic, double yield, double diameter_over_wall);

/// Euler's load pi^2 E I / Lc^2.  [N]
[[nodiscard]] double euler_load(double elastic, double second_moment, double effective_length);

/// Slenderness up to which Johnson's parabola holds: sqrt(2 pi^2 E / Sy), where both give Sy / 2.
[[nodiscard]] double johnson_limit(double elastic, double yield);

/// Johnson's load A [Sy - (Sy (Lc/r) / (2 pi))^2 / E], for a slenderness up to johnson_limit.  [N]
/// Source: Shigley, Mechanical Engineering Design, 9th ed., eq. 4-43 to 4-46 (read).
[[nodiscard]] double johnson_load(double elastic, double yield, double area, double slenderness);

/// A column with a sine-shaped bow.
struct CrookedColumn {
  double area;     ///< A  [m^2]
  double modulus;  ///< elastic section modulus across the bow  [m^3]
  double yield;    ///< Sy  [Pa]
  double euler;    ///< its Euler load when straight  [N]
  double bow;      ///< a, at midspan, >= 0  [m]
};

/// Load at which the fiber on the hollow side first yields: the smaller root of
/// P/A + (P a / S) / (1 - P/Pe) = Sy.  [N]
/// Source: Perry; Mott, Machine Elements in Mechanical Design, 4th ed., sec. 6-11 (read).
[[nodiscard]] double crooked_column(const CrookedColumn& column);

/// The same by the secant formula, the bow taken as an eccentricity of the load at both ends, which
/// asks a little more: P/A (1 + (a A / S) / cos(pi/2 sqrt(P/Pe))) = Sy.  [N]
/// Source: Shigley, Mechanical Engineering Design, 9th ed., eq. 4-50, from memory.
[[nodiscard]] double secant_column(const CrookedColumn& column);

}  // namespace checks
