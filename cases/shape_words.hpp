#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sections/shape.hpp"

namespace cases {

/// The words of `shape:`, in the order of sections::Shape.
[[nodiscard]] const std::vector<std::string>& shape_words();

/// An empty shape of that kind; nothing when the word is not known.
[[nodiscard]] std::optional<sections::Shape> shape_of_word(std::string_view word);

}  // namespace cases
