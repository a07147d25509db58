#pragma once

#include "studies/answer.hpp"
#include "studies/watch.hpp"

namespace studies {

/// Looks for the smallest change that mends each check that is over, and puts what was found into
/// the answer. Each change is solved: first where the check is worst, and what holds there in all
/// load cases and stiffness sets (of a large case: in those of the checks that are over or near
/// it). A change mends a check when it is within its limit and nothing goes over that was not.
/// Changes of one kind are taken to do more the larger they are. Designs with many load cases and
/// stiffness sets are tried for their worst checks alone.
/// @param answer  to `check` of that design
/// @throws Stopped
void add_remedies(Answer& answer, const parts::Design& design, const Watch& watch = {});

}  // namespace studies
