#include "checks/tab_root.hpp"

#include <cmath>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {

Finding tab_root(const TabRootInput& in) {
  INVARIANT(in.plates > 0 && in.thickness > 0.0 && in.width > 0.0 && in.height > 0.0);
  Finding f{.check = "tab root", .measure = Measure::stress};
  f.required = in.required;
  f.capacity = in.yield;
  f.source = "beam theory, no source";
  if (std::isnan(in.off)) {
    leave_undecided(f,
                    "one tab beside the force is bent by it: say how far off its middle the force "
                    "is, e.g. off 1 in");
    return f;
  }
  const double area = in.plates * in.width * in.thickness;
  const double in_plane = area * in.width / 6.0;
  const double across = area * in.thickness / 6.0;
  const double bent = in.force * in.height / in_plane;
  const double pulled = in.force / area;
  const double turned = (in.side * in.height + in.force * in.off) / across;
  f.lines.push_back({"bent in its plane: F h / (plates * t w^2 / 6)",
                     "{0} * {1} / ({2} * {3} * {4}^2 / 6) = {5}",
                     {force(in.force), length(in.height), ratio(in.plates), length(in.thickness),
                      length(in.width), stress(bent)}});
  f.lines.push_back({"pulled: F / (plates * t w)",
                     "{0} / ({1} * {2} * {3}) = {4}",
                     {force(in.force), ratio(in.plates), length(in.thickness), length(in.width),
                      stress(pulled)}});
  f.lines.push_back({"bent across: (side force * h + F e) / (plates * w t^2 / 6)",
                     "({0} * {1} + {2} * {3}) / ({4} * {5} * {6}^2 / 6) = {7}",
                     {force(in.side), length(in.height), force(in.force), length(in.off),
                      ratio(in.plates), length(in.width), length(in.thickness), stress(turned)}});
  f.demand = std::hypot(bent, pulled) + turned;
  f.lines.push_back({"sigma = sqrt(bent^2 + pulled^2) + across",
                     "sqrt({0}^2 + {1}^2) + {2} = {3}",
                     {stress(bent), stress(pulled), stress(turned), stress(f.demand)}});
  f.lines.push_back({"Fy / sigma",
                     "{0} / {1} = {2}",
                     {stress(in.yield), stress(f.demand), ratio(in.yield / f.demand)}});
  if (!in.strength_basis.empty()) f.notes.push_back("yield strength: " + in.strength_basis);
  f.notes.emplace_back(
      "the force is taken in its worst direction; what the tabs are welded to is another check, "
      "where "
      "it is given");
  decide(f, std::isnan(in.safety_factor) ? in.yield / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
