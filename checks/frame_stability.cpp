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
  finding.range = "elastic buckling of the frame as drawn; yield and bows are other checks";
  if (input.outcome == StabilityOutcome::failed) {
    leave_undecided(finding, "the critical load factor of the frame was not found" +
                                 (input.problem.empty() ? "" : ": " + input.problem));
    return finding;
  }
  INVARIANT(input.critical_factor > 0.0);
  const Value factor = {input.critical_factor, Measure::ratio};
  const bool earlier = input.second_order_factor < input.critical_factor;
  const double safety = earlier ? input.second_order_factor : input.critical_factor;
  finding.capacity = safety;
  if (earlier) {
    finding.lines.push_back(
        {"lambda = lowest critical load factor, forces in proportion to the load",
         "{0}",
         {factor}});
    finding.lines.push_back(
        {"safety factor = multiple of the load that the deformed frame still carries",
         "{0}",
         {{safety, Measure::ratio}}});
    finding.notes.push_back(fmt::format(
        "the frame gives way in second order (equilibrium in the deformed position) at {:.0f} % of "
        "the linear critical factor; that multiple is used",
        100.0 * safety / input.critical_factor));
  } else {
    finding.lines.push_back(
        {"safety factor = lowest critical load factor lambda", "{0}", {factor}});
  }
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
  decide(finding, safety, input.required);
  return finding;
}

}  // namespace checks
