#include "checks/weld.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/caveat.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

using Eigen::Vector3d;

constexpr std::size_t kMostLinesListed = 16;  // a ring is told by its number of chords instead
constexpr double kRounding = 1e-9;  // a leg or thickness typed in inches meets its limit exactly
constexpr const char* kNotCounted =
    "not part of this check: the parts' own sections beside the weld, and the root of a one-sided "
    "fillet opening under a moment about its own line";

WorkedLine vector_line(std::string symbols, const Vector3d& v, Measure measure) {
  return {std::move(symbols),
          "({0}, {1}, {2})",
          {{v.x(), measure}, {v.y(), measure}, {v.z(), measure}}};
}

bool of_grooves(const WeldGroup& group) {
  return !group.lines.empty() && group.lines.front().is_groove();
}

/// The wrench and the worst point in the axes in which the group is worked out.
struct Turned {
  std::array<std::string, 3> axis;
  Vector3d force;
  Vector3d moment;  // about the centroid
  Vector3d arm;     // centroid to the worst point
};

Turned turned(const WeldProperties& p, const Wrench& w, const Vector3d& point) {
  Turned t;
  t.axis = p.given_axes ? std::array<std::string, 3>{"x", "y", "z"}
                        : std::array<std::string, 3>{"1", "2", "3"};
  t.force = p.axes.transpose() * w.force;
  t.moment = p.axes.transpose() * (w.moment + (w.at - p.centroid).cross(w.force));
  t.arm = p.axes.transpose() * (point - p.centroid);
  return t;
}

WorkedLine area_line(const WeldGroup& group, double total_area) {
  const bool grooves = of_grooves(group);
  // Lines of the same size share one term of the sum.
  std::vector<std::pair<double, double>> legs;
  for (const WeldLine& line : group.lines) {
    const double size = grooves ? line.groove : line.leg;
    auto same = std::find_if(legs.begin(), legs.end(),
                             [&](const auto& entry) { return entry.first == size; });
    if (same == legs.end()) same = legs.insert(legs.end(), {size, 0.0});
    same->second += line.length();
  }
  if (legs.size() > kMostLinesListed) {
    return {"A = sum of throat x length over the chords", "{0}", {{total_area, Measure::area}}};
  }
  WorkedLine area{
      grooves ? "A = sum of throat x length" : "A = sum of leg / sqrt(2) x length", "", {}};
  for (const auto& [leg, total] : legs) {
    area.numbers +=
        fmt::format("{}{{{}}}{} * {{{}}}", area.numbers.empty() ? "" : " + ", area.values.size(),
                    grooves ? "" : " / sqrt(2)", area.values.size() + 1);
    area.values.push_back(length(leg));
    area.values.push_back(length(total));
  }
  area.numbers += fmt::format(" = {{{}}}", area.values.size());
  area.values.push_back({total_area, Measure::area});
  return area;
}

void add_group_lines(Finding& f, const WeldGroup& group, const WeldProperties& p) {
  if (group.lines.size() <= kMostLinesListed) {
    for (std::size_t i = 0; i < group.lines.size(); ++i) {
      const WeldLine& line = group.lines[i];
      f.lines.push_back(
          {fmt::format("weld line {}: from, to, {}", i + 1, line.is_groove() ? "throat" : "leg"),
           "({0}, {1}, {2}) to ({3}, {4}, {5}), {6}",
           {length(line.from.x()), length(line.from.y()), length(line.from.z()),
            length(line.to.x()), length(line.to.y()), length(line.to.z()),
            length(line.is_groove() ? line.groove : line.leg)}});
    }
  } else {
    const auto [thinnest, thickest] = std::minmax_element(
        group.lines.begin(), group.lines.end(),
        [](const WeldLine& a, const WeldLine& b) { return a.throat() < b.throat(); });
    f.lines.push_back({fmt::format("weld lines: {} chords, throat from and to", group.lines.size()),
                       "{0} to {1}",
                       {length(thinnest->throat()), length(thickest->throat())}});
  }
  f.lines.push_back(area_line(group, p.area));
  f.lines.push_back(vector_line("centroid g of the throats", p.centroid, Measure::length));
  if (!p.given_axes) {
    for (int i = 0; i < 3; ++i) {
      f.lines.push_back(vector_line(fmt::format("principal axis {} of the group", i + 1),
                                    p.axes.col(i), Measure::ratio));
    }
  }
  f.lines.push_back(vector_line(p.given_axes
                                    ? "I_x, I_y, I_z = sum of throat x distance^2 from each axis"
                                    : "I_1, I_2, I_3 = sum of throat x distance^2 from each axis",
                                p.moments, Measure::second_moment));
}

