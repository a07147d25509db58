#pragma once

#include <string>

#include "fea/moved_frame.hpp"
#include "fea/solution.hpp"

namespace fea {

/// The answer at a state in equilibrium under the whole of its loads.
/// @param forces  at that state
[[nodiscard]] Solution make_moved_solution(const MovedFrame& frame, const LoadCase& load_case,
                                           const MovedState& state, const std::vector<bool>& closed,
                                           const MovedForces& forces);

/// A solution without numbers that says why.
[[nodiscard]] Solution make_failed_with_words(const System& system, SolveStatus status,
                                              std::string words);

}  // namespace fea
