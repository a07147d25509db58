#pragma once

#include <string>

#include "fea/frame_model.hpp"

/// How messages call the things of a model.
namespace fea {

[[nodiscard]] std::string label(const Model& model, NodeId node);  ///< "point `tip`", "node 3"
[[nodiscard]] std::string label(const Model& model, BeamId beam);  ///< "beam `arm`", "beam 3"
[[nodiscard]] std::string label(const Model& model,
                                SpringId spring);                ///< "spring `coil`", "spring 3"
[[nodiscard]] std::string label(const Model& model, GapId gap);  ///< "gap `strap`", "gap 3"

/// "x" when the direction is within a degree of an axis, else "(0.00, 0.71, 0.71)". The sign that
/// makes the largest component positive is taken.
[[nodiscard]] std::string direction_words(const Vector3& direction_g);

}  // namespace fea