void add_wrench_lines(Finding& f, const WeldProperties& p, const Wrench& w, const Turned& t) {
  f.lines.push_back(vector_line("force F on the group", w.force, Measure::force));
  f.lines.push_back(vector_line("acting at p", w.at, Measure::length));
  f.lines.push_back(vector_line("with the moment M_p", w.moment, Measure::moment));
  const Vector3d d = w.at - p.centroid;
  const Vector3d m = w.moment + d.cross(w.force);
  constexpr std::array<const char*, 3> kNames = {"x", "y", "z"};
  for (int i = 0; i < 3; ++i) {
    const int j = (i + 1) % 3;
    const int k = (i + 2) % 3;
    const auto name = [&](int n) { return kNames[static_cast<std::size_t>(n)]; };
    f.lines.push_back(
        {fmt::format("M_{0} = M_p,{0} + ({1}_p - {1}_g) F_{2} - ({2}_p - {2}_g) F_{1}", name(i),
                     name(j), name(k)),
         "{0} + ({1}) * ({2}) - ({3}) * ({4}) = {5}",
         {moment(w.moment[i]), length(d[j]), force(w.force[k]), length(d[k]), force(w.force[j]),
          moment(m[i])}});
  }
  if (p.given_axes) return;
  f.lines.push_back(vector_line("F_1, F_2, F_3 along the principal axes", t.force, Measure::force));
  f.lines.push_back(
      vector_line("M_1, M_2, M_3 about the principal axes", t.moment, Measure::moment));
}

/// tau_i = F_i/A + (M_j/I_j) r_k - (M_k/I_k) r_j; an axis that all lines lie on has no term.
void add_component_line(Finding& f, const WeldProperties& p, const Turned& t, int i,
                        double result) {
  const int j = (i + 1) % 3;
  const int k = (i + 2) % 3;
  const auto name = [&](int n) { return t.axis[static_cast<std::size_t>(n)]; };
  WorkedLine line{fmt::format("tau_{0} = F_{0} / A", name(i)),
                  "{0} / {1}",
                  {force(t.force[i]), {p.area, Measure::area}}};
  const auto add_term = [&](const char* sign, int about, int along) {
    if (!(p.moments[about] > 0.0)) return;
    line.symbols += fmt::format(" {0} M_{1} / I_{1} * r_{2}", sign, name(about), name(along));
    const std::size_t n = line.values.size();
    line.numbers += fmt::format(" {} ({{{}}}) / {{{}}} * ({{{}}})", sign, n, n + 1, n + 2);
    line.values.push_back(moment(t.moment[about]));
    line.values.push_back(second_moment(p.moments[about]));
    line.values.push_back(length(t.arm[along]));
  };
  add_term("+", j, k);
  add_term("-", k, j);
  line.numbers += fmt::format(" = {{{}}}", line.values.size());
  line.values.push_back(stress(result));
  f.lines.push_back(line);
}

/// Lines in two directions deform differently under one load.
bool all_parallel(const WeldGroup& group) {
  const Vector3d first = (group.lines.front().to - group.lines.front().from).normalized();
  return std::all_of(group.lines.begin(), group.lines.end(), [&](const WeldLine& line) {
    return first.cross(line.to - line.from).norm() <= 1e-6 * line.length();
  });
}

/// Whether kds is counted.
bool counts_direction(const WeldInput& in) {
  return in.directional && !in.en && !in.skewed && !of_grooves(in.group) && all_parallel(in.group);
}

double thickest_throat(const WeldGroup& group) {
  double most = 0.0;
  for (const WeldLine& line : group.lines) most = std::max(most, line.throat());
  return most;
}

