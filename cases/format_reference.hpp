#pragma once

#include <string>

namespace cases {

/// What a case file may say, key by key, as Markdown: the text of cases/format/format-text.md with
/// its tables made from the fields that the reader reads, and its examples from the case files
/// beside it.
[[nodiscard]] std::string format_reference();

}  // namespace cases
