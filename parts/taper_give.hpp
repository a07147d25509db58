#pragma once

#include <functional>

#include "fea/frame_model.hpp"

namespace parts {

/// What a beam gives whose section changes evenly along it: by eight Gauss points, good to 1e-5 of
/// it where one end is four times as deep as the other, to 3e-3 where it is ten times.
/// @param section_at  at a distance from end a  [m]
[[nodiscard]] fea::TaperGive taper_give(
    const std::function<sections::AreaProps(double)>& section_at, double length);

}  // namespace parts
