#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cases {

/// The layouts there is a commented case file to start from for: "link", "radius-arms",
/// "parallel-arms", "steering".
[[nodiscard]] const std::vector<std::string>& layouts();

/// The case file of a layout; empty for a name that is none.
[[nodiscard]] std::string_view starter(std::string_view layout);

}  // namespace cases
