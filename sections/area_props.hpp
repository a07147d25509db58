#pragma once

#include "sections/shape.hpp"

namespace sections {

/// Properties of a section about its principal axes through the centroid, which are the y and z
/// axes of a member.
struct AreaProps {
  double area = base::kUnset;       ///< A  [m^2]
  double iyy = base::kUnset;        ///< integral z^2 dA  [m^4]
  double izz = base::kUnset;        ///< integral y^2 dA  [m^4]
  double torsion = base::kUnset;    ///< St. Venant constant J; warping is left out  [m^4]
  double shear_y = base::kUnset;    ///< shear area kappa A for Vy; infinite = no shear give  [m^2]
  double shear_z = base::kUnset;    ///< shear area kappa A for Vz  [m^2]
  double modulus_y = base::kUnset;  ///< elastic section modulus for My  [m^3]
  double modulus_z = base::kUnset;  ///< elastic section modulus for Mz  [m^3]
  double plastic_y = base::kUnset;  ///< plastic section modulus for My; unset for ByNumbers  [m^3]
  double plastic_z = base::kUnset;  ///< plastic section modulus for Mz  [m^3]
  double radius_y = base::kUnset;   ///< radius of gyration sqrt(iyy / A)  [m]
  double radius_z = base::kUnset;   ///< radius of gyration sqrt(izz / A)  [m]
  double polar = base::kUnset;      ///< iyy + izz  [m^4]
  double shear_center_y = 0.0;      ///< from the centroid, along the principal y axis  [m]
  double shear_center_z = 0.0;      ///< [m]
  double axes_angle = 0.0;  ///< from the axes the shape is drawn in to the principal ones, from y
                            ///< toward z, in [-pi/4, pi/4]  [rad]
  double centroid_y = 0.0;  ///< in the axes the shape is drawn in  [m]
  double centroid_z = 0.0;  ///< [m]
  double drawn_iyy = base::kUnset;  ///< integral z^2 dA about the centroid, axes as drawn  [m^4]
  double drawn_izz = base::kUnset;  ///< integral y^2 dA  [m^4]
  double drawn_iyz = base::kUnset;  ///< integral y z dA  [m^4]
  /// How unevenly it stands to each axis, as it gives sideways: integral z (y^2 + z^2) dA / iyy
  /// less twice shear_center_z. Of thin walls; 0 of all others, which are even.  [m]
  double asymmetry_y = 0.0;
  double asymmetry_z = 0.0;  ///< integral y (y^2 + z^2) dA / izz less twice shear_center_y  [m]

  /// @param density  [kg/m^3]
  /// @return [kg/m]
  [[nodiscard]] double mass_per_length(double density) const { return area * density; }
};

/// @param shape    a shape that passes require_valid
/// @param poisson  Poisson's ratio, for Cowper's shear coefficients  [-]
/// Thin walls: area, second moments and moduli of the mitered walls; J by Bredt (closed) and the
/// sum of strips b t^3 / 3; shear center and shear areas (by the energy of the flow) of the middle
/// line; plastic moduli with the neutral axis parallel to a principal axis. Limits: warping is left
/// out; walls are thin, so fillets and inner corners do not count. Source: closed forms; shear
/// coefficients after Cowper, J. Appl. Mech. 33 (1966); torsion of rectangles by St. Venant's
/// series; hollow rectangles after EN 10219-2 annex B; thin walls after Beer, Johnston, DeWolf and
/// Mazurek, Mechanics of Materials, ch. 3 and 6 (all from memory).
[[nodiscard]] AreaProps area_props(const Shape& shape, double poisson = 0.3);

}  // namespace sections
