#include "checks/yield.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/value.hpp"
#include "sections/area_props.hpp"

namespace checks {
namespace {

using sections::Resultants;

bool is_round(const sections::Shape& shape) {
  return std::holds_alternative<sections::RoundBar>(shape) ||
         std::holds_alternative<sections::RoundTube>(shape);
}

bool is_thin_walled(const sections::Shape& shape) {
  return std::holds_alternative<sections::Channel>(shape) ||
         std::holds_alternative<sections::Angle>(shape) ||
         std::holds_alternative<sections::BoxedChannel>(shape) ||
         std::holds_alternative<sections::ThinWalled>(shape);
}

WorkedLine axial_line(const YieldInput& in, double area) {
  return {
      "sigma_N = |N| / A",
      "{0} / {1} = {2}",
      {force(std::abs(in.resultants.n)), {area, Measure::area}, stress(std::abs(in.worst.axial))}};
}

bool same(double a, double b) {
  return std::abs(a - b) <= 1e-6 * std::abs(b);
}

/// What the bend makes of the frame's moments; nothing where there is none.
void add_bend_lines(Finding& finding, const YieldInput& in) {
  if (!(in.at_bend > 1.0)) return;
  for (const auto& [name, counted] :
       {std::pair("My", std::abs(in.resultants.my)), std::pair("Mz", std::abs(in.resultants.mz))}) {
    finding.lines.push_back({fmt::format("{} at the bend: the frame's, times what the bend counts "
                                         "for (see notes)",
                                         name),
                             "{0} * {1} = {2}",
                             {moment(counted / in.at_bend), ratio(in.at_bend), moment(counted)}});
  }
}

WorkedLine bending_line(const YieldInput& in, const sections::AreaProps& props) {
  const Value s_y = {props.modulus_y, Measure::section_modulus};
  const Value s_z = {props.modulus_z, Measure::section_modulus};
  const Value my = moment(std::abs(in.resultants.my));
  const Value mz = moment(std::abs(in.resultants.mz));
  const Value result = stress(std::abs(in.worst.bending));
  const bool round = is_round(in.shape);
  const double outer = round ? std::hypot(my.si, mz.si) / s_y.si : my.si / s_y.si + mz.si / s_z.si;
  if (!same(outer, result.si) && is_thin_walled(in.shape)) {
    return {
        fmt::format("sigma_M = My z / Iy - Mz y / Iz, principal axes, at the {}; at most |My| / "
                    "Sy + |Mz| / Sz",
                    in.worst.point),
        "{0} of at most {1}",
        {result, stress(outer)}};
  }
  if (!same(outer, result.si)) {
    return {fmt::format("sigma_M at the {}, of {} at the outer fiber", in.worst.point,
                        round ? "sqrt(My^2 + Mz^2) / S" : "|My| / Sy + |Mz| / Sz"),
            "{0} of {1}",
            {result, stress(outer)}};
  }
  if (round) {
    return {"sigma_M = sqrt(My^2 + Mz^2) / S",
            "sqrt({0}^2 + {1}^2) / {2} = {3}",
            {my, mz, s_y, result}};
  }
  return {
      "sigma_M = |My| / Sy + |Mz| / Sz", "{0} / {1} + {2} / {3} = {4}", {my, s_y, mz, s_z, result}};
}

WorkedLine torsion_line(const YieldInput& in, const sections::AreaProps& props) {
  const Value torque = moment(std::abs(in.resultants.t));
  const Value result = stress(in.worst.torsion);
  if (is_round(in.shape) && same(torque.si / (2.0 * props.modulus_y), result.si)) {
    return {"tau_T = |T| / (2 S)",
            "{0} / (2 * {1}) = {2}",
            {torque, {props.modulus_y, Measure::section_modulus}, result}};
  }
  return {fmt::format("tau_T at the {}, from T", in.worst.point),
          "T of {0} gives {1}",
          {torque, result}};
}

WorkedLine shear_line(const YieldInput& in) {
  const Resultants& r = in.resultants;
  return {fmt::format("tau_V = V Q / (I t) at the {}, from Vy and Vz", in.worst.point),
          "Vy of {0} and Vz of {1} give {2}",
          {force(std::abs(r.vy)), force(std::abs(r.vz)), stress(in.worst.shear)}};
}

/// The stresses at the worst point, then their von Mises sum.
void add_stress_lines(Finding& finding, const YieldInput& in) {
  const sections::AreaProps props = sections::area_props(in.shape);
  finding.lines.push_back(axial_line(in, props.area));
  add_bend_lines(finding, in);
  finding.lines.push_back(bending_line(in, props));
  finding.lines.push_back(torsion_line(in, props));
  finding.lines.push_back(shear_line(in));
  const double sigma = in.worst.axial + in.worst.bending;
  const double vm = in.worst.von_mises;
  const double tau = std::sqrt(std::max(0.0, vm * vm - sigma * sigma) / 3.0);
  finding.lines.push_back(
      {fmt::format("sigma = sigma_N + sigma_M, with their signs, at the {}", in.worst.point),
       "{0} + ({1}) = {2}",
       {stress(in.worst.axial), stress(in.worst.bending), stress(sigma)}});
  finding.lines.push_back({"von Mises = sqrt(sigma^2 + 3 tau^2), tau = tau_T and tau_V as vectors",
                           "sqrt({0}^2 + 3 * {1}^2) = {2}",
                           {stress(sigma), stress(tau), stress(vm)}});
}

/// Where the safety factor comes from: the quotient, or the solve at the multiplied load.
void add_factor_lines(Finding& finding, const YieldInput& in) {
  const double quotient = in.strength / in.worst.von_mises;
  const Value factor = {in.safety_factor, Measure::ratio};
  if (std::abs(quotient - in.safety_factor) <= 5e-4 * quotient) {
    finding.lines.push_back(
        {"safety factor = strength / von Mises",
         "{0} / {1} = {2}",
         {stress(in.strength), stress(in.worst.von_mises), {quotient, Measure::ratio}}});
    return;
  }
  finding.lines.push_back(
      {"strength / von Mises at the load itself; the stress is not in proportion "
       "to the load",
       "{0} / {1} = {2}",
       {stress(in.strength), stress(in.worst.von_mises), {quotient, Measure::ratio}}});
  if (!in.at_limit) {
    finding.lines.push_back(
        {"safety factor = largest multiple of the load, solved again at each, "
         "at which von Mises stays under the strength",
         "{0}",
         {factor}});
    return;
  }
  const Resultants& r = *in.at_limit;
  const sections::PointStress limit = in.on_side
                                          ? sections::worst_point_within(in.shape, r, *in.on_side)
                                          : sections::worst_point(in.shape, r);
  finding.lines.push_back(
      {"safety factor = largest multiple of the load, solved again at each; "
       "there N, My, Mz and T give von Mises",
       "at {0} times the load: {1}, {2}, {3} and {4} give {5} against {6}",
       {factor, force(r.n), moment(r.my), moment(r.mz), moment(r.t), stress(limit.von_mises),
        stress(in.strength)}});
}

/// What bending alone could still grow by past first yield, which is not counted: a bar that has
/// yielded in a rare load is bent.
void add_plastic_reserve(Finding& finding, const sections::Shape& shape) {
  const sections::AreaProps p = sections::area_props(shape);
  if (std::isnan(p.plastic_y) || std::isnan(p.plastic_z)) return;
  finding.lines.push_back({"beside it, plastic reserve of bending about y, Z / S: not counted",
                           "{0} / {1} = {2}",
                           {{p.plastic_y, Measure::section_modulus},
                            {p.modulus_y, Measure::section_modulus},
                            ratio(p.plastic_y / p.modulus_y)}});
  finding.lines.push_back({"and about z",
                           "{0} / {1} = {2}",
                           {{p.plastic_z, Measure::section_modulus},
                            {p.modulus_z, Measure::section_modulus},
                            ratio(p.plastic_z / p.modulus_z)}});
}

/// Where the weld zones lie, and what the strength that does not decide would give.
void add_lines_beside(Finding& finding, const OtherStrength& other) {
  WorkedLine zones{.symbols = "weld zones, from and to along the center line", .numbers = {}};
  for (const std::array<double, 2>& zone : other.weld_zones) {
    const std::size_t n = zones.values.size();
    zones.numbers += fmt::format("{}{{{}}} to {{{}}}", n == 0 ? "" : ", ", n, n + 1);
    zones.values.push_back(length(zone[0]));
    zones.values.push_back(length(zone[1]));
  }
  finding.lines.push_back(std::move(zones));
  const std::string whose = other.zone_decides ? "the parent's outside of the weld zones"
                                               : "the weld zone's, at the worst point of the zones";
  if (std::isnan(other.von_mises) && !other.zone_decides) return;
  if (std::isnan(other.von_mises)) {
    finding.lines.push_back({"beside it, the parent's strength, which holds nowhere on it",
                             "{0}",
                             {stress(other.strength)}});
  } else if (!(other.von_mises > 0.0)) {
    finding.lines.push_back({fmt::format("beside it, {}: strength, and no stress there", whose),
                             "{0}",
                             {stress(other.strength)}});
  } else {
    finding.lines.push_back({fmt::format("beside it, {}: strength / von Mises", whose),
                             "{0} / {1} = {2}",
                             {stress(other.strength),
                              stress(other.von_mises),
                              {other.strength / other.von_mises, Measure::ratio}}});
  }
}

}  // namespace

Finding yield(const YieldInput& input) {
  INVARIANT(input.strength > 0.0);
  Finding finding;
  finding.check = "yield";
  finding.measure = Measure::stress;
  finding.demand = input.worst.von_mises;
  finding.capacity = input.strength;
  finding.required = input.required;
  finding.source =
      "von Mises at the worst point: Shigley, Mechanical Engineering Design, 9th ed., ch. 3 and "
      "eq. 5-15";
  finding.range =
      "elastic stress of a beam with St. Venant torsion; walls that buckle before they yield are "
      "the thin wall check";
  if (!input.strength_basis.empty()) {
    finding.notes.push_back("yield strength: " + input.strength_basis);
  }
  if (input.other) finding.notes.push_back("beside it: " + input.other->basis);
  if (!std::isfinite(input.worst.von_mises)) {
    leave_undecided(finding,
                    "the stress at the worst point is not known: the section lacks a property, "
                    "such as its torsion modulus");
    return finding;
  }
  // Beside a stress that counts, not beside the rounding of a zero.
  if (sections::is_open(input.shape) && input.worst.torsion > 1e-3 * input.worst.von_mises) {
    finding.notes.push_back(
        "an open section under torque: the normal stress of warping, where its ends hold it, is "
        "left out");
  }
  add_stress_lines(finding, input);
  add_plastic_reserve(finding, input.shape);
  if (std::isnan(input.safety_factor)) {
    leave_undecided(finding, "no multiple of the load was found at which the section yields");
    return finding;
  }
  if (input.worst.von_mises > 0.0) add_factor_lines(finding, input);
  if (input.other) add_lines_beside(finding, *input.other);
  decide(finding, input.safety_factor, input.required);
  return finding;
}

}  // namespace checks
