#include "checks/tube_net_section.hpp"

#include <cmath>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {

Finding tube_net_section(const TubeNetSectionInput& in) {
  INVARIANT(in.outside > 0.0 && in.wall > 0.0 && in.holes > 1 && in.hole > 0.0);
  INVARIANT(in.tensile > 0.0);
  Finding f{.check = "net section", .measure = Measure::stress};
  f.required = in.required;
  f.capacity = in.tensile;
  f.source =
      "AISC 360-22 D2(b), D3 and B4.3b (weld metal in a hole counts as none), from memory; elastic "
      "bending of what is left: proposal, errs to less strength";
  f.range = "round tubes with even holes in one ring; they leave at least half of it";
  constexpr double kMostOut = 0.5;
  const double inside = in.outside - 2.0 * in.wall;
  const double gross = base::kPi / 4.0 * (std::pow(in.outside, 2) - std::pow(inside, 2));
  const double wider = in.hole + base::kInch / 16.0;
  const double out = in.holes * wider * in.wall;
  const double net = gross - out;
  if (out > kMostOut * gross) {
    leave_undecided(f, "outside the method: the holes take over half of the tube's section");
    return f;
  }
  const double middle = 0.5 * (in.outside - in.wall);
  const double inertia = base::kPi / 64.0 * (std::pow(in.outside, 4) - std::pow(inside, 4));
  const double counted = in.holes == 2 ? 2.0 : 0.5 * in.holes;
  const double left = inertia - counted * wider * in.wall * middle * middle;
  const double pulled = in.axial / net;
  const double bent = in.bending * 0.5 * in.outside / left;
  f.demand = pulled + bent;
  f.lines.push_back({"An = A - n (d + 1/16 in) t",
                     "{0} - {1} * ({2} + {3}) * {4} = {5}",
                     {{gross, Measure::area},
                      ratio(in.holes),
                      length(in.hole),
                      length(base::kInch / 16.0),
                      length(in.wall),
                      {net, Measure::area}}});
  f.lines.push_back(
      {in.holes == 2 ? "In = I - 2 (d + 1/16 in) t rm^2, the holes where it bends most"
                     : "In = I - n / 2 (d + 1/16 in) t rm^2",
       "{0} - {1} * ({2} + {3}) * {4} * {5}^2 = {6}",
       {second_moment(inertia), ratio(counted), length(in.hole), length(base::kInch / 16.0),
        length(in.wall), length(middle), second_moment(left)}});
  f.lines.push_back(
      {"N / An", "{0} / {1} = {2}", {force(in.axial), {net, Measure::area}, stress(pulled)}});
  f.lines.push_back({"M D / (2 In)",
                     "{0} * {1} / (2 * {2}) = {3}",
                     {moment(in.bending), length(in.outside), second_moment(left), stress(bent)}});
  f.lines.push_back({"sigma", "{0} + {1} = {2}", {stress(pulled), stress(bent), stress(f.demand)}});
  f.lines.push_back({"Fu / sigma",
                     "{0} / {1} = {2}",
                     {stress(in.tensile), stress(f.demand), ratio(in.tensile / f.demand)}});
  if (!in.strength_basis.empty()) f.notes.push_back("tensile strength: " + in.strength_basis);
  decide(f, std::isnan(in.safety_factor) ? in.tensile / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
