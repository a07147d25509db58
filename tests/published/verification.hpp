#pragma once

#include <string>
#include <string_view>

/// Values from outside the project, each beside what the project computes for it.
namespace published {

/// How a published value came here.
enum class Basis {
  read,                 ///< seen in the source, or in a copy of its page
  from_memory,          ///< recalled from the source, then recomputed
  formula_from_memory,  ///< its formula recalled from the source, its number worked out from that
  common_practice,      ///< a hand calculation that stands in no source
  general_finite_elements,  ///< computed by a general finite-element library
};

struct Source {
  std::string_view name;  ///< author or standard, edition, clause, table or example
  Basis basis;
};

/// How far a computed value may be from the published one.
struct Tolerance {
  enum class Kind { as_printed, relative, absolute };
  Kind kind = Kind::as_printed;
  double value = 0.0;
};

/// Half a unit of the last digit printed.
[[nodiscard]] constexpr Tolerance as_printed() {
  return {};
}
/// @param share  of the published value  [-]
[[nodiscard]] constexpr Tolerance within(double share) {
  return {Tolerance::Kind::relative, share};
}
/// @param distance  in the unit of the published value
[[nodiscard]] constexpr Tolerance within_absolute(double distance) {
  return {Tolerance::Kind::absolute, distance};
}

/// Asserts that a computed value agrees with a published one. When the environment variable
/// LINKMARGIN_VERIFICATION_ROWS names a file, the pair is also added to it as one line of fields
/// parted by tabs: test file, source, quantity, published, computed, allowed, basis.
/// @param quantity   what it is, unlike any other quantity of the source: "A, Pipe 3 Std"
/// @param printed    number and unit as the source prints them: "2.07 in2"
/// @param computed   in that unit
/// @param test_file  left alone, it is the caller's
void verify(const Source& source, std::string_view quantity, std::string_view printed,
            double computed, Tolerance tolerance = as_printed(),
            std::string_view test_file = __builtin_FILE());

}  // namespace published
