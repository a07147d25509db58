#include "checks/tab_wall.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kOwnStress = 0.4;  // of yield, proposal
constexpr double kRootOfThree = 1.7320508075688772;

double chord_factor() {
  return 1.0 - 0.3 * kOwnStress * (1.0 + kOwnStress);
}

std::string why_outside(const TabWallInput& in) {
  const double slender = in.outside / in.wall;
  if (slender < 10.0 || slender > 50.0) {
    return fmt::format(
        "outside the method: D/t of {:.3g} where 10 to 50 is its range (EN 1993-1-8 "
        "table 7.1, AISC 360-10 table K1.1A, from memory)",
        slender);
  }
  const double part = in.width / in.outside;
  if (in.across ? part <= 0.2 || part > 1.0 : part > 4.0) {
    return fmt::format(
        "outside the method: a tab {:.3g} diameters wide, where {} is its range (AISC 360-10 table "
        "K1.1A, EN 1993-1-8 table 7.1, from memory)",
        part, in.across ? "0.2 to 1" : "up to 4");
  }
  constexpr double kMostYield = 360.0e6;
  constexpr double kMostOfTensile = 0.8;
  if (in.yield > kMostYield || in.yield > kMostOfTensile * in.tensile) {
    return "outside the method: a yield strength over 360 MPa or 0.8 Fu (AISC 360-10 table K1.1A, "
           "from memory)";
  }
  if (std::isnan(in.pull)) {
    return "outside the method: one tab brings a force across it into the wall, which no standard "
           "gives a strength for: a second tab with its `gap`, or a gusset (then `side force 0 %`)";
  }
  return {};
}

void add_strength_lines(Finding& f, const TabWallInput& in, const TabWallStrength& s) {
  f.lines.push_back({"Qf = 1 - 0.3 U (1 + U), U = 0.4 (proposal)",
                     "1 - 0.3 * {0} * (1 + {0}) = {1}",
                     {ratio(kOwnStress), ratio(chord_factor())}});
  f.lines.push_back({in.across ? "Rn = 5.5 Fy t^2 / (1 - 0.81 w / D) Qf, across (K1-1)"
                               : "Rn = 5.5 Fy t^2 (1 + 0.25 w / D) Qf, along (K1-3)",
                     in.across ? "5.5 * {0} * {1}^2 / (1 - 0.81 * {2} / {3}) * {4} = {5}"
                               : "5.5 * {0} * {1}^2 * (1 + 0.25 * {2} / {3}) * {4} = {5}",
                     {stress(in.yield), length(in.wall), length(in.width), length(in.outside),
                      ratio(chord_factor()), force(s.pull)}});
  f.lines.push_back({in.across ? "Mn = 0.5 w Rn (K1-2)" : "Mn = 0.8 w Rn (K1-4)",
                     in.across ? "0.5 * {0} * {1} = {2}" : "0.8 * {0} * {1} = {2}",
                     {length(in.width), force(s.pull), moment(s.moment)}});
  f.lines.push_back({"punching, along the weld: 2 t Fy / sqrt(3)",
                     "2 * {0} * {1} / sqrt(3) = {2}",
                     {length(in.wall), stress(in.yield), {s.edge, Measure::force_per_length}}});
}

}  // namespace

TabWallStrength tab_wall_strength(const TabWallInput& in) {
  INVARIANT(in.outside > 0.0 && in.wall > 0.0 && in.width > 0.0 && in.yield > 0.0);
  const double part = in.width / in.outside;
  const double wide = in.across ? 1.0 / (1.0 - 0.81 * part) : 1.0 + 0.25 * part;
  TabWallStrength s;
  s.pull = 5.5 * in.yield * in.wall * in.wall * wide * chord_factor();
  s.moment = (in.across ? 0.5 : 0.8) * in.width * s.pull;
  s.edge = 2.0 * in.wall * in.yield / kRootOfThree;
  return s;
}

Finding tab_wall(const TabWallInput& in) {
  INVARIANT(in.height > 0.0 && in.tensile > 0.0);
  Finding f{.check = "tab wall", .capacity = 1.0, .measure = Measure::ratio};
  f.required = in.required;
  f.source =
      "AISC 360-10 table K1.1, from memory; punching EN 1993-1-8 table 7.3, from memory; asked as "
      "the tab itself: proposal";
  f.range =
      "one plate on a round tube, D/t 10 to 50, Fy up to 360 MPa; across: width 0.2 to 1 D, along: "
      "up to 4 D";
  const std::string why_not = why_outside(in);
  if (!why_not.empty()) {
    leave_undecided(f, why_not);
    return f;
  }
  const TabWallStrength s = tab_wall_strength(in);
  add_strength_lines(f, in, s);
  const double bent = in.force * in.height;
  const double yields = std::hypot(in.force / s.pull, bent / s.moment) + in.pull / s.pull;
  const double turned = 6.0 * bent / (in.width * in.width);
  const double at_edge = std::hypot(in.force / in.width, turned) + in.pull / in.width;
  const double punches = at_edge / s.edge;
  f.lines.push_back({"in its worst direction: sqrt((F / Rn)^2 + (F h / Mn)^2) + pull / Rn",
                     "sqrt(({0} / {1})^2 + ({0} * {2} / {3})^2) + {4} / {1} = {5}",
                     {force(in.force), force(s.pull), length(in.height), moment(s.moment),
                      force(in.pull), ratio(yields)}});
  f.lines.push_back({"punched: (sqrt((F / w)^2 + (6 F h / w^2)^2) + pull / w) over that",
                     "(sqrt(({0} / {1})^2 + (6 * {0} * {2} / {1}^2)^2) + {3} / {1}) / {4} = {5}",
                     {force(in.force),
                      length(in.width),
                      length(in.height),
                      force(in.pull),
                      {s.edge, Measure::force_per_length},
                      ratio(punches)}});
  f.demand = std::max(yields, punches);
  f.lines.push_back({"1 / the larger", "1 / {0} = {1}", {ratio(f.demand), ratio(1.0 / f.demand)}});
  if (!in.strength_basis.empty()) f.notes.push_back("strengths of the tube: " + in.strength_basis);
  f.notes.emplace_back("the stress along the tube from its own load is taken as 0.4 of its yield");
  decide(f, std::isnan(in.safety_factor) ? 1.0 / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