void add_part_line(Finding& f, const WeldInput& in) {
  if (std::isnan(in.part)) return;
  const double throat = thickest_throat(in.group);
  f.lines.push_back(
      {in.part_lines > 1 ? "the part itself, shared by the welds on both its sides: "
                           "0.60 Fu t, over their throats"
                         : "the part itself: 0.60 Fu t, over the throat",
       in.part_lines > 1 ? "0.60 * {0} * {1} / ({3} * {2}) = {4}" : "0.60 * {0} * {1} / {2} = {4}",
       {stress(in.part_tensile), length(in.part), length(throat), ratio(in.part_lines),
        stress(part_rupture(in))}});
}

void add_capacity_lines(Finding& f, const WeldInput& in, double increase) {
  if (in.en) {
    f.lines.push_back(
        {"fu / (sqrt(3) beta_w), of the weaker part joined",
         "{0} / (sqrt(3) * {1}) = {2}",
         {stress(in.base_tensile), ratio(beta_w(in.base_tensile)), stress(f.capacity)}});
    return;
  }
  const double metal = 0.60 * in.group.filler_tensile;
  if (counts_direction(in)) {
    f.lines.push_back(
        {"weld metal: 0.60 F_EXX kds, kds = 1 + 0.50 sin^1.5 of the angle between "
         "tau and its line",
         "0.60 * {0} * {1} = {2}",
         {stress(in.group.filler_tensile), ratio(increase), stress(metal * increase)}});
  } else {
    f.lines.push_back({"weld metal: 0.60 F_EXX",
                       "0.60 * {0} = {1}",
                       {stress(in.group.filler_tensile), stress(metal)}});
  }
  add_part_line(f, in);
  if (std::isnan(in.base_tensile)) return;
  const bool grooves = of_grooves(in.group);
  f.lines.push_back({grooves ? "fusion face, on the throat: 0.60 Fu"
                             : "fusion face, on the leg = sqrt(2) throats: 0.60 Fu sqrt(2)",
                     grooves ? "0.60 * {0} = {1}" : "0.60 * {0} * sqrt(2) = {1}",
                     {stress(in.base_tensile), stress(fusion_face(in.base_tensile, grooves))}});
}

void add_stress_lines(Finding& f, const WeldInput& in, const WeldProperties& p, const Turned& t,
                      const ThroatStress& worst) {
  f.lines.push_back(vector_line(fmt::format("worst point, on weld line {}", worst.line + 1),
                                worst.point, Measure::length));
  f.lines.push_back(vector_line("r, from the centroid to it", t.arm, Measure::length));
  for (int i = 0; i < 3; ++i) add_component_line(f, p, t, i, worst.stress[i]);
  f.lines.push_back({"tau = resultant on the throat, all taken as shear",
                     "sqrt(({0})^2 + ({1})^2 + ({2})^2) = {3}",
                     {stress(worst.stress[0]), stress(worst.stress[1]), stress(worst.stress[2]),
                      stress(worst.resultant)}});
  if (in.uneven > 1.0) {
    f.lines.push_back({"tau, a round part's wall loading it unevenly (AWS D1.1:2015 9.6.1.3(4))",
                       "{0} * {1} = {2}",
                       {ratio(in.uneven), stress(worst.resultant), stress(f.demand)}});
  }
  add_capacity_lines(f, in, worst.increase);
  f.lines.push_back({"capacity, the least, / tau",
                     "{0} / {1} = {2}",
                     {stress(f.capacity), stress(f.demand), ratio(f.capacity / f.demand)}});
}

std::string in_both(double si) {
  return fmt::format("{:.4g} in ({:.2g} mm)", si / base::kInch, si / base::kMillimeter);
}

