#pragma once

#include <string>

#include "checks/finding.hpp"
#include "studies/set_model.hpp"

namespace studies {

/// Where the numbers of a finding come from: how they were solved, and what acts on the ends of
/// each piece of the part, in the piece's own axes.
/// @param used      the solution the finding was written from: one of the two of `solved`
/// @param multiple  of the load case, at which `solved` was solved
[[nodiscard]] checks::Origin origin_of(const parts::Assembly& assembly, const std::string& part,
                                       const CaseSolution& solved, const fea::Solution& used,
                                       double multiple);

}  // namespace studies
