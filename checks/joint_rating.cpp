#include "checks/joint_rating.hpp"

#include <cmath>

namespace checks {

Finding joint_rating(const JointRatingInput& input) {
  Finding finding{.check = "joint rating", .demand = input.force, .measure = Measure::force};
  finding.source =
      "rating as entered; factors from a bearing maker's selection page (maker withheld): common "
      "practice, no source";
  finding.range = "inside its angle; bending of a threaded shank is not in it";
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
  const bool has_axial = !std::isnan(input.axial_rating);
  if (has_axial) {
    const double across =
        std::sqrt(std::fmax(0.0, input.force * input.force - input.along * input.along));
    finding.demand = across + finding.capacity / input.axial_rating * input.along;
    finding.lines.push_back(
        {"force across the bolt: Fr = sqrt(F^2 - Fa^2)",
         "sqrt({0}^2 - {1}^2) = {2}",
         {{input.force, Measure::force}, {input.along, Measure::force}, {across, Measure::force}}});
    finding.lines.push_back({"combined: Fr + C / Ca * Fa",
                             "{0} + {1} / {2} * {3} = {4}",
                             {{across, Measure::force},
                              {finding.capacity, Measure::force},
                              {input.axial_rating, Measure::force},
                              {input.along, Measure::force},
                              {finding.demand, Measure::force}}});
  }
  const double factor =
      std::isnan(input.safety_factor) ? finding.capacity / finding.demand : input.safety_factor;
  if (!has_axial && input.along > 0.1 * input.force) {
    finding.notes.push_back(
        "of the force more than a tenth acts along the bolt, where a rod end carries far less (0.1 "
        "to 0.5 of its radial rating by maker: common practice, no source): give axial_rating");
  }
  finding.lines.push_back(
      {has_axial ? "F = combined force; capacity C" : "F = force through the joint; capacity C",
       "{0}; {1}",
       {{finding.demand, Measure::force}, {finding.capacity, Measure::force}}});
  decide(finding, factor, input.required);
  return finding;
}

}  // namespace checks