void add_notes(Finding& f, const WeldInput& in) {
  bool below = false;
  bool shallow = false;
  bool above = false;
  bool heavy = false;
  bool too_short = false;
  for (const WeldLine& line : in.group.lines) {
    if (line.is_groove()) {
      shallow = shallow || line.groove < minimum_leg(in.thinner_part) * (1.0 - kRounding);
      continue;
    }
    const double leg = in.skewed ? in.skewed_leg : line.leg;
    below = below || leg < minimum_leg(in.thinner_part) * (1.0 - kRounding);
    heavy = heavy || leg > 2.0 * in.thinner_part * (1.0 + kRounding);
    if (in.skewed) continue;
    above = above || line.leg > maximum_leg(in.edge) * (1.0 + kRounding);
    too_short = too_short || line.length() < 4.0 * line.leg * (1.0 - kRounding);
  }
  if (shallow) {
    f.notes.push_back(
        fmt::format("warning: the groove's throat is under the minimum of {} for the thinner part "
                    "joined (AISC 360-05 Table J2.3, read)",
                    in_both(minimum_leg(in.thinner_part))));
  }
  if (of_grooves(in.group)) {
    f.notes.emplace_back(
        "the groove's throat is as given: a penetration that no bevel and procedure of the table "
        "gives must be shown by a cut and etched sample of the procedure (AISC 360 J2.1a, from "
        "memory)");
  }
  if (!std::isnan(in.base_tensile) && !in.base_basis.empty()) {
    f.notes.push_back("Fu of the fusion face: " + in.base_basis);
  }
  if (below) {
    f.notes.push_back(
        fmt::format("{}the leg is under the minimum of {} for the thinner part joined (AISC 360 "
                    "Table J2.4, read)",
                    kCaveat, in_both(minimum_leg(in.thinner_part))));
  }
  if (above) {
    f.notes.push_back(fmt::format(
        "{}the leg is over the maximum of {} along the edge of the plate (AISC 360 J2.2b, read)",
        kCaveat, in_both(maximum_leg(in.edge))));
  }
  if (heavy) {
    f.notes.push_back(
        fmt::format("{}the leg is over twice the thinner part joined, {}: it burns through or "
                    "warps that before it is full (common practice, no source)",
                    kCaveat, in_both(in.thinner_part)));
  }
  if (!in.backed.empty()) {
    f.notes.push_back(in.backed);
  } else if (too_short && in.group.lines.size() <= kMostLinesListed) {
    f.notes.push_back(
        "a weld line is shorter than four legs: as a separate weld it counts with a leg of only a "
        "quarter of its length (AISC 360 J2.2b, read)");
  }
  if (counts_direction(in)) {
    f.notes.emplace_back(
        "strength by the direction of the load, as the case asks: kds of AISC 360-22 J2.4 (from "
        "memory), which is for lines that deform alike; not for the ends of hollow sections");
  } else if (in.en) {
    f.notes.emplace_back(
        in.directional
            ? "directional strength is asked for and not counted: simplified method of EN 1993-1-8 "
              "4.5.3.3, the same strength for every direction of the load"
            : "simplified method: the same strength for every direction of the load");
  } else if (in.directional && !of_grooves(in.group) && !all_parallel(in.group)) {
    f.notes.emplace_back(
        "directional strength is asked for and not counted: the lines run in two directions, and "
        "that they deform alike is not shown: kds = 1 (AISC 360-22 J2.4(b), from memory)");
  } else {
    f.notes.emplace_back("kds = 1: no increase of strength for the direction of the load");
  }
  f.notes.emplace_back(kNotCounted);
  if (!std::isnan(in.safety_factor)) {
    f.notes.emplace_back(
        "the safety factor is the largest multiple of the load, solved again at "
        "each, at which the throat stress stays under its capacity");
  }
}

}  // namespace

double minimum_leg(double thinner_part) {
  if (std::isnan(thinner_part)) return 0.0;
  if (thinner_part <= 0.25 * base::kInch * (1.0 + kRounding)) return 3.0 * base::kMillimeter;
  if (thinner_part <= 0.50 * base::kInch * (1.0 + kRounding)) return base::kInch * 3.0 / 16.0;
  if (thinner_part <= 0.75 * base::kInch * (1.0 + kRounding)) return 6.0 * base::kMillimeter;
  return base::kInch * 5.0 / 16.0;
}

double maximum_leg(double edge) {
  if (std::isnan(edge)) return std::numeric_limits<double>::infinity();
  return edge < 6.0 * base::kMillimeter ? edge : edge - base::kInch / 16.0;
}

double fusion_face(double base_tensile, bool groove) {
  return 0.60 * base_tensile * (groove ? 1.0 : std::sqrt(2.0));
}

double part_rupture(const WeldInput& in) {
  if (std::isnan(in.part)) return std::numeric_limits<double>::infinity();
  return 0.60 * in.part_tensile * in.part / (in.part_lines * thickest_throat(in.group));
}

double beta_w(double base_tensile) {
  if (base_tensile <= 360.0e6 * (1.0 + kRounding)) return 0.80;
  if (base_tensile <= 430.0e6 * (1.0 + kRounding)) return 0.85;
  return base_tensile <= 510.0e6 * (1.0 + kRounding) ? 0.90 : 1.00;
}

