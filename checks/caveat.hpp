#pragma once

#include <string>

namespace checks {

/// How a note starts that belongs beside the verdict, as it may turn it; a `warning: ` of how a
/// part is made stays in the calculation.
constexpr const char* kCaveat = "beware: ";

[[nodiscard]] inline bool is_caveat(const std::string& note) {
  return note.rfind(kCaveat, 0) == 0;
}

}  // namespace checks
