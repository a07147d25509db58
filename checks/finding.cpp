#include "checks/finding.hpp"

#include <cmath>
#include <utility>

namespace checks {

void decide(Finding& finding, double safety_factor, double required) {
  finding.required = required;
  if (std::isnan(safety_factor) || std::isnan(required)) {
    leave_undecided(finding, "the safety factor could not be computed");
    return;
  }
  finding.safety_factor = safety_factor;
  finding.state = safety_factor >= required ? State::within : State::over;
  finding.reason.clear();
}

void leave_undecided(Finding& finding, std::string reason) {
  finding.safety_factor = base::kUnset;
  finding.state = State::undecided;
  finding.reason = std::move(reason);
}

}  // namespace checks
