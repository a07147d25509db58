#pragma once

#include "app/request.hpp"

namespace app {

/// Whether standard output is to be colored: as asked; on `auto` when it is a terminal that has
/// colors (TERM is not `dumb`) and NO_COLOR is not set.
[[nodiscard]] bool use_color(ColorChoice choice);

/// Columns of the terminal on standard error; 0 when it is none.
[[nodiscard]] int message_columns();

}  // namespace app
