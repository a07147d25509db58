#pragma once

#include <string>

#include "studies/answer.hpp"

namespace report {

/// The answer in short as Markdown (CommonMark, with the pipe tables that most readers know):
/// verdict, parts, buckling, variants, what was assumed and not checked, cautions.
[[nodiscard]] std::string markdown(const studies::Answer& answer);

}  // namespace report
