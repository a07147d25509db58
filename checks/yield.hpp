#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "sections/shape.hpp"
#include "sections/stress.hpp"

namespace checks {

/// The other strength of a piece that a weld weakens in places.
struct OtherStrength {
  std::vector<std::array<double, 2>> weld_zones;  ///< from and to, along the piece  [m]
  bool zone_decides = true;         ///< the worst point lies in one: this is the parent's strength
  double strength = base::kUnset;   ///< [Pa]
  double von_mises = base::kUnset;  ///< largest where it holds; unset = it holds nowhere  [Pa]
  std::string basis;
};

/// What the yield check of one section of a bar, tube or plate needs.
struct YieldInput {
  sections::Shape shape;
  sections::Resultants resultants;  ///< at the load itself
  sections::PointStress worst;      ///< of `shape` under `resultants`
  double strength = base::kUnset;   ///< yield strength that applies at this place  [Pa]
  std::string strength_basis;       ///< "heat-affected zone of a weld: A513 1020 normalized row"
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve, at which the worst point stays under `strength`
  double required = base::kUnset;
  std::optional<sections::Resultants> at_limit;  ///< at safety_factor times the load
  std::optional<OtherStrength> other = {};       ///< unset = one strength all along
  /// The part of a round outside that `worst` is of; unset = all of it
  std::optional<sections::OutlinePart> on_side = {};
  /// At a bend, where bending stress is more than a straight bar's: My and Mz are so many times
  /// what the frame has there.
  double at_bend = 1.0;
};

/// Von Mises stress at the worst point of a section against the yield strength.
/// @return undecided when the stress is not known (a section given by its numbers without a
///         torsion modulus, under torque) or when no safety factor was found
/// Limits: as sections::worst_point.
/// Source: distortion energy, Shigley, Mechanical Engineering Design, 9th ed., eq. 5-15.
[[nodiscard]] Finding yield(const YieldInput& input);

}  // namespace checks
