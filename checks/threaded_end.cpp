#include "checks/threaded_end.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kRootThree = 1.7320508075688772;

std::string thread_words(const sections::BoltThread& thread) {
  return fmt::format("thread {}, {}", thread.name, thread.mark);
}

}  // namespace

Finding threaded_shank(const ThreadedShankInput& in) {
  INVARIANT(in.thread.diameter > 0.0 && in.yield > 0.0 && in.out >= 0.0);
  Finding f{.check = "threaded shank", .measure = Measure::stress};
  f.required = in.required;
  f.capacity = in.yield;
  f.source = "Shigley, Mechanical Engineering Design, 9th ed., ch. 3 and 8, from memory";
  const double area = in.thread.tensile_area();
  const double root = in.thread.root_diameter();
  const double pulled = in.axial / area;
  const double bent = 32.0 * in.across * in.out / (base::kPi * std::pow(root, 3));
  f.demand = pulled + bent;
  f.lines.push_back(
      {"F / At", "{0} / {1} = {2}", {force(in.axial), {area, Measure::area}, stress(pulled)}});
  f.lines.push_back({"bending, d3 at the thread's root: 32 V out / (pi d3^3)",
                     "32 * {0} * {1} / (pi * {2}^3) = {3}",
                     {force(in.across), length(in.out), length(root), stress(bent)}});
  f.lines.push_back({"sigma, the two added",
                     "{0} + {1} = {2}",
                     {stress(pulled), stress(bent), stress(f.demand)}});
  f.lines.push_back({"Fy / sigma",
                     "{0} / {1} = {2}",
                     {stress(in.yield), stress(f.demand), ratio(in.yield / f.demand)}});
  f.notes.push_back(thread_words(in.thread));
  f.notes.emplace_back(
      "the jam nut must be tight, at the longest adjustment too: loose, the thread hammers and "
      "bends inside its insert; what its torque adds is not in this");
  decide(f, std::isnan(in.safety_factor) ? in.yield / f.demand : in.safety_factor, in.required);
  return f;
}

Finding thread_engagement(const ThreadEngagementInput& in) {
  INVARIANT(in.thread.diameter > 0.0 && in.tensile > 0.0 && in.engaged > 0.0);
  constexpr double kTolerance = 0.8;
  constexpr double kWidening = 0.8;
  Finding f{.check = "thread engagement", .demand = in.axial, .measure = Measure::force};
  f.required = in.required;
  f.source =
      "ASME B1.1 thread shear area (read in a restatement), basic profile; shares for tolerance "
      "and "
      "widening: proposal";
  const double d = in.thread.diameter;
  f.notes.push_back(thread_words(in.thread));
  if (!in.strength_basis.empty()) f.notes.push_back("tapped steel: " + in.strength_basis);
  if (in.engaged < d * (1.0 - 1e-9)) {
    leave_undecided(f, fmt::format("outside the method: {:.3g} diameters are engaged, under one; "
                                   "1.5 are common practice in an insert",
                                   in.engaged / d));
    return f;
  }
  const double counted = std::min(in.engaged, kMostEngaged * d);
  const double pitch_diameter = d - 0.649519 * in.thread.pitch;
  const double part = 0.5 + (d - pitch_diameter) / (kRootThree * in.thread.pitch);
  const double area = base::kPi * d * counted * part;
  f.capacity = 0.6 * in.tensile * kTolerance * kWidening * area;
  f.lines.push_back({"L counted, at most 1.5 d", "{0}", {length(counted)}});
  f.lines.push_back({"As = pi d L (1/2 + (d - d2) / (sqrt(3) P))",
                     "pi * {0} * {1} * (1 / 2 + ({0} - {2}) / (sqrt(3) * {3})) = {4}",
                     {length(d),
                      length(counted),
                      length(pitch_diameter),
                      length(in.thread.pitch),
                      {area, Measure::area}}});
  f.lines.push_back({"0.6 Fu As, 0.8 for tolerance, 0.8 for a wall that widens",
                     "0.6 * {0} * {1} * 0.8 * 0.8 = {2}",
                     {stress(in.tensile), {area, Measure::area}, force(f.capacity)}});
  f.lines.push_back({"over the force",
                     "{0} / {1} = {2}",
                     {force(f.capacity), force(in.axial), ratio(f.capacity / in.axial)}});
  decide(f, std::isnan(in.safety_factor) ? f.capacity / in.axial : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
