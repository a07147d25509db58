#pragma once

#include <map>
#include <string>

#include "studies/set_model.hpp"

namespace studies {

/// Why findings of a part cannot be decided in one load case, by part; "" stands for every part.
/// A solution that did not converge (one that is unstable is left to the stability check), bump
/// stops that are unknown or did not settle, a link or arm that turned more than 3 degrees from
/// ride height (its brackets go with it), a torque on a bar whose spin is only held by the stated
/// small stiffness.
[[nodiscard]] std::map<std::string, std::string> trouble_by_part(const SetModel& model,
                                                                 const CaseSolution& solved);

}  // namespace studies
