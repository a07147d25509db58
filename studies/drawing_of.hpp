#pragma once

#include <vector>

#include "checks/finding.hpp"
#include "studies/answer.hpp"
#include "studies/cell.hpp"

namespace studies {

/// Draws what was solved.
/// @param cells     every load case with every stiffness set
/// @param solved    the same, in the same order
/// @param findings  of all parts
[[nodiscard]] Drawing drawing_of(const std::vector<Cell>& cells,
                                 const std::vector<SolvedCase>& solved,
                                 const std::vector<checks::Finding>& findings);

}  // namespace studies
