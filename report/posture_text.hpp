#pragma once

#include <string>
#include <vector>

#include "studies/posture.hpp"

namespace report {

/// One paragraph a posture: where the axle gets to, what stops and straps carry, and how far each
/// joint turns, at most over its load cases and stiffness sets.
[[nodiscard]] std::vector<std::string> posture_words(
    const std::vector<studies::PostureExtremes>& postures, bool inches);

/// The bushing whose rate lets it give most, where that is more than rubber is thick; empty
/// elsewhere.
[[nodiscard]] std::string squeezed_words(const std::vector<studies::PostureExtremes>& postures,
                                         bool inches);

}  // namespace report
