#pragma once

#include <optional>
#include <vector>

#include "checks/finding.hpp"
#include "parts/design.hpp"
#include "studies/answer.hpp"

namespace studies {

/// What ends the axle's drop first; nothing without limit straps.
[[nodiscard]] std::optional<Droop> droop_of(const parts::Design& design);

/// What ends the axle's rise first; nothing where no more than its bump stops is known.
[[nodiscard]] std::optional<Bump> bump_of(const parts::Design& design);

/// Takes in how far up the solved load cases get.
void take_solved(Bump& bump, const std::vector<PostureExtremes>& postures);

/// Takes in where the solved droop posture is, and at what drop the first joint whose tilt is
/// limited would come to that limit, in proportion to its tilt there.
void take_solved(Droop& droop, const std::vector<PostureExtremes>& postures);

/// Whether one limit strap, and the bolts and tabs at its ends, hold when it catches the axle
/// alone; nothing without limit straps, or when the strap catch is not asked for.
[[nodiscard]] std::vector<checks::Finding> strap_findings(const parts::Design& design);

}  // namespace studies
