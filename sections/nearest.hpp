#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sections {

/// Letters to insert, drop, replace or swap with a neighbor to turn one word into the other;
/// capitals count as small letters.
/// Source: optimal string alignment, Damerau, Comm. ACM 7 (1964).
[[nodiscard]] int edit_distance(std::string_view a, std::string_view b);

/// @return the candidate with the least edit distance to `name`, the first of equals; empty when
///         there are no candidates
[[nodiscard]] std::string nearest(std::string_view name,
                                  const std::vector<std::string>& candidates);

}  // namespace sections
