#pragma once

#include <array>
#include <vector>

#include "fea/frame_loads.hpp"
#include "fea/system.hpp"

/// The beam with finite rotations: its small deformation is seen from axes that go with its chord.
namespace fea {

/// Where a rigid body, a node or a beam's end, has gone from its reference place.
struct Placed {
  Vector3 displacement_g = Vector3::Zero();  ///< [m]
  Matrix3 turn_g = Matrix3::Identity();
};

/// A dead load at one station of a beam; a line load is the sum of three (Gauss).
struct StationLoad {
  double part = base::kUnset;                ///< station over length  [-]
  Vector3 force_g = Vector3::Zero();         ///< [N]
  Vector3 moment_g = Vector3::Zero();        ///< about fixed axes  [N m]
  Eigen::Matrix<double, 3, 6> deflection_l;  ///< at the station, from the ends' local rotations
  Eigen::Matrix<double, 3, 6> rotation_l;
};

/// Loads between the ends of each beam.
[[nodiscard]] std::vector<std::vector<StationLoad>> station_loads(const System& system,
                                                                  const Loads& loads);

/// Mean axial force [N], then the rotation vectors of the ends from the chord [rad].
using Deformation = Eigen::Matrix<double, 7, 1>;
using DeformationSlope = Eigen::Matrix<double, 7, 12>;

/// A beam at a state of its ends.
struct CorotationalBeam {
  /// Gradient of its energy (less the work of its loads) with respect to the displacement and spin
  /// of end a, then b: what acts on its ends.  [N, N m]
  Vector12 ends_g;
  Vector12 excess_g;   ///< of it, what the tangent knows nothing of
  Matrix12 tangent_g;  ///< change of ends_g with displacements and spins
  Deformation deformation;
  DeformationSlope deformation_slope_g;  ///< with the ends' motions
  Matrix3 axes_gl;                       ///< columns: the moved axes, x along the chord
  std::array<Vector3, 2> local;          ///< rotation vectors of the ends in those axes  [rad]
};

/// Energy: the linear element's (its stiffness matrix, shear flexibility included) in the rotations
/// from the chord, and 1/2 E A L e^2 with the mean axial strain
/// e = (l - L) / L + mean of 1/2 (v'^2 + w'^2 + polar rx'^2) of the same deflection, so that the
/// piece has the N terms of beam_geometric and converges with few pieces.
/// Limits: local rotations up to some 0.3 rad, small strain; more pieces beyond.
/// Source: Crisfield, Comput. Methods Appl. Mech. Eng. 81 (1990); Battini and Pacoste, ibid. 191
/// (2002) (both from memory); the tangent is exact at any local rotation (derived).
/// @param factor   multiplies the loads
/// @param assumed  what the tangent is taken at instead of the beam's own deformation: one carried
/// on
///                 along the last tangent. After a step over an arc the beam's own is for the most
///                 part what the straight step stretched, which the next step takes back.
///                 Source of the idea: Magisano, Leonetti, Garcea, Comput. Methods Appl. Mech. Eng.
///                 313 (2017) (from memory).
[[nodiscard]] CorotationalBeam corotational(const BeamPart& beam,
                                            const std::vector<StationLoad>& loads, double factor,
                                            const std::array<Placed, 2>& ends,
                                            const Deformation* assumed = nullptr);

}  // namespace fea
