#pragma once

#include "app/request.hpp"

namespace app {

/// What the arguments ask for. Never throws on a wrong command: that is a Notice of status 2.
[[nodiscard]] Request parse_command_line(int argc, const char* const* argv);

}  // namespace app
