#pragma once

#include <optional>
#include <vector>

#include "studies/answer.hpp"
#include "studies/cell.hpp"

namespace studies {

/// What the duty uses of the life of every place that a category is known for, at the worst
/// stiffness set of each: toe and root of every weld that is known, threads and shanks of bolts,
/// holes, plain metal. Ranges are those between two load cases at the loads themselves.
/// @param cells  all that were solved; load cases of the duty that are not among them are left out
/// @return nothing when no block of the duty could be used
[[nodiscard]] std::optional<Life> life_of(const parts::Design& design,
                                          const std::vector<Cell>& cells);

}  // namespace studies
