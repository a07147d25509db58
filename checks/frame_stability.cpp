#include "checks/frame_stability.hpp"

#include <cmath>

#include <fmt/format.h>

#include "base/invariant.hpp"

namespace checks {

std::optional<Finding> frame_stability(const FrameStabilityInput& input) {
  if (input.outcome == StabilityOutcome::no_compression) return std::nullopt;
  Finding finding;
  finding.check = "frame stability";
  finding.part = input.part_that_goes;
  finding.measure = Measure::ratio;
  finding.demand = 1.0;
  finding.required = input.required;
  finding.source =
      "lowest elastic critical load factor, det(K + lambda Kg) = 0: McGuire, Gallagher, Ziemian, "
      "Matrix Structural Analysis, 2nd ed., ch. 9, from memory";
  if (input.outcome == StabilityOutcome::failed) {
    leave_undecided(finding, "the critical load factor of the frame was not found" +
                                 (input.problem.empty() ? "" : ": " + input.problem));
    return finding;
  }
  INVARIANT(input.critical_factor > 0.0);
  const Value factor = {input.critical_factor, Measure::ratio};
  finding.capacity = input.critical_factor;
  finding.lines.push_back({"safety factor = lowest critical load factor lambda", "{0}", {factor}});
  if (input.critical_factor > 1.0) {
    finding.lines.push_back(
        {"sway is magnified by about 1 / (1 - 1/lambda) at the load itself",
         "1 / (1 - 1 / {0}) = {1}",
         {factor, {1.0 / (1.0 - 1.0 / input.critical_factor), Measure::ratio}}});
  }
  if (!std::isnan(input.share) && !input.part_that_goes.empty()) {
    finding.notes.push_back(fmt::format("{:.0f} % of the strain energy of the mode: {}",
                                        100.0 * input.share, input.part_that_goes));
  }
  decide(finding, input.critical_factor, input.required);
  return finding;
}

}  // namespace checks
