#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loads/vehicle.hpp"

namespace loads {

/// One kind of built-in load case, whatever the vehicle.
struct CaseInfo {
  std::string_view name;  ///< "hard_stop": as a case file names it
  Severity severity = Severity::routine;
  Posture posture = Posture::ride;
  std::string_view factors;  ///< of the static wheel load W, in words
  std::string_view checks;   ///< what it mainly checks
  std::vector<Need> needs;   ///< of each of its cases
  std::string_view basis;    ///< marked read, from memory, common practice, proposal
};

/// The sixteen built-in kinds, in order.
[[nodiscard]] const std::vector<CaseInfo>& case_library();

/// The names of the built-in kinds, in order.
[[nodiscard]] const std::vector<std::string>& case_names();

/// The names of all single cases, left and right: "hard corner, turning left".
[[nodiscard]] const std::vector<std::string>& all_case_names();

/// @param name  one of case_names()
[[nodiscard]] const CaseInfo& case_info(std::string_view name);

/// "hard_stop" -> "hard stop".
[[nodiscard]] std::string case_words(std::string_view name);

/// The built-in load cases, with their left and right and their turned signs.
/// @param names  which of case_names()
/// @throws base::InputError key `vehicle.wheelbase` etc. when a case needs a number that is unset
[[nodiscard]] std::vector<LoadCase> built_in_cases(const Vehicle& vehicle,
                                                   const std::vector<std::string>& names);

}  // namespace loads
