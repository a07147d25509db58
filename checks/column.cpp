#include "checks/column.hpp"

#include <algorithm>
#include <cmath>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/column_strength.hpp"
#include "checks/value.hpp"
#include "sections/area_props.hpp"

namespace checks {
namespace {

constexpr double kMostSlender = 200.0;          // AISC 360-22 E2 user note, from memory
constexpr double kCustomaryBow = 1.0 / 1000.0;  // straightness on which E3 rests, from memory

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
  double area_ratio = 1.0;                 // Ae / Ag
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
  if (const auto* tube = std::get_if<sections::RoundTube>(&in.shape)) {
    n.area_ratio = round_tube_e7(in.elastic, in.yield, tube->outside / tube->wall);
  }
  return n;
}

/// Pn = Fn Ae  [N]
double buckling_capacity(const ColumnNumbers& n) {
  return n.nominal_stress * n.area_ratio * n.area;
}

/// A wall of a shape, as AISC 360-22 table B4.1a sorts them.
struct WallRatio {
  const char* what;
  double width_over_thickness;
  double limit;  ///< times sqrt(E/Fy)
};

constexpr double kBoxWall = 1.40;
constexpr double kHeldWall = 1.49;
constexpr double kChannelFlange = 0.56;
constexpr double kLeg = 0.45;

std::vector<WallRatio> wall_ratios(const sections::Shape& shape) {
  if (const auto* tube = std::get_if<sections::RectangularTube>(&shape)) {
    return {
        {"wall", (std::max(tube->depth, tube->width) - 3.0 * tube->wall) / tube->wall, kBoxWall}};
  }
  if (const auto* channel = std::get_if<sections::Channel>(&shape)) {
    return {{"flange", channel->width / channel->flange, kChannelFlange},
            {"web", (channel->depth - 2.0 * channel->flange) / channel->web, kHeldWall}};
  }
  if (const auto* angle = std::get_if<sections::Angle>(&shape)) {
    return {{"leg", std::max(angle->depth, angle->width) / angle->wall, kLeg}};
  }
  if (const auto* boxed = std::get_if<sections::BoxedChannel>(&shape)) {
    const double clear = boxed->depth - 2.0 * boxed->flange;
    return {{"flange", (boxed->width - boxed->web) / boxed->flange, kBoxWall},
            {"web", clear / boxed->web, kBoxWall},
            {"plate", clear / boxed->plate, kBoxWall}};
  }
  std::vector<WallRatio> all;
  if (const auto* line = std::get_if<sections::ThinWalled>(&shape)) {
    for (std::size_t i = 0; i < line->walls.size(); ++i) {
      const auto& from = line->points[i];
      const auto& to = line->points[(i + 1) % line->points.size()];
      const bool free = !line->closed && (i == 0 || i + 1 == line->walls.size());
      all.push_back({"wall", std::hypot(to[0] - from[0], to[1] - from[1]) / line->walls[i],
                     free ? kLeg : kBoxWall});
    }
  }
  return all;
}

/// Why the wall is outside the method; empty when it is inside.
std::string wall_outside_method(const ColumnInput& in) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&in.shape)) {
    const double limit = 0.45 * in.elastic / in.yield;
    const double wall = tube->outside / tube->wall;
    if (wall >= limit) {
      return fmt::format("outside the method: D/t of {:.0f} is not under 0.45 E/Fy = {:.0f}", wall,
                         limit);
    }
  }
  for (const WallRatio& wall : wall_ratios(in.shape)) {
    const double limit = wall.limit * std::sqrt(in.elastic / in.yield);
    if (wall.width_over_thickness <= limit) continue;
    return fmt::format(
        "outside the method: the {}'s b/t of {:.1f} is over {:.2f} sqrt(E/Fy) = {:.1f}", wall.what,
        wall.width_over_thickness, wall.limit, limit);
  }
  return {};
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
  if (n.area_ratio < 1.0) {
    const auto& tube = std::get<sections::RoundTube>(in.shape);
    f.lines.push_back({"Ae/Ag = 0.038 E / (Fy D/t) + 2/3, as D/t > 0.11 E/Fy",
                       "0.038 * {0} / ({1} * {2} / {3}) + 2/3 = {4}",
                       {stress(in.elastic), stress(in.yield), length(tube.outside),
                        length(tube.wall), ratio(n.area_ratio)}});
  }
  f.lines.push_back({"Pn = Fn Ae",
                     "{0} * {1} * {2} = {3}",
                     {stress(n.nominal_stress),
                      ratio(n.area_ratio),
                      {n.area, Measure::area},
                      force(buckling_capacity(n))}});
  if (in.welds && !welded_part_way(in)) {
    f.lines.push_back(
        {"at its welded ends Pn = Fy A, Fy of the weld zone; the lesser holds",
         "{0} * {1} = {2}",
         {stress(in.welds->yield), {n.area, Measure::area}, force(in.welds->yield * n.area)}});
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
  const double bow = kCustomaryBow * in.length;
  const double first_yield = crooked_column(
      {.area = n.area, .modulus = n.modulus, .yield = in.yield, .euler = euler, .bow = bow});
  f.lines.push_back(
      {"beside it, first yield with a bow a of L/1000: P/A + (P a / S) / (1 - P/Pe) "
       "= Sy",
       "{0} / {1} + ({0} * {2} / {3}) / (1 - {0} / {4}) = {5}",
       {force(first_yield),
        {n.area, Measure::area},
        length(bow),
        {n.modulus, Measure::section_modulus},
        force(euler),
        stress(in.yield)}});
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
    }
    f.lines.push_back({"beside it, Pn = Fn Ae with the parent's Fy, not used",
                       "{0} with {1}",
                       {force(buckling_capacity(numbers_of(parent))), stress(parent.yield)}});
    f.notes.push_back("beside it, the parent's: " + parent.strength_basis);
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

}  // namespace

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
  finding.source =
      n.twists ? "AISC 360-22 E3 and E4, from memory (the E3 curve read in AISC LRFD 1999, app. E)"
      : n.area_ratio < 1.0
          ? "AISC 360-22 E3 and E7, from memory (the E3 curve read in AISC LRFD 1999, app. E)"
          : "AISC 360-22 E3, from memory (the same curve read in AISC LRFD 1999, app. E)";
  if (const std::string reason = wall_outside_method(input); !reason.empty()) {
    leave_undecided(finding, reason + " (AISC 360-22 B4.1, from memory)");
    return finding;
  }
  finding.capacity = buckling_capacity(n);
  if (input.welds) finding.capacity = std::min(finding.capacity, input.welds->yield * n.area);
  add_strength_lines(finding, input, n);
  add_lines_beside(finding, input, n);
  add_notes(finding, input, n);
  add_weld_lines(finding, given);
  const double quotient = finding.capacity / finding.demand;
  decide(finding, std::isnan(input.safety_factor) ? quotient : input.safety_factor, input.required);
  return finding;
}

}  // namespace checks
