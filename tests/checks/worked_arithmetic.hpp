#pragma once

#include <vector>

#include "checks/finding.hpp"

/// Works out what a worked line prints, so that a test can redo it as an engineer would.
namespace worked {

/// The sides of `numbers` between " = ", each computed from the values: numbers, `{i}`, + - * / ^,
/// brackets, sqrt and pi.
/// @return empty when the line is no equation, or a side holds anything else
[[nodiscard]] std::vector<double> sides(const checks::WorkedLine& line);

/// How many lines of a finding are equations whose sides agree within `tolerance`; a line whose
/// sides disagree makes it -1.
[[nodiscard]] int equations_that_hold(const checks::Finding& finding, double tolerance = 1e-9);

}  // namespace worked
