#pragma once

#include <string>

#include "app/completion.hpp"
#include "report/json.hpp"

namespace app {

/// The manual page of the program, section 1, from its real commands; in the `man` macros of troff.
[[nodiscard]] std::string manual_page(const CommandTree& tree, const report::Program& program);

}  // namespace app
