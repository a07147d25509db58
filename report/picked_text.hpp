#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/pick.hpp"

namespace report {

/// The answer to `pick`: the lightest size that passes, its neighbors, what stops the lighter ones,
/// and the cautions. A full answer lists every size that was tried.
[[nodiscard]] std::string picked_text(const studies::Picked& picked, const TextStyle& style);

}  // namespace report
