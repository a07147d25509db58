#pragma once

#include <cstddef>
#include <string>

#include "report/text_style.hpp"

namespace report {

/// How much of a study that was stopped is complete; empty when all of it is.
/// @param things  "sizes"
[[nodiscard]] std::string stopped_words(std::size_t done, std::size_t all, const char* things,
                                        const TextStyle& style);

}  // namespace report
