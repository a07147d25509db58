#pragma once

#include <string>
#include <variant>

#include "base/units.hpp"

/// Cross sections. Member axes: x along the member, y and z principal axes of the section.
/// `depth` is measured along z (a moment My bends it), `width` along y (a moment Mz bends it).
namespace sections {

/// Solid round bar.
struct RoundBar {
  double diameter = base::kUnset;  ///< [m]
  bool operator==(const RoundBar&) const = default;
};

/// Round tube.
struct RoundTube {
  double outside = base::kUnset;  ///< outside diameter  [m]
  double wall = base::kUnset;     ///< [m]
  bool operator==(const RoundTube&) const = default;
};

/// Square or rectangular tube with rounded corners.
struct RectangularTube {
  double depth = base::kUnset;   ///< outside, along z  [m]
  double width = base::kUnset;   ///< outside, along y  [m]
  double wall = base::kUnset;    ///< [m]
  double corner = base::kUnset;  ///< outside corner radius; the inside one is corner - wall  [m]
  bool operator==(const RectangularTube&) const = default;
};

/// Flat bar or plate on edge.
struct FlatBar {
  double depth = base::kUnset;  ///< along z  [m]
  double width = base::kUnset;  ///< along y  [m]
  bool operator==(const FlatBar&) const = default;
};

/// Two equal parallel plates, `gap` apart (clear) along y, each `depth` along z by `thickness`.
/// They share loads in their own plane; across it each plate bends alone, since nothing is
/// counted on to tie them between their ends.
struct TwinPlate {
  double depth = base::kUnset;      ///< along z  [m]
  double thickness = base::kUnset;  ///< of one plate, along y  [m]
  double gap = base::kUnset;        ///< clear distance between the plates  [m]
  bool operator==(const TwinPlate&) const = default;
};

/// A section known by its numbers alone.
struct ByNumbers {
  double area = base::kUnset;       ///< [m^2]
  double iyy = base::kUnset;        ///< integral z^2 dA  [m^4]
  double izz = base::kUnset;        ///< integral y^2 dA  [m^4]
  double torsion = base::kUnset;    ///< St. Venant constant J  [m^4]
  double shear_y = base::kUnset;    ///< shear area for Vy; unset = no shear give, stress V/A  [m^2]
  double shear_z = base::kUnset;    ///< shear area for Vz  [m^2]
  double modulus_y = base::kUnset;  ///< elastic section modulus for My  [m^3]
  double modulus_z = base::kUnset;  ///< elastic section modulus for Mz  [m^3]
  double modulus_t =
      base::kUnset;  ///< torsion modulus T/tau; unset = torsional stress unknown  [m^3]
  bool operator==(const ByNumbers&) const = default;
};

using Shape = std::variant<RoundBar, RoundTube, RectangularTube, FlatBar, TwinPlate, ByNumbers>;

/// Checks that the shape can exist.
/// @throws base::InputError with the key of the field that is wrong (`diameter`, `wall`, `depth`,
///         ...), what was found and what would do: not finite, not > 0, wall not under half of the
///         outside, corner radius not in [wall, half the smaller side].
void require_valid(const Shape& shape);

/// "1-1/2 x 0.250 in round tube" in inches or "38.1 x 6.35 mm round tube" in millimeters. Sizes
/// that are multiples of 1/64 in are written as fractions, walls always as decimals.
[[nodiscard]] std::string describe(const Shape& shape, bool inches);

}  // namespace sections
