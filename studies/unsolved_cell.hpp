#pragma once

#include "studies/cell.hpp"

namespace studies {

/// Whether a cell goes on as another one of its load case does, for all that first order and the
/// frame's buckling say: the same stops and straps carry, the same method solves it, nothing leaves
/// its checks undecided, and the frame does not give way near the load. Where that is not so it
/// has to be solved. A proposal, as are the margins of the next function:
/// tests/studies/screening_test.cpp holds them against cells that are all solved.
/// @param solved  the same load case in another stiffness set
/// @param cell    not solved; of its lowest critical factor a bound at least is known
[[nodiscard]] bool goes_on_as(const Cell& solved, const Cell& cell);

/// The most that demand over capacity may come to in such a cell, at the load itself: as first
/// order changes from the one to the other, with half as much again for what it does not see.
/// @param cell    not solved
/// @param solved  the same load case in another stiffness set
[[nodiscard]] double at_most_unsolved(const Criterion& criterion, const Cell& cell,
                                      const Cell& solved);

}  // namespace studies
