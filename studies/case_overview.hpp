#pragma once

#include <vector>

#include "checks/finding.hpp"
#include "studies/answer.hpp"
#include "studies/cell.hpp"

namespace studies {

/// How near each part comes in each load case, and the cell that decides it there.
struct CaseOverview {
  std::vector<PartInCase> parts;   ///< in the order of the findings, then of the load cases
  std::vector<const Cell*> worst;  ///< one a load case, in their order
};

/// Where a part's worst finding stands its utilization is that finding's; elsewhere it is taken in
/// proportion to the load.
/// @param cells   every load case with every stiffness set
/// @param solved  the same, in the same order
[[nodiscard]] CaseOverview case_overview(const std::vector<Cell>& cells,
                                         const std::vector<SolvedCase>& solved,
                                         const std::vector<checks::Finding>& findings);

}  // namespace studies
