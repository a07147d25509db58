#pragma once

#include <string_view>
#include <vector>

namespace cases {

/// A key at the top of a case file.
struct TopKey {
  std::string_view key;
  std::string_view meaning;  ///< one line, for the format reference
};

/// Every key that may stand at the top of a case file.
[[nodiscard]] const std::vector<TopKey>& top_keys();

}  // namespace cases
