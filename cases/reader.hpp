#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/input_error.hpp"
#include "cases/reading_context.hpp"
#include "parts/design.hpp"

namespace cases {

/// What became of a case file: a design, or every problem that could be found, by line.
struct Reading {
  std::optional<parts::Design> design;
  std::vector<base::InputError> problems;
  Places places;
  std::string file;

  /// A problem that was found after reading, at the place of its key in the file.
  [[nodiscard]] base::InputError locate(const base::InputError& error) const;
};

/// Reads a case file.
/// @param text       the whole file
/// @param file_name  for messages
[[nodiscard]] Reading read(std::string_view text, const std::string& file_name);

}  // namespace cases
