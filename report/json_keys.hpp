#pragma once

#include <string_view>
#include <vector>

namespace report {

/// A key of the JSON output, the unit of its number, and its meaning.
struct JsonKey {
  std::string_view key;
  std::string_view meaning;
};

/// Every key that holds a number, a list of numbers, or text that needs a word of explanation.
[[nodiscard]] const std::vector<JsonKey>& json_keys();

}  // namespace report
