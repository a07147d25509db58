#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/rate.hpp"

namespace report {

/// The answer to `rate`: up to where the checks hold for each design, what stops them there, and
/// the cautions. A full answer lists every value that was tried.
[[nodiscard]] std::string rated_text(const studies::Rating& rating, const TextStyle& style);

}  // namespace report
