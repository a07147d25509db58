#pragma once

#include <string>

namespace cases {

/// JSON Schema (draft 2020-12) of the case file, made from the fields of the parts: what an editor
/// completes from and explains. It says which keys there are, which are required, what they mean
/// and which words may stand; what numbers must be to each other only the reader knows. It refuses
/// nothing that the reader takes.
[[nodiscard]] std::string schema();

}  // namespace cases
