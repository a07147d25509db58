#pragma once

#include "fea/frame_loads.hpp"

namespace fea {

/// @throws base::InputError naming the beam, spring, point or load: a number is not finite or out
///         of its range, axes are not square to each other, a spring's stiffness is not that of a
///         spring, its two points are apart, or there are no nodes
void require_valid(const Model& model);
/// The same of one spring, or one gap.
void require_valid(const Model& model, SpringId id);
void require_valid(const Model& model, GapId id);

/// @throws base::InputError when a number is not finite or a station is not on the beam
void require_valid(const Model& model, const Loads& loads);

}  // namespace fea
