#pragma once

#include "studies/answer.hpp"
#include "studies/set_model.hpp"

namespace studies {

/// The balance of a solved load case: by the linear solution, in the position before anything
/// moved, with the bump stops that are closed.
[[nodiscard]] Balance balance_of(const SetModel& model, const parts::DesignCase& load_case,
                                 const CaseSolution& solved);

}  // namespace studies
