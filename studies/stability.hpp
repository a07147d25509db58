#pragma once

#include <map>
#include <string>
#include <vector>

#include "checks/required_factors.hpp"
#include "fea/buckling.hpp"
#include "parts/assembly.hpp"
#include "studies/answer.hpp"

namespace studies {

/// A critical factor of the assembly and what goes: the part with most of the mode's strain energy,
/// or, where springs and joints hold more than half of it, the axle tipping, or the link and its
/// bracket swaying.
struct ModeOf {
  CriticalFactor critical;
  std::string part;             ///< whose finding it is
  std::string energy_in;        ///< what holds most of the strain energy
  double share = base::kUnset;  ///< of the strain energy, in that  [-]
  /// The same in the beams of each part; none where the axle tips: that is no column's mode.  [-]
  std::map<std::string, double> shares = {};
  /// Part of the strain energy in joints of bars whose spin is only held by the stated small
  /// stiffness.  [-]
  double in_spin = 0.0;
};
[[nodiscard]] std::vector<ModeOf> modes_of(const fea::BucklingResult& buckling,
                                           const parts::Assembly& assembly);

/// A straight piece's own factor between its joints, pi^2 E I / L^2 over its compression; nothing
/// when it is not compressed.
[[nodiscard]] std::vector<CriticalFactor> own_factors(const parts::Assembly& assembly,
                                                      const fea::Solution& solution);

/// Of modes in the order of their factors the first of each way that is asked a factor of its own:
/// the axle tipping, and all else. They point into `modes`.
[[nodiscard]] std::vector<const ModeOf*> first_of_each_way(const std::vector<ModeOf>& modes);

/// The largest factor asked of any way in which a frame may lose its stiffness.
[[nodiscard]] double most_asked_of(const parts::Assembly& assembly,
                                   const checks::RequiredFactors& factors, bool abuse);

/// The factor asked of a frame that loses its stiffness so.
[[nodiscard]] double asked_of(const ModeOf& mode, const parts::Assembly& assembly,
                              const checks::RequiredFactors& factors, bool abuse);

}  // namespace studies
