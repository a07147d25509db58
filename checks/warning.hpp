#pragma once

#include <string>

namespace checks {

/// How a note starts that belongs beside the verdict, not only into the calculation.
constexpr const char* kWarning = "warning: ";

[[nodiscard]] inline bool is_warning(const std::string& note) {
  return note.rfind(kWarning, 0) == 0;
}

}  // namespace checks
