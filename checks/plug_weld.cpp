#include "checks/plug_weld.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kMostOfTube = 1.0 / 3.0;
constexpr double kPitch = 4.0;          // diameters, J2.3b
constexpr double kTypedExactly = 1e-9;  // what is typed in inches meets its limit exactly

std::string why_not_in_range(const RosetteInput& in) {
  const PlugHole range = plug_hole(in.wall);
  if (in.hole < range.least * (1.0 - kTypedExactly) ||
      in.hole > range.most * (1.0 + kTypedExactly)) {
    return fmt::format(
        "outside the method: holes of {:.3g} mm, where {:.3g} to {:.3g} mm would do in this wall "
        "(AISC 360 J2.3b, read in a restatement)",
        in.hole / base::kMillimeter, range.least / base::kMillimeter,
        range.most / base::kMillimeter);
  }
  if (in.hole > kMostOfTube * in.outside * (1.0 + kTypedExactly)) {
    return "outside the method: holes of over a third of the tube's diameter (proposal, no source)";
  }
  return {};
}

}  // namespace

PlugHole plug_hole(double thickness) {
  const double least = thickness + 8.0 * base::kMillimeter;
  return {least, std::max(least + 3.0 * base::kMillimeter, 2.25 * thickness)};
}

double plug_strength(double hole, double filler_tensile) {
  return 0.60 * filler_tensile * base::kPi / 4.0 * hole * hole;
}

Finding rosettes(const RosetteInput& in) {
  INVARIANT(in.count > 1 && in.hole > 0.0 && in.outside > 0.0 && in.filler_tensile > 0.0);
  Finding f{.check = "rosettes", .measure = Measure::force};
  f.required = in.required;
  f.source =
      "AISC 360-22 J2.3 and table J2.5, from memory (0.60 F_EXX read in AISC LRFD 1999); an even "
      "ring of pins: statics";
  f.range = "shear between tube and insert alone; holes as J2.3b asks, up to a third of the tube";
  const std::string why_not = why_not_in_range(in);
  if (!why_not.empty()) {
    leave_undecided(f, why_not);
    return f;
  }
  const double r = 0.5 * in.outside;
  const double along = in.axial / in.count + 2.0 * in.bending / (in.count * r);
  const double around = in.torque / (in.count * r) + 2.0 * in.across / in.count;
  f.demand = std::hypot(along, around);
  f.capacity = plug_strength(in.hole, in.filler_tensile);
  f.lines.push_back(
      {"along the tube: N / n + 2 M / (n r)",
       "{0} / {1} + 2 * {2} / ({1} * {3}) = {4}",
       {force(in.axial), ratio(in.count), moment(in.bending), length(r), force(along)}});
  f.lines.push_back(
      {"around it: T / (n r) + 2 V / n",
       "{0} / ({1} * {2}) + 2 * {3} / {1} = {4}",
       {moment(in.torque), ratio(in.count), length(r), force(in.across), force(around)}});
  f.lines.push_back({"one rosette: sqrt(along^2 + around^2)",
                     "sqrt({0}^2 + {1}^2) = {2}",
                     {force(along), force(around), force(f.demand)}});
  f.lines.push_back({"capacity = 0.60 F_EXX pi d^2 / 4",
                     "0.60 * {0} * pi * {1}^2 / 4 = {2}",
                     {stress(in.filler_tensile), length(in.hole), force(f.capacity)}});
  f.lines.push_back({"capacity over the force",
                     "{0} / {1} = {2}",
                     {force(f.capacity), force(f.demand), ratio(f.capacity / f.demand)}});
  if (base::kPi * in.outside / in.count < kPitch * in.hole) {
    f.notes.emplace_back(
        "warning: in one ring they are nearer than 4 diameters to each other: stagger them (AISC "
        "360 J2.3b, from memory)");
  }
  f.notes.emplace_back(
      "taken to carry all of the load alone; the tube between its holes is the check `net "
      "section`");
  decide(f, std::isnan(in.safety_factor) ? f.capacity / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
