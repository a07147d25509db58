#include "checks/joint_rating.hpp"

#include <cmath>

namespace checks {

Finding joint_rating(const JointRatingInput& input) {
  Finding finding{.check = "joint rating", .demand = input.force, .measure = Measure::force};
  finding.source =
      "rating as entered; factors from a bearing maker's selection page (maker withheld): common "
      "practice, no source";
  finding.range =
      "force across the joint's axis, inside its angle; bending of a threaded shank is not in it";
  finding.required = input.required;
  const double from_ultimate = input.ultimate_rating / kUltimateOverStatic;
  const bool has_static = !std::isnan(input.static_rating);
  const bool has_ultimate = !std::isnan(input.ultimate_rating);
  if (!has_static && !has_ultimate) {
    leave_undecided(
        finding,
        "rating missing: enter static_rating or ultimate_rating (under its part) from its "
        "maker's sheet");
    return finding;
  }
  finding.capacity = !has_ultimate ? input.static_rating
                     : !has_static ? from_ultimate
                                   : std::fmin(input.static_rating, from_ultimate);
  if (has_ultimate) {
    finding.lines.push_back(
        {"C from ultimate = ultimate rating / 1.5",
         "{0} / 1.5 = {1}",
         {{input.ultimate_rating, Measure::force}, {from_ultimate, Measure::force}}});
  }
  const double factor =
      std::isnan(input.safety_factor) ? finding.capacity / input.force : input.safety_factor;
  finding.lines.push_back({"F = force through the joint; capacity C",
                           "{0}; {1}",
                           {{input.force, Measure::force}, {finding.capacity, Measure::force}}});
  decide(finding, factor, input.required);
  return finding;
}

}  // namespace checks
