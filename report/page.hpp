#pragma once

#include <optional>
#include <string>

#include "checks/required_factors.hpp"
#include "report/json.hpp"
#include "studies/answer.hpp"
#include "studies/pick.hpp"

namespace report {

/// What a sheet says beside the answer.
struct Sheet {
  std::string case_name;            ///< of the case file
  std::string case_text;            ///< the whole file, as it was read
  std::string date;                 ///< as it is to be printed; empty = a line to fill in
  checks::RequiredFactors factors;  ///< as used
  Program program;
  std::optional<studies::Picked> picked = {};  ///< stock sizes of a part, for a chart
};

/// The answer as one HTML file that needs no other and no network: the drawing, the tables, then
/// the calculation sheet for the engineer who signs. The same input gives the same bytes.
/// @param answer  with a drawing
[[nodiscard]] std::string page(const studies::Answer& answer, const Sheet& sheet);

}  // namespace report