namespace {

/// Why EN's strength does not hold; empty where it does.
std::string outside_en(const WeldInput& in) {
  constexpr double kThinnest = 4.0 * base::kMillimeter;
  if (std::isnan(in.base_tensile)) {
    return "EN 1993-1-8 judges a weld by the steel beside it, which is not known here";
  }
  if (in.thinner_part < kThinnest * (1.0 - kRounding)) {
    return "outside the method: a part joined is under 4 mm (EN 1993-1-8 4.1, from memory)";
  }
  return {};
}

/// The worst point, and the capacity there.
struct WorstWeld {
  ThroatStress stress;
  double capacity = base::kUnset;
};
std::optional<WorstWeld> worst_weld(const WeldInput& in) {
  const std::optional<ThroatStress> plain = worst_throat_stress(in.group, in.wrench);
  if (!plain) return std::nullopt;
  if (in.en) return WorstWeld{*plain, in.base_tensile / (std::sqrt(3.0) * beta_w(in.base_tensile))};
  const double metal = 0.60 * in.group.filler_tensile;
  const double fused = std::isnan(in.base_tensile)
                           ? std::numeric_limits<double>::infinity()
                           : fusion_face(in.base_tensile, of_grooves(in.group));
  const double face = std::min(fused, part_rupture(in));
  if (!counts_direction(in)) return WorstWeld{*plain, std::min(metal, face)};
  const ThroatStress by_direction = *worst_throat_stress(in.group, in.wrench, true);
  const double increased = metal * by_direction.increase;
  // The base metal gains nothing: it may give where the stress itself is largest.
  if (plain->resultant / face > by_direction.resultant / std::min(increased, face)) {
    WorstWeld base{*plain, face};
    const WeldLine& line = in.group.lines[plain->line];
    const Vector3d along = weld_properties(in.group.lines).axes.transpose() * (line.to - line.from);
    base.stress.increase = directional_increase(along, plain->stress);
    return base;
  }
  return WorstWeld{by_direction, std::min(increased, face)};
}

}  // namespace

double weld_use(const WeldInput& input) {
  if (input.en && !outside_en(input).empty()) return base::kUnset;
  const std::optional<WorstWeld> worst = worst_weld(input);
  return worst ? input.uneven * worst->stress.resultant / worst->capacity : base::kUnset;
}

Finding weld(const WeldInput& input) {
  INVARIANT(input.group.filler_tensile > 0.0);
  Finding finding;
  finding.check = "weld";
  finding.measure = Measure::stress;
  finding.required = input.required;
  finding.source =
      "throat stress: weld as a line, Blodgett, Design of Welded Structures, sec. 7.4, from "
      "memory; strength: AISC 360-22 J2.4, from memory (0.60 F_EXX read in AISC LRFD 1999, Table "
      "J2.5), fusion face and the part with J4.2, from memory";
  if (input.en) {
    finding.source =
        "throat stress: weld as a line, Blodgett, Design of Welded Structures, sec. 7.4, from "
        "memory; strength: EN 1993-1-8 4.5.3.3 and table 4.1, from memory";
  }
  finding.range =
      "welds between parts that are stiff beside them: a thin wall beside a weld loads it "
      "unevenly";
  add_notes(finding, input);
  const WeldProperties properties = weld_properties(input.group.lines);
  add_group_lines(finding, input.group, properties);
  if (std::string why = input.en ? outside_en(input) : std::string(); !why.empty()) {
    leave_undecided(finding, std::move(why));
    return finding;
  }
  const std::optional<WorstWeld> found = worst_weld(input);
  if (!found) {
    leave_undecided(finding,
                    "all weld lines lie on one axis and a moment turns about it: one line cannot "
                    "carry it, its root opens; give a second line beside it");
    return finding;
  }
  const ThroatStress* worst = &found->stress;
  finding.capacity = found->capacity;
  const Turned t = turned(properties, input.wrench, worst->point);
  finding.demand = input.uneven * worst->resultant;
  add_wrench_lines(finding, properties, input.wrench, t);
  add_stress_lines(finding, input, properties, t, *worst);
  const double quotient = finding.capacity / finding.demand;
  decide(finding, std::isnan(input.safety_factor) ? quotient : input.safety_factor, input.required);
  return finding;
}

}  // namespace checks
