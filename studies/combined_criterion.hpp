#pragma once

#include "checks/combined_forces.hpp"
#include "studies/criterion.hpp"

namespace studies {

/// How much of the limit of its interaction a straight piece uses, at the place where that is most;
/// 0 when its column check is not decided, which leaves the piece open already.
[[nodiscard]] double combined_used(const parts::Piece& piece, const fea::Solution& solution);

/// Whether the interaction says what no other check does: more than one kind of force counts, or
/// bending alone is limited before it yields.
[[nodiscard]] bool combined_counts(const parts::Piece& piece, const fea::Solution& solution);

/// Both of them, and the factor asked: that of buckling by its compression, that of yield by all
/// else.
struct CombinedUse {
  double used = 0.0;
  bool counts = false;
  AskedFactor asked;
};
/// @param solution  null when the frame cannot carry the load: the larger of the two is asked
[[nodiscard]] CombinedUse combined_use(const parts::Piece& piece, const fea::Solution* solution,
                                       const checks::RequiredFactors& factors, bool abuse);

/// @return nothing where it does not count
[[nodiscard]] std::optional<checks::Finding> combined_finding(const parts::Piece& piece,
                                                              const Outcome& outcome);

}  // namespace studies
