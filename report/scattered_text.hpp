#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/scatter.hpp"

namespace report {

/// The answer to `scatter`: the share over the limit with its interval, what moves the result most,
/// the distributions and the cautions. A full answer lists every sample.
[[nodiscard]] std::string scattered_text(const studies::Scattered& scattered,
                                         const TextStyle& style);

}  // namespace report
