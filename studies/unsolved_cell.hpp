#pragma once

#include "studies/cell.hpp"
#include "studies/known_design.hpp"

namespace studies {

/// Whether a cell goes on as another one of its load case does, for all that first order and the
/// frame's buckling say: the same stops and straps carry, the same method solves it, nothing leaves
/// its checks undecided, and the frame does not give way near the load. Where that is not so it
/// has to be solved. A proposal, as are the margins of the next function:
/// tests/studies/screening_test.cpp holds them against cells that are all solved.
/// @param known  of the same load case in another stiffness set, or in a design that differs in
///               little
/// @param cell   not solved; of its lowest critical factor a bound at least is known
[[nodiscard]] bool goes_on_as(const KnownCell& known, const Cell& cell);

/// The most that demand over capacity may come to in such a cell, at the load itself: as first
/// order changes from the one to the other, with half as much again for what it does not see.
/// @param first_order  demand over capacity by that, in the cell
/// @param critical     its lowest critical factor
/// @param known        what the check asks where it is; infinite comes of one that is not known
[[nodiscard]] double at_most_unsolved(double first_order, double critical,
                                      const KnownDemand& known);

/// The least that a demand changes by where first order changes by so much from a design, or a
/// cell, that is known: less half of the change, for what it does not see.
[[nodiscard]] double at_least_by(double first_order);

/// What one of four comes to at most where the three others are known, two of a design here and two
/// of one there that differs in little, each in the same two sets: changed as there, and half of
/// both changes together for what is not seen. Infinite where it cannot be told.
/// @param beside        here, in the other set
/// @param there         in the design there, in the set that is asked for
/// @param beside_there  in both others
[[nodiscard]] double at_most_as_there(double beside, double there, double beside_there);

}  // namespace studies
