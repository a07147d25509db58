#include "checks/joint_tilt.hpp"

namespace checks {

Finding joint_tilt(const JointTiltInput& input) {
  Finding finding{.check = "joint tilt", .demand = input.tilt, .measure = Measure::angle};
  finding.source = "geometry; the angle allowed as entered, from its maker";
  finding.required = input.required;
  finding.capacity = input.most;
  finding.notes.emplace_back(
      "counted from ride height, where the bar is taken to be square to its bolt: add what it is "
      "off "
      "there");
  finding.lines.push_back({"tilt of its bar on its bolt, from ride height; allowed",
                           "{0}; {1}",
                           {{input.tilt, Measure::angle}, {input.most, Measure::angle}}});
  decide(finding, input.safety_factor, input.required);
  return finding;
}

}  // namespace checks
