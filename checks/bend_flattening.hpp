#pragma once

#include "sections/shape.hpp"

namespace checks {

/// What a round tube loses at a bend because its section flattens there as it is bent.
struct Flattening {
  double give = 1.0;    ///< bending flexibility over that of the round section, in every plane
  double stress = 1.0;  ///< bending stress to hold against yield, over that of the round section
};

/// By h = t R / r^2, r the radius of the middle of the wall: give 1.65 / h, stress 1.30 / h^(2/3),
/// each at least 1. Of other shapes nothing is lost: a bar keeps its section, and for other
/// hollow ones nothing is offered.
/// @param radius  of the center line of the bend  [m]
/// Limits: bends with straight tube beyond both ends; elastic give, and a stress that stands for
/// the moment at which the bend folds up. Source: ASME B31.1 app. D (give) and ASME III NB-3683
/// (B2 of elbows), both from memory; give after von Karman, 1911.
[[nodiscard]] Flattening bend_flattening(const sections::Shape& shape, double radius);

}  // namespace checks
