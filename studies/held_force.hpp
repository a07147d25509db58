#pragma once

#include <vector>

#include "studies/set_model.hpp"

namespace studies {

/// Force [N] and moment about the point [N m] that hold each point of Assembly::held: of supports
/// and springs to the ground, coils with what they carry at ride height, bump stops and straps from
/// where they are met on, and the ground where it holds the axle in its place. Axes of the case;
/// large displacement: in the place reached. With the loads they sum to nothing.
/// @param solved  converged
[[nodiscard]] std::vector<fea::Vector6> held_forces(const SetModel& model,
                                                    const parts::DesignCase& load_case,
                                                    const CaseSolution& solved);

}  // namespace studies
