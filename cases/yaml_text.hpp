#pragma once

#include <string>
#include <string_view>

namespace cases {

/// A text as one YAML scalar on one line, quoted only where it must be: as a key, as a value of a
/// block, and (with `in_list`) between brackets.
[[nodiscard]] std::string yaml_text(std::string_view text, bool in_list = false);

}  // namespace cases
