#include "checks/column.hpp"

#include <algorithm>
#include <cmath>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/caveat.hpp"
#include "checks/column_strength.hpp"
#include "checks/value.hpp"
#include "checks/wall_slenderness.hpp"
#include "sections/area_props.hpp"

namespace checks {
namespace {

constexpr double kMostSlender = 200.0;  // AISC 360-22 E2 user note, from memory

/// Part of its length from an end within which a weld leaves the buckling of a column alone.
/// Source: practice of the Aluminum Design Manual for end welds, from memory.
constexpr double kEndPart = 0.05;

/// A weld that is not near an end, or may not be: the whole column counts as its zone.
bool welded_part_way(const ColumnInput& in) {
  return in.welds && !(in.welds->farthest <= kEndPart * in.length);
}

/// The numbers that every line shares.
struct ColumnNumbers {
  double area = base::kUnset;
  double radius = base::kUnset;
  double second_moment = base::kUnset;
  double modulus = base::kUnset;
  double effective_length = base::kUnset;
  double slenderness = base::kUnset;
  double elastic_stress = base::kUnset;    // Fe
  double torsional_stress = base::kUnset;  // Fez of an open section
  bool twists = false;                     // Fe is that of E4
  double nominal_stress = base::kUnset;    // Fn
  EffectiveArea effective;
};

/// Slenderness of a column with that elastic buckling stress.
double same_slenderness(const ColumnInput& in, double elastic_stress) {
  return base::kPi * std::sqrt(in.elastic / elastic_stress);
}

/// An open section may twist before it bends. Warping, which would stiffen it, is left out.
void use_e4(ColumnNumbers& n, const ColumnInput& in, const sections::AreaProps& props) {
  constexpr double kPoisson = 0.3;
  const double y = props.shear_center_y;
  const double z = props.shear_center_z;
  const double ro2 = props.polar / props.area + y * y + z * z;
  const double shear_modulus = in.elastic / (2.0 * (1.0 + kPoisson));
  const auto euler = [&](double second_moment) {
    return euler_load(in.elastic, second_moment, n.effective_length) / props.area;
  };
  n.torsional_stress = shear_modulus * props.torsion / (props.area * ro2);
  const double together = flexural_torsional_e4({.about_y = euler(props.iyy),
                                                 .about_z = euler(props.izz),
                                                 .torsional = n.torsional_stress,
                                                 .offset_y = y / std::sqrt(ro2),
                                                 .offset_z = z / std::sqrt(ro2)});
  n.twists = together < n.elastic_stress * (1.0 - 1e-9);
  if (n.twists) n.elastic_stress = together;
}

ColumnNumbers numbers_of(const ColumnInput& in) {
  const sections::AreaProps props = sections::area_props(in.shape);
  const bool about_y = props.radius_y <= props.radius_z;
  ColumnNumbers n;
  n.area = props.area;
  n.radius = about_y ? props.radius_y : props.radius_z;
  n.second_moment = about_y ? props.iyy : props.izz;
  n.modulus = about_y ? props.modulus_y : props.modulus_z;
  n.effective_length = in.k * in.length;
  n.slenderness = n.effective_length / n.radius;
  n.elastic_stress = base::kPi * base::kPi * in.elastic / (n.slenderness * n.slenderness);
  if (sections::is_open(in.shape)) use_e4(n, in, props);
  n.nominal_stress = column_e3(in.elastic, in.yield, same_slenderness(in, n.elastic_stress));
  n.effective = effective_area(in.shape, in.elastic, in.yield, n.nominal_stress);
  return n;
}

/// Pn = Fn Ae  [N]
double buckling_capacity(const ColumnNumbers& n) {
  return n.nominal_stress * n.effective.ratio * n.area;
}

/// Ae / Ag where the stress of its welded ends is Fy of the weld zone.
double welded_end_ratio(const ColumnInput& in) {
  return effective_area(in.shape, in.elastic, in.welds->yield, in.welds->yield).ratio;
}

double at_its_welds(const ColumnInput& in, const ColumnNumbers& n) {
  return in.welds->yield * welded_end_ratio(in) * n.area;
}

double capacity_of(const ColumnInput& in, const ColumnNumbers& n) {
  const double buckling = buckling_capacity(n);
  return in.welds ? std::min(buckling, at_its_welds(in, n)) : buckling;
}

void add_strength_lines(Finding& f, const ColumnInput& in, const ColumnNumbers& n) {
  f.lines.push_back({"Lc/r = K L / r, r of the weaker axis",
                     "{0} * {1} / {2} = {3}",
                     {ratio(in.k), length(in.length), length(n.radius), ratio(n.slenderness)}});
  const double bending = base::kPi * base::kPi * in.elastic / (n.slenderness * n.slenderness);
  f.lines.push_back({"Fe = pi^2 E / (Lc/r)^2",
                     "pi^2 * {0} / {1}^2 = {2}",
                     {stress(in.elastic), ratio(n.slenderness), stress(bending)}});
  if (n.twists) {
    f.lines.push_back(
        {"Fe = least root of AISC 360-22 E4-4, bending and twisting together, with "
         "Fez = G J / (A ro^2) (warping left out)",
         "Fez of {0} gives {1}",
         {stress(n.torsional_stress), stress(n.elastic_stress)}});
  }
  if (same_slenderness(in, n.elastic_stress) <= column_e3_limit(in.elastic, in.yield)) {
    f.lines.push_back({n.twists ? "Fn = 0.658^(Fy/Fe) Fy, as Fy/Fe <= 2.25"
                                : "Fn = 0.658^(Fy/Fe) Fy, as Lc/r <= 4.71 sqrt(E/Fy)",
                       "0.658^({0} / {1}) * {0} = {2}",
                       {stress(in.yield), stress(n.elastic_stress), stress(n.nominal_stress)}});
  } else {
    f.lines.push_back(
        {n.twists ? "Fn = 0.877 Fe, as Fy/Fe > 2.25" : "Fn = 0.877 Fe, as Lc/r > 4.71 sqrt(E/Fy)",
         "0.877 * {0} = {1}",
         {stress(n.elastic_stress), stress(n.nominal_stress)}});
  }
  f.lines.insert(f.lines.end(), n.effective.lines.begin(), n.effective.lines.end());
  f.lines.push_back({"Pn = Fn Ae",
                     "{0} * {1} * {2} = {3}",
                     {stress(n.nominal_stress),
                      ratio(n.effective.ratio),
                      {n.area, Measure::area},
                      force(buckling_capacity(n))}});
  if (in.welds && !welded_part_way(in)) {
    const double counts = welded_end_ratio(in);
    f.lines.push_back({"at its welded ends Pn = Fy Ae, Fy of the weld zone; the lesser holds",
                       "{0} * {1} * {2} = {3}",
                       {stress(in.welds->yield),
                        ratio(counts),
                        {n.area, Measure::area},
                        force(in.welds->yield * counts * n.area)}});
  }
  f.lines.push_back({"Pn / P",
                     "{0} / {1} = {2}",
                     {force(f.capacity), force(f.demand), ratio(f.capacity / f.demand)}});
}

/// Machine design formulas beside the code's, for the reader; they decide nothing.
void add_lines_beside(Finding& f, const ColumnInput& in, const ColumnNumbers& n) {
  const double euler = euler_load(in.elastic, n.second_moment, n.effective_length);
  f.lines.push_back({"beside it, Euler: Pe = pi^2 E I / Lc^2",
                     "pi^2 * {0} * {1} / {2}^2 = {3}",
                     {stress(in.elastic),
                      {n.second_moment, Measure::second_moment},
                      length(n.effective_length),
                      force(euler)}});
  if (n.slenderness <= johnson_limit(in.elastic, in.yield)) {
    f.lines.push_back(
        {"beside it, Johnson: A (Sy - (Sy (Lc/r) / (2 pi))^2 / E), which rules as Lc/r <= "
         "sqrt(2 pi^2 E / Sy)",
         "{0} * ({1} - ({1} * {2} / (2 * pi))^2 / {3}) = {4}",
         {{n.area, Measure::area},
          stress(in.yield),
          ratio(n.slenderness),
          stress(in.elastic),
          force(johnson_load(in.elastic, in.yield, n.area, n.slenderness))}});
  }
  const double bow = in.bow * in.length;
  const CrookedColumn bowed{
      .area = n.area, .modulus = n.modulus, .yield = in.yield, .euler = euler, .bow = bow};
  const double first_yield = crooked_column(bowed);
  f.lines.push_back(
      {fmt::format("beside it, first yield with a bow a of L/{:.4g}, what is allowed as delivered: "
                   "P/A + (P a / S) / (1 - P/Pe) = Sy",
                   1.0 / in.bow),
       "{0} / {1} + ({0} * {2} / {3}) / (1 - {0} / {4}) = {5}",
       {force(first_yield),
        {n.area, Measure::area},
        length(bow),
        {n.modulus, Measure::section_modulus},
        force(euler),
        stress(in.yield)}});
  f.lines.push_back({"and by the secant formula: P/A (1 + (a A / S) sec(pi/2 sqrt(P/Pe))) = Sy",
                     "at {0}",
                     {force(secant_column(bowed))}});
  if (!in.bow_basis.empty()) {
    f.notes.push_back("bow as delivered: " + in.bow_basis + ", from memory");
  }
}

/// Whether which strength counts hangs on a reach that is assumed: it lies near the step.
bool near_the_step(const ColumnInput& in) {
  constexpr double kNear = 0.20;
  if (!in.welds->assumed || std::isnan(in.welds->farthest)) return false;
  const double step = kEndPart * in.length;
  return std::abs(in.welds->farthest - step) <= kNear * step * (1.0 + 1e-9);
}

/// Why the strength beside its welds counts at its ends alone, or throughout.
void add_weld_lines(Finding& f, const ColumnInput& parent) {
  if (!parent.welds) return;
  if (!welded_part_way(parent)) {
    f.lines.push_back({"its welds reach at most this far from its ends, within 0.05 L",
                       "{0} of {1}",
                       {length(parent.welds->farthest), length(kEndPart * parent.length)}});
    f.notes.push_back("at its welded ends: " + parent.welds->basis);
  } else {
    if (std::isnan(parent.welds->farthest)) {
      f.notes.emplace_back(
          "where along it the welds are is not known: Fy is the weld zone's throughout");
    } else {
      f.lines.push_back(
          {"a weld reaches this far from its nearer end, over 0.05 L: Fy is the weld "
           "zone's throughout",
           "{0} over {1}",
           {length(parent.welds->farthest), length(kEndPart * parent.length)}});
      f.notes.emplace_back(
          "0.05 L is a step: with its welds within it the parent's Fy counts for the buckling. A "
          "larger section whose welds reach farther in may come out worse for that alone");
    }
    f.lines.push_back({"beside it, Pn = Fn Ae with the parent's Fy, not used",
                       "{0} with {1}",
                       {force(buckling_capacity(numbers_of(parent))), stress(parent.yield)}});
    f.notes.push_back("beside it, the parent's: " + parent.strength_basis);
  }
  if (near_the_step(parent)) {
    f.notes.emplace_back(
        "warning: how far its welds reach is assumed, within a fifth of the 0.05 L at which "
        "another strength counts; give `bolt_to_weld`");
    f.notes.push_back(std::string(kCaveat) + "welds' reach assumed; give `bolt_to_weld`");
  } else if (parent.welds->assumed) {
    f.notes.emplace_back(
        "how far its welds reach is assumed, not given: `bolt_to_weld` decides which strength "
        "counts");
  }
  f.notes.emplace_back(
      "welds within 0.05 L of a column's ends leave its buckling alone: practice of the Aluminum "
      "Design Manual, from memory");
}

/// The column with the Fy that counts for its buckling.
ColumnInput judged(ColumnInput in) {
  if (welded_part_way(in)) {
    in.yield = in.welds->yield;
    in.strength_basis = in.welds->basis;
  }
  return in;
}

void add_notes(Finding& f, const ColumnInput& in, const ColumnNumbers& n) {
  if (!in.strength_basis.empty()) f.notes.push_back("yield strength: " + in.strength_basis);
  if (n.slenderness > kMostSlender) {
    f.notes.push_back(
        fmt::format("Lc/r of {:.0f} is over the 200 that AISC advises (E2 user note, from memory)",
                    n.slenderness));
  }
  if (std::holds_alternative<sections::ByNumbers>(in.shape)) {
    f.notes.push_back(
        "the section is given by its numbers: local buckling of its walls is not "
        "checked");
  }
  if (!std::isnan(in.safety_factor)) {
    f.notes.push_back(
        "the safety factor is the largest multiple of the load, solved again at "
        "each, at which the compression stays under Pn");
  }
}

/// The clauses that the numbers come from.
std::string source_of(const ColumnNumbers& n) {
  const bool thin = n.effective.ratio < 1.0;
  if (!n.twists && !thin) {
    return "AISC 360-22 E3, from memory (the same curve read in AISC LRFD 1999, app. E)";
  }
  return fmt::format("AISC 360-22 E3{}, from memory (the E3 curve read in AISC LRFD 1999, app. E)",
                     !n.twists ? " and E7"
                     : thin    ? ", E4 and E7"
                               : " and E4");
}

}  // namespace

double column_capacity(const ColumnInput& given) {
  const ColumnInput input = judged(given);
  if (!wall_outside_method(input.shape, input.elastic, input.yield).empty()) return base::kUnset;
  return capacity_of(input, numbers_of(input));
}

std::optional<Finding> column(const ColumnInput& given) {
  INVARIANT(std::isfinite(given.compression));
  INVARIANT(given.elastic > 0.0 && given.yield > 0.0 && given.length > 0.0 && given.k > 0.0);
  INVARIANT(!given.welds || given.welds->yield > 0.0);
  if (given.compression <= 0.0) return std::nullopt;
  const ColumnInput input = judged(given);
  const ColumnNumbers n = numbers_of(input);
  Finding finding;
  finding.check = "column";
  finding.measure = Measure::force;
  finding.demand = input.compression;
  finding.required = input.required;
  finding.source = source_of(n);
  finding.range =
      "straight, no load from the side between its ends; Lc/r up to 200 is advised; walls as E7 "
      "allows";
  if (const std::string reason = wall_outside_method(input.shape, input.elastic, input.yield);
      !reason.empty()) {
    leave_undecided(finding, reason + " (AISC 360-22 E7, from memory)");
    return finding;
  }
  finding.capacity = capacity_of(input, n);
  if (input.welds && (welded_part_way(given) || at_its_welds(input, n) < buckling_capacity(n))) {
    finding.where = "at its weld";
  }
  add_strength_lines(finding, input, n);
  add_lines_beside(finding, input, n);
  add_notes(finding, input, n);
  add_weld_lines(finding, given);
  const double quotient = finding.capacity / finding.demand;
  decide(finding, std::isnan(input.safety_factor) ? quotient : input.safety_factor, input.required);
  return finding;
}

}  // namespace checks
