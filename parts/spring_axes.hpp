#pragma once

#include <optional>

#include "fea/vectors.hpp"
#include "parts/plain.hpp"

namespace parts {

/// The six-component stiffness of a spring in its own axes.  [N/m, N, N m/rad]
[[nodiscard]] fea::Matrix6 spring_stiffness(const PlainSpring& spring);

/// Whether a spring would push along with some motion instead of against it: what is coupled must
/// stay under the square root of the two rates.
[[nodiscard]] bool pushes_along(const PlainSpring& spring);

/// Right-handed unit axes as columns: x as given, z as near `z_g` as it can be.
/// @param x_g  unset = the case's x, or square to z_g where only that is given
/// @return nothing when the two directions are the same
[[nodiscard]] std::optional<fea::Matrix3> axes_of(const std::optional<fea::Vector3>& x_g,
                                                  const std::optional<fea::Vector3>& z_g);

}  // namespace parts
