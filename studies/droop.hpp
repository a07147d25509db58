#pragma once

#include <optional>

#include "checks/finding.hpp"
#include "parts/design.hpp"
#include "studies/answer.hpp"

namespace studies {

/// What ends the axle's drop first; nothing without limit straps.
[[nodiscard]] std::optional<Droop> droop_of(const parts::Design& design);

/// Whether one limit strap holds when it catches the axle alone; nothing without limit straps, or
/// when the strap catch is not asked for.
[[nodiscard]] std::optional<checks::Finding> strap_finding(const parts::Design& design);

}  // namespace studies
