#pragma once

#include <string>

#include "checks/finding.hpp"
#include "sections/shape.hpp"
#include "sections/stress.hpp"

namespace checks {

/// How a channel with sharp corners warps, by its middle lines.
/// Source: Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., ch. 5 and appendix A, from
/// memory.
struct ChannelSectors {
  double constant;      ///< Cw  [m^6]
  double shear_center;  ///< from the web's middle line, away from the flanges  [m]
  double most;          ///< largest sectorial coordinate, at a flange's tip or its corner  [m^2]
};
[[nodiscard]] ChannelSectors channel_sectors(const sections::Channel& channel);

/// What acts on a cut of a channel that warps as it twists.
struct WarpedCut {
  sections::Resultants resultants;  ///< t: all of the torque
  double st_venant = 0.0;           ///< of it, what twists the walls; the rest warps  [N m]
  double bimoment = 0.0;            ///< [N m^2]
};

/// A channel under bending, torque and bimoment: the largest stress of each, taken at one place.
class WarpedChannel {
 public:
  explicit WarpedChannel(const sections::Channel& channel);

  [[nodiscard]] double along(const WarpedCut& cut) const;  ///< normal stress  [Pa]
  [[nodiscard]] double shear(const WarpedCut& cut) const;  ///< [Pa]
  [[nodiscard]] double von_mises(const WarpedCut& cut) const;

  /// What a check prints.
  struct Numbers {
    double area = 0.0;
    double modulus_y = 0.0;
    double modulus_z = 0.0;
    double torsion_modulus = 0.0;  ///< J over the thickest wall  [m^3]
    double sector_modulus = 0.0;   ///< Cw over the largest sectorial coordinate  [m^4]
    double web = 0.0;              ///< area that carries the shear along the depth  [m^2]
    double flange = 0.0;           ///< area of one flange  [m^2]
    double between = 0.0;          ///< middle to middle of the flanges  [m]
  };
  [[nodiscard]] const Numbers& numbers() const { return numbers_; }

 private:
  Numbers numbers_;
};

struct WarpedChannelInput {
  sections::Channel shape;
  WarpedCut cut;
  double elastic = base::kUnset;   ///< E  [Pa]
  double strength = base::kUnset;  ///< yield strength  [Pa]
  std::string strength_basis = {};
  std::string ends = {};  ///< what its warping is taken as where its twist is held
  double safety_factor = base::kUnset;
  double required = base::kUnset;
};

/// Bending, warping and St. Venant's torsion together against the yield strength.
/// @return undecided where a wall may buckle before it yields
/// Limits: a straight channel of one section between places that hold its twist; the largest stress
/// of each kind taken at one place, which is an upper estimate.
/// Source: sum of the stresses of bending, warping and torsion: AISC Design Guide 9, ch. 4, from
/// memory; von Mises, Shigley, Mechanical Engineering Design, 9th ed., eq. 5-15.
[[nodiscard]] Finding warped_channel(const WarpedChannelInput& input);

}  // namespace checks
