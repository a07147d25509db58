#pragma once

#include <map>
#include <string>

#include "studies/set_model.hpp"

namespace studies {

/// Why findings of a part cannot be decided in one load case, by part; "" stands for every part.
/// A solution that did not converge (one that is unstable is left to the stability check), bump
/// stops that are unknown or did not settle, in second order what moves far (brackets go with their
/// link), a member bent too far for large displacements, a torque on a bar whose spin is only held
/// by the stated small stiffness.
[[nodiscard]] std::map<std::string, std::string> trouble_by_part(const SetModel& model,
                                                                 const CaseSolution& solved);

/// Whether a case that is in no trouble comes so near to one (proposal) that another like it may be
/// in it.
/// @param near  of what would leave it in trouble
[[nodiscard]] bool is_near_trouble(const SetModel& model, const CaseSolution& solved,
                                   double near = 0.9);

/// Whether small rotations no longer do: a link or arm turned more than 3 degrees from ride height,
/// a bracket leans more than 10, or second order did not converge.
[[nodiscard]] bool moves_far(const SetModel& model, const CaseSolution& second_order);

}  // namespace studies
