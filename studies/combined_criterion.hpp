#pragma once

#include "checks/combined_forces.hpp"
#include "studies/criterion.hpp"

namespace studies {

/// The interaction of a straight piece at the place where it is largest; all 0 when its column
/// check is not decided, which leaves the piece open already.
[[nodiscard]] checks::Interaction combined_terms(const parts::Piece& piece,
                                                 const fea::Solution& solution);

/// @return nothing where one kind of force alone counts: another check says all of it
[[nodiscard]] std::optional<checks::Finding> combined_finding(const parts::Piece& piece,
                                                              const Outcome& outcome);

}  // namespace studies
