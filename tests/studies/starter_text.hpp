#pragma once

#include <string>

namespace studies_tests {

/// Gives the first key of that name in a starter another value, where the starter has it.
inline void set_value(std::string& text, const std::string& key, const std::string& value) {
  const std::string start = "  " + key + ": ";
  const std::size_t at = text.find(start);
  if (at == std::string::npos) return;
  const std::size_t from = at + start.size();
  text.replace(from, text.find_first_of("#\n", from) - from, value + " ");
}

}  // namespace studies_tests
