#pragma once

#include "sections/shape.hpp"

namespace sections {

/// Properties of a section about its principal axes through the centroid.
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
};

/// @param shape    a shape that passes require_valid
/// @param poisson  Poisson's ratio, for Cowper's shear coefficients  [-]
/// Source: closed forms; shear coefficients after Cowper, J. Appl. Mech. 33 (1966); torsion of
/// rectangles by St. Venant's series; hollow rectangles after EN 10219-2 annex B.
[[nodiscard]] AreaProps area_props(const Shape& shape, double poisson = 0.3);

}  // namespace sections
