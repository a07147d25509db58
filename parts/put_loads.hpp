#pragma once

#include <string>
#include <vector>

#include "fea/frame_loads.hpp"
#include "loads/load_case.hpp"
#include "parts/assembly.hpp"

namespace parts {

/// One load case of a design: built-in, or the forces the case file gives.
struct DesignCase {
  std::string name;
  bool abuse = false;
  std::string basis;
  std::vector<loads::Push> pushes;        ///< built-in: on the axle and link, static load included
  std::vector<Named<PlainForce>> forces;  ///< given in the case file, as all below
  std::vector<Named<LineLoad>> line_loads = {};
  std::vector<Named<GivenStrain>> strains = {};
  std::vector<Named<Settlement>> settlements = {};
  std::vector<Named<SelfWeight>> self_weight = {};
};

/// The load cases of a design, built-in ones first.
/// @throws base::InputError when a built-in case needs vehicle data that is not given
[[nodiscard]] std::vector<DesignCase> design_cases(const Design& design);

/// What holds the axle at ride height: its own weight, and each coil's preload.
/// Wheel forces act at the wheel center with the moment of the contact patch, as dead loads.
/// @throws base::InputError when a load is beyond the end of its member
/// Without an axle, the whole lateral push goes to the link's axle bolt.
[[nodiscard]] fea::Loads put(const Assembly& assembly, const Design& design,
                             const DesignCase& load_case);

}  // namespace parts
