#pragma once

#include <string>

#include "studies/answer.hpp"

namespace report {

/// The center lines of all pieces as an unstructured grid in XML with ASCII numbers, for viewers of
/// the VTK file formats: points in the reference place, and for each load case the displacement
/// (for viewers that warp), the resultants on the cut and the utilization, at the part's worst too.
/// SI. Line segments; the cautions stand in a comment.
/// @param answer  with a drawing
/// Source: VTK File Formats, "XML file formats", unstructured grid (from memory).
[[nodiscard]] std::string vtu(const studies::Answer& answer);

}  // namespace report
