#pragma once

#include <string>

#include "parts/design.hpp"

namespace bench {

/// The text of a case in cases/examples.
[[nodiscard]] std::string example_text(const std::string& name);

/// That case without its variants.
[[nodiscard]] parts::Design example_design(const std::string& name);

}  // namespace bench
