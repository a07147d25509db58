#pragma once

#include <string_view>

namespace cases {

/// A small commented case file to start from: a lateral link with a braced bracket.
[[nodiscard]] std::string_view small_case();

}  // namespace cases
