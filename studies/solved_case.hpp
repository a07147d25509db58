#pragma once

#include "studies/answer.hpp"
#include "studies/set_model.hpp"

namespace studies {

/// How one solution came about.
[[nodiscard]] SolvedCase solved_case(const SetModel& model, const CaseSolution& solved);

/// Adds end forces, reactions and displacements, as plain values; none where it has not converged.
void add_numbers(SolvedCase& out, const SetModel& model, const parts::DesignCase& load_case,
                 const CaseSolution& solved);

}  // namespace studies
