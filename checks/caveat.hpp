#pragma once

#include <string>
#include <string_view>

namespace checks {

/// How a note starts that belongs beside the verdict, as it may turn it; a `warning: ` of how a
/// part is made stays in the calculation.
constexpr const char* kCaveat = "beware: ";
constexpr const char* kWarning = "warning: ";

[[nodiscard]] inline bool is_caveat(const std::string& note) {
  return note.rfind(kCaveat, 0) == 0;
}

[[nodiscard]] inline bool is_warning(const std::string& note) {
  return note.rfind(kWarning, 0) == 0;
}

/// What a caveat says, without that word.
[[nodiscard]] inline std::string caveat_words(const std::string& note) {
  return note.substr(std::string_view(kCaveat).size());
}

}  // namespace checks
