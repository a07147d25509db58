#pragma once

#include <optional>
#include <vector>

#include "studies/cell.hpp"
#include "studies/stability.hpp"

namespace studies {

/// How a cell's frame buckles, less the modes that are none.
///
/// Where a bar bends before it buckles, K + s Kg turns its bending moment with the bar when it
/// spins about the line between its joints. A round bar's stays where it is (the effect of
/// prebuckling curvature: Trahair, Flexural-Torsional Buckling of Structures (1993), from memory),
/// so what hardly anything holds against spinning gets a factor of its own, far too low. A mode
/// with a visible part of its strain energy in the stated small stiffness against spinning is left
/// out when the frame carries half as much again, stable in the deformed position.
struct SeenBuckling {
  fea::BucklingResult result;
  std::vector<ModeOf> modes;
  double passed = base::kUnset;  ///< highest factor left out
};
/// @param beside  of the same load case in another stiffness set: where to look first; saves time,
///                and has no say in the answer
[[nodiscard]] SeenBuckling seen_buckling(const Cell& cell, int n_reversed,
                                         const fea::BucklingResult* beside = nullptr);
/// The same of a cell that is not solved, stops and straps as first order has them; nothing where
/// the lowest mode may be none, which only solutions tell.
[[nodiscard]] std::optional<SeenBuckling> buckling_by_first_order(
    const Cell& cell, const fea::BucklingResult* beside);

}  // namespace studies
