#pragma once

#include "checks/combined_forces.hpp"
#include "studies/criterion.hpp"

namespace studies {

/// How much of the limit of its interaction a straight piece uses, at the place where that is most;
/// 0 when its column check is not decided, which leaves the piece open already.
[[nodiscard]] double combined_used(const parts::Piece& piece, const fea::Solution& solution);

/// The factor asked of it, by its compression and all else in this solution.
/// @param buckling  asked of compression
/// @param yield     asked of all else
[[nodiscard]] checks::CombinedAsked combined_factor(const parts::Piece& piece,
                                                    const fea::Solution& solution, double buckling,
                                                    double yield);

/// Whether the interaction says what no other check does: more than one kind of force counts, or
/// bending alone is limited before it yields.
[[nodiscard]] bool combined_counts(const parts::Piece& piece, const fea::Solution& solution);

/// @return nothing where it does not count
[[nodiscard]] std::optional<checks::Finding> combined_finding(const parts::Piece& piece,
                                                              const Outcome& outcome);

}  // namespace studies
