#pragma once

#include "checks/combined_forces.hpp"
#include "studies/criterion.hpp"

namespace studies {

/// The interaction of a straight piece at the place where it is largest; all 0 when its column
/// check is not decided, which leaves the piece open already.
[[nodiscard]] checks::Interaction combined_terms(const parts::Piece& piece,
                                                 const fea::Solution& solution);

/// Whether the interaction says what no other check does: more than one kind of force counts, or
/// bending alone is limited before it yields.
[[nodiscard]] bool combined_counts(const parts::Piece& piece, const fea::Solution& solution);

/// @return nothing where it does not count
[[nodiscard]] std::optional<checks::Finding> combined_finding(const parts::Piece& piece,
                                                              const Outcome& outcome);

}  // namespace studies
