#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "parts/design.hpp"

namespace studies {

/// What an answer rests on that its headline must not hide.
struct Scope {
  std::size_t cases_run = 0;    ///< of the built-in load cases
  std::size_t cases_known = 0;  ///< built-in load cases; 0 = the case has no vehicle
  std::size_t own_cases = 0;    ///< load cases that the case file gives itself
  /// Parts with bolts of which nobody says whether their stack is clamped tight.
  std::vector<std::string> stacks_assumed = {};
};

[[nodiscard]] Scope scope_of(const parts::Design& design);

}  // namespace studies
