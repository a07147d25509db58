#include "checks/strap.hpp"

#include <cmath>

#include "checks/value.hpp"

namespace checks {
namespace {

constexpr const char* kRatingMissing =
    "rating missing: enter limit_strap.breaking_load from its maker";

void add_capacity(Finding& finding, double breaking_load) {
  finding.capacity = kOfBreakingLoad * breaking_load;
  finding.lines.push_back({"capacity = 0.6 * breaking load",
                           "0.6 * {0} = {1}",
                           {force(breaking_load), force(finding.capacity)}});
}

}  // namespace

Finding strap(const StrapInput& in) {
  Finding finding{.check = "strap", .demand = in.force, .measure = Measure::force};
  finding.source =
      "energy of the fall (statics, no source); 0.6 of the rated breaking load in a rare catch: "
      "proposal, no source. Sewn ends and edges must be inside the rating; wet nylon holds 10 to "
      "15 % less (from memory)";
  finding.range = "one strap, in proportion to its stretch up to this force; a straight fall";
  finding.required = in.required;
  const double down = in.weight + in.pushed;
  finding.lines.push_back({"W = m g + push of both coils as it comes tight",
                           "{0} + {1} = {2}",
                           {force(in.weight), force(in.pushed), force(down)}});
  finding.lines.push_back(
      {"F = W + sqrt(W^2 + k m v^2), one strap takes all",
       "{0} + sqrt({0}^2 + {1} * {2}) = {3}",
       {force(down), {in.rate, Measure::force_per_length}, moment(in.energy), force(in.force)}});
  finding.lines.push_back({"it stretches F / k", "{0}", {{in.force / in.rate, Measure::length}}});
  if (std::isnan(in.breaking_load)) {
    leave_undecided(finding, kRatingMissing);
    return finding;
  }
  add_capacity(finding, in.breaking_load);
  decide(finding, finding.capacity / in.force, in.required);
  return finding;
}

Finding tight_strap(const TightStrapInput& in) {
  Finding finding{.check = "strap", .demand = in.force, .measure = Measure::force};
  finding.source =
      "equilibrium of the frame; 0.6 of the rated breaking load: proposal, no source. Sewn ends "
      "and edges must be inside the rating; wet nylon holds 10 to 15 % less (from memory)";
  finding.required = in.required;
  const double stretch = in.force / in.rate;
  finding.lines.push_back({"F = k (drop - slack)",
                           "{0} * ({1} - {2}) = {3}",
                           {{in.rate, Measure::force_per_length},
                            {in.slack + stretch, Measure::length},
                            {in.slack, Measure::length},
                            force(in.force)}});
  if (std::isnan(in.breaking_load)) {
    leave_undecided(finding, kRatingMissing);
    return finding;
  }
  add_capacity(finding, in.breaking_load);
  decide(finding, in.safety_factor, in.required);
  return finding;
}

}  // namespace checks
