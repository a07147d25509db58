#pragma once

#include <vector>

#include "fea/frame_loads.hpp"
#include "parts/assembly.hpp"
#include "parts/design_cases.hpp"
#include "parts/named_load.hpp"

namespace parts {

/// What acts in a load case, and what holds the axle at ride height: its weight, and each coil's
/// preload. Wheel forces act at the wheel center with the moment of the contact patch, as dead
/// loads. Without an axle, the whole lateral push goes to the link's axle bolt.
/// @throws base::InputError when a load is beyond the end of its member
[[nodiscard]] std::vector<NamedLoad> named_loads(const Assembly& assembly, const Design& design,
                                                 const DesignCase& load_case);

/// The same for the solver.
[[nodiscard]] fea::Loads put(const Assembly& assembly, const Design& design,
                             const DesignCase& load_case);

}  // namespace parts
