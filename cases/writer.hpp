#pragma once

#include <string>

#include "parts/design.hpp"

namespace cases {

/// A case file that reads back to an equal design: every field is written out, so nothing is left
/// to assume.
[[nodiscard]] std::string write(const parts::Design& design);

}  // namespace cases
