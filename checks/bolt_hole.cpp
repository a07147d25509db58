#include "checks/bolt_hole.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/caveat.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kLeastEdge = 1.2;  // of the hole

}  // namespace

Finding bolt_hole(const BoltHoleInput& in) {
  const double clear = in.edge - 0.5 * in.hole;
  INVARIANT(in.tensile > 0.0 && in.thickness > 0.0 && in.plates > 0);
  INVARIANT(clear > 0.0);
  Finding f{.check = "bolt hole", .demand = in.force, .measure = Measure::force};
  f.required = in.required;
  f.source = "AISC 360-22 J3.11, from memory";
  f.range = "one bolt in a standard hole; plates share alike; the hole may grow by 6 mm at most";
  const double bearing = in.plates * 2.4 * in.bolt * in.thickness * in.tensile;
  const double tearing = in.plates * 1.2 * clear * in.thickness * in.tensile;
  f.capacity = std::min(bearing, tearing);
  f.lines.push_back({"bearing: plates * 2.4 d t Fu",
                     "{0} * 2.4 * {1} * {2} * {3} = {4}",
                     {ratio(in.plates), length(in.bolt), length(in.thickness), stress(in.tensile),
                      force(bearing)}});
  f.lines.push_back({"lc = edge distance less half of the hole",
                     "{0} - {1} / 2 = {2}",
                     {length(in.edge), length(in.hole), length(clear)}});
  f.lines.push_back({"tear-out: plates * 1.2 lc t Fu",
                     "{0} * 1.2 * {1} * {2} * {3} = {4}",
                     {ratio(in.plates), length(clear), length(in.thickness), stress(in.tensile),
                      force(tearing)}});
  if (!in.strength_basis.empty()) f.notes.push_back("tensile strength: " + in.strength_basis);
  if (in.plates == 1) {
    f.notes.emplace_back("one plate: its bending by the force beside it is not in this");
  }
  if (in.edge < kLeastEdge * in.hole) {
    f.notes.push_back(
        fmt::format("{}its center is {:.2f} holes from the nearest edge, under 1.2 (EN 1993-1-8 "
                    "table 3.3, from memory)",
                    kCaveat, in.edge / in.hole));
  }
  if (!in.unknown_force.empty()) {
    f.demand = base::kUnset;
    leave_undecided(f, in.unknown_force);
    return f;
  }
  f.lines.push_back({"the lesser over the force",
                     "{0} / {1} = {2}",
                     {force(f.capacity), force(in.force), ratio(f.capacity / in.force)}});
  decide(f, std::isnan(in.safety_factor) ? f.capacity / in.force : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
