#pragma once

#include <cstddef>
#include <vector>

#include "fea/solver.hpp"
#include "parts/assembly.hpp"

namespace parts {

/// sqrt(E Cw / (G J)) of a channel.  [m]
[[nodiscard]] double warping_length(const sections::Channel& channel,
                                    const sections::Material& steel);

/// What the torque of a channel is made of at one place.
struct WarpedTorque {
  double st_venant = 0.0;  ///< what twists its walls; the rest warps  [N m]
  double bimoment = 0.0;   ///< [N m^2]
};

/// Both ends of one beam of such a channel.
struct WarpedEnds {
  WarpedTorque a;
  WarpedTorque b;
};

/// One beam on the way between two places that hold the twist.
struct TwistedBeam {
  double length = 0.0;  ///< [m]
  double torque = 0.0;  ///< [N m]
};

/// At which ends the warping is held; at the others it is free.
struct HeldEnds {
  bool a = false;
  bool b = false;
};

/// How the torques of a bar that warps divide between places that hold its twist, and its
/// bimoments: u - w^2 u'' = T, u the part by St. Venant, B = -w^2 u', w = sqrt(E Cw / (G J)); where
/// the twist is held u' = 0 (warping free) or u = 0 (held).
/// Source: Vlasov's bar, Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., ch. 5, from
/// memory; its exact elements, derived.
[[nodiscard]] std::vector<WarpedEnds> warped_torques(const std::vector<TwistedBeam>& beams,
                                                     double length, HeldEnds held);

/// The same for each beam of a piece with `warping`, from the torques that the frame gives it: one
/// list, or one for each way in which its ends may be held. Beyond the last place that holds its
/// twist it does not warp.
[[nodiscard]] std::vector<std::vector<WarpedEnds>> warped_ways(const Piece& piece,
                                                               const fea::Solution& solution);

}  // namespace parts
