#pragma once

#include <string>

#include "sections/shape.hpp"

namespace sections {

/// Resultants of the stress on a cut, in member axes, which are the section's principal axes: N and
/// the moments about the centroid, the shear forces and T about the shear center. N tension
/// positive, My = integral sigma z dA, Mz = -integral sigma y dA.
struct Resultants {
  double n = 0.0;   ///< axial force  [N]
  double vy = 0.0;  ///< shear along y  [N]
  double vz = 0.0;  ///< shear along z  [N]
  double t = 0.0;   ///< torque  [N m]
  double my = 0.0;  ///< bending about y  [N m]
  double mz = 0.0;  ///< bending about z  [N m]
};

/// Stress at the point of a section where von Mises is largest.
struct PointStress {
  std::string point;              ///< "outer fiber", "corner", "middle of the long side", ...
  double axial = base::kUnset;    ///< normal stress from N  [Pa]
  double bending = base::kUnset;  ///< normal stress from My and Mz, signed  [Pa]
  double torsion = base::kUnset;  ///< shear stress from T, magnitude  [Pa]
  double shear = base::kUnset;    ///< shear stress from Vy and Vz, magnitude  [Pa]
  double von_mises =
      base::kUnset;  ///< sqrt(sigma^2 + 3 tau^2), tau the vector sum at the point [Pa]
};

/// The worst point over the stress points of the shape.
/// - Round: the fibers of the resultant moment, the places at right angles to the resultant shear,
///   and the worst of every 5 degrees, closed in on. Shear is V Q / (I t): the mean through a
///   tube's wall, 4V/3A in a bar.
/// - Flat bar, twin plates (each takes half): corners, center, and places along all four sides,
///   with St. Venant's torsion there and shear 1.5 V / A falling off as a parabola.
/// - Rectangular tube: corners, taken sharp for bending, and places along all walls; torsion T /
/// Ct.
/// - Thin walls: both faces at the ends, quarters and middle of every wall and where the shear flow
/// is
///   largest; the flow is Jourawski's along the middle line, torsion is Bredt's flow in a closed
///   cell and T t / J at the faces.
/// - By numbers: |N|/A + |My|/Sy + |Mz|/Sz and |T|/Wt + hypot(Vy/Ay, Vz/Az), all at one extreme
///   fiber; an unset shear area counts as A. With a torque but no modulus_t, torsion and von_mises
///   are NaN: unknown.
/// Shear and torsion are superposed with sign at each point.
/// Limits: straight elastic member (bend radius over about 13 depths), no warping.
/// Source: Shigley, Mechanical Engineering Design, 9th ed., ch. 3 and eq. 5-15 (from memory);
/// Timoshenko & Goodier, Theory of Elasticity, art. 109; EN 10219-2 annex B; Beer, Johnston, DeWolf
/// and Mazurek, Mechanics of Materials, ch. 3 and 6 (from memory).
[[nodiscard]] PointStress worst_point(const Shape& shape, const Resultants& r);

/// The von Mises stress of that point, which is not named.  [Pa]
/// @param from  less than this need not be told: some of it is then, the stress of another point
[[nodiscard]] double largest_von_mises(const Shape& shape, const Resultants& r, double from = 0.0);

/// A part of a round section's outline.
struct OutlinePart {
  double middle = 0.0;  ///< from y toward z  [rad]
  double half = 0.0;    ///< to each side of the middle, 0 to pi  [rad]
  bool operator==(const OutlinePart&) const = default;
};

/// The worst point of a round bar or tube on that part of its outside; its two ends included. Of
/// any other shape the worst point of all of it.
[[nodiscard]] PointStress worst_point_within(const Shape& shape, const Resultants& r,
                                             const OutlinePart& part);

}  // namespace sections
