#pragma once

#include "app/output.hpp"
#include "app/request.hpp"

namespace app {

/// Each command from its request to all of its output.
/// @param color  whether the text is colored
/// @throws base::InputError when the case cannot be opened or read
[[nodiscard]] Output check_command(const CheckRequest& request, bool color);
[[nodiscard]] Output compare_command(const CompareRequest& request, bool color);
[[nodiscard]] Output pick_command(const PickRequest& request, bool color);
[[nodiscard]] Output new_command();

}  // namespace app
