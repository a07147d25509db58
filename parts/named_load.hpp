#pragma once

#include <string>
#include <variant>

#include "fea/frame_loads.hpp"

namespace parts {

/// The weight of every beam whose density is known.
struct OwnWeight {
  fea::Vector3 gravity_g = fea::Vector3::Zero();  ///< [m/s^2]
};

/// One load on the frame, and what it comes from.
struct NamedLoad {
  std::string what;  ///< "left wheel", "axle and wheels, weight"
  std::variant<fea::NodeLoad, fea::BeamPointLoad, fea::BeamLineLoad, fea::BeamStrain,
               fea::SupportMove, OwnWeight>
      load;
  bool coil_at_rest = false;  ///< what a coil carries at ride height: it holds, it does not act
};

/// A force through the origin and a moment.
struct Resultant {
  fea::Vector3 force_g = fea::Vector3::Zero();   ///< [N]
  fea::Vector3 moment_g = fea::Vector3::Zero();  ///< about the origin  [N m]
};

/// What a load does to the frame as a whole, before it moves. Heat, wrong fit and moved supports
/// push at nothing outside: theirs is 0.
[[nodiscard]] Resultant resultant_of(const NamedLoad& load, const fea::Model& model);

}  // namespace parts
