#pragma once

#include "studies/answer.hpp"
#include "studies/set_model.hpp"

namespace studies {

/// End forces, reactions and displacements of one solution, as plain values.
[[nodiscard]] SolvedCase solved_case(const SetModel& model, const CaseSolution& solved);

}  // namespace studies
