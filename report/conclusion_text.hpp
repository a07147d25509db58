#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "studies/answer.hpp"

namespace report {

/// What a variant comes to beside the design it is compared with, in one sentence: its verdict, the
/// worst check of both, the root moment and the mass where they change. Of a variant that leaves
/// the brace out, where the same design with it is known: what the brace does to the root moment at
/// each end of the rail's stiffness, and what governs the brace itself.
/// @param index  of the variant
[[nodiscard]] std::string conclusion(const studies::Comparison& comparison, std::size_t index);

/// "brace: root moment 7.0 % (soft rail) to 82 % (stiff rail) of that without it"; nothing where no
/// variant leaves the brace out.
[[nodiscard]] std::optional<std::string> brace_benefit(const studies::Comparison& comparison);

/// Whether a variant's name says that it has no brace.
[[nodiscard]] bool leaves_brace_out(const std::string& name);

}  // namespace report
