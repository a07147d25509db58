#pragma once

#include <array>
#include <string>
#include <variant>
#include <vector>

#include "base/units.hpp"

/// Cross sections, drawn in their own y and z axes: `depth` is measured along z, `width` along y.
/// Where those are no principal axes (angles, most thin-walled lines) the member's axes are turned
/// from them: AreaProps::axes_angle.
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

/// Channel with sharp corners, walls of one thickness each: the web at y = 0, the flanges toward y.
/// A rolled one has fillets and tapered flanges besides, which add to J and little to the rest.
struct Channel {
  double depth = base::kUnset;   ///< outside, along z  [m]
  double width = base::kUnset;   ///< outside, web and flange, along y  [m]
  double web = base::kUnset;     ///< thickness  [m]
  double flange = base::kUnset;  ///< thickness  [m]
  bool operator==(const Channel&) const = default;
};

/// Angle with sharp corners and legs of one thickness: its heel at the origin, one leg along z, the
/// other along y.
struct Angle {
  double depth = base::kUnset;  ///< leg along z, outside  [m]
  double width = base::kUnset;  ///< leg along y, outside  [m]
  double wall = base::kUnset;   ///< [m]
  bool operator==(const Angle&) const = default;
};

/// Channel closed by a plate of its full depth, welded along both flange tips.
struct BoxedChannel {
  double depth = base::kUnset;   ///< outside, along z  [m]
  double width = base::kUnset;   ///< of the channel alone, along y  [m]
  double web = base::kUnset;     ///< thickness  [m]
  double flange = base::kUnset;  ///< thickness  [m]
  double plate = base::kUnset;   ///< thickness of the closing plate  [m]
  bool operator==(const BoxedChannel&) const = default;
};

/// Any line of thin walls, open or closed to one cell. Corners are mitered to a point.
struct ThinWalled {
  std::vector<std::array<double, 2>> points;  ///< y and z of the walls' middle line  [m]
  std::vector<double> walls;  ///< thickness from each point to the next; of a closed line the last
                              ///< one leads back to the first point  [m]
  bool closed = false;
  bool operator==(const ThinWalled&) const = default;
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

using Shape = std::variant<RoundBar, RoundTube, RectangularTube, FlatBar, TwinPlate, ByNumbers,
                           Channel, Angle, BoxedChannel, ThinWalled>;

/// Checks that the shape can exist.
/// @throws base::InputError with the key of the field that is wrong (`diameter`, `wall`, `depth`,
///         ...), what was found and what would do: not finite, not > 0, wall not under half of the
///         outside, corner radius not in [wall, half the smaller side], a line of walls that
///         crosses itself, folds back, lies straight or is too short for its thickness.
void require_valid(const Shape& shape);

/// "1-1/2 x 0.250 in round tube" in inches or "38.1 x 6.35 mm round tube" in millimeters. Sizes
/// that are multiples of 1/64 in are written as fractions, walls always as decimals.
[[nodiscard]] std::string describe(const Shape& shape, bool inches);

/// Its walls form no closed cell and it is no solid: in torsion it would warp, which is left out.
[[nodiscard]] bool is_open(const Shape& shape);

/// The thickness by which a material's strength is listed: a bar's diameter, a flat bar's smaller
/// side, else the thickest wall; unset for a section given by its numbers.  [m]
[[nodiscard]] double governing_thickness(const Shape& shape);

}  // namespace sections
