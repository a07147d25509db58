#include "checks/rated_load.hpp"

#include <cmath>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {

Finding rated_load(const RatedLoadInput& in) {
  INVARIANT(in.rating > 0.0);
  Finding f{.check = "rated load", .demand = in.force, .measure = Measure::force};
  f.capacity = in.rating;
  f.required = in.required;
  f.source = "rating as entered, its maker's; no factor is asked on it: proposal, no source";
  f.range = "force along its axis; a rating is a load it may carry, not one at which it breaks";
  f.lines.push_back({"F = preload + rate * travel",
                     "{0} + {1} * {2} = {3}",
                     {force(in.preload),
                      {in.rate, Measure::force_per_length},
                      length(in.travel),
                      force(in.force)}});
  f.lines.push_back({"rating / F",
                     "{0} / {1} = {2}",
                     {force(in.rating), force(in.force), ratio(in.rating / in.force)}});
  decide(f, std::isnan(in.safety_factor) ? in.rating / in.force : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
