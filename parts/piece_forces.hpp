#pragma once

#include "fea/solver.hpp"
#include "parts/assembly.hpp"

namespace parts {

/// Resultants of a cut: N and the moments about the centroid, the shear forces and the torque about
/// the shear center.
/// @param at  from end a, 0 to the beam's length  [m]
[[nodiscard]] sections::Resultants forces_at(const PieceBeam& beam, const fea::Solution& solution,
                                             double at);

/// An axial force along a beam.  [N]
struct AxialRange {
  double least;
  double most;
};
/// Positive in tension.
[[nodiscard]] AxialRange axial_range(const PieceBeam& beam, const fea::Solution& solution);

/// What acts on the two ends, in the axes of the beam (fea::Solution::end_forces).
[[nodiscard]] fea::Vector12 end_forces(const PieceBeam& beam, const fea::Solution& solution);

}  // namespace parts
