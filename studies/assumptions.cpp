#include "studies/assumptions.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "loads/case_library.hpp"
#include "parts/bracket_weld.hpp"
#include "parts/design_cases.hpp"
#include "parts/rail_seat.hpp"
#include "parts/stiffness_set.hpp"
#include "parts/used_sticks.hpp"

namespace studies {
namespace {

using parts::Assumption;

std::string length_text(double meters, bool inches) {
  return inches ? fmt::format("{:.4g} in", meters / base::kInch)
                : fmt::format("{:.4g} mm", meters / base::kMillimeter);
}

std::string two_turning_rates(double soft, double stiff, bool inches) {
  constexpr double kFootPoundPerDegree = 12.0 * base::kInch * base::kPoundForce / base::kDegree;
  return inches ? fmt::format("{:.0f} and {:.0f} ft-lb/deg", soft / kFootPoundPerDegree,
                              stiff / kFootPoundPerDegree)
                : fmt::format("{:.4g} and {:.4g} kN m/rad", soft / 1000.0, stiff / 1000.0);
}

void add_bracket(std::vector<Assumption>& out, const parts::Design& design) {
  const parts::Bracket& b = *design.bracket;
  if (std::isnan(b.depth_at_bolt)) {
    out.push_back({"bracket.depth_at_bolt", length_text(parts::depth_at_bolt(b), design.inches),
                   "half of the depth at the rail; proposal"});
  }
  if (std::isnan(b.up_the_side) && (b.welded_to.inner_side || b.welded_to.outer_side)) {
    out.push_back({"bracket.up_the_side", length_text(parts::weld_up_the_side(b), design.inches),
                   "half of the rail's height; proposal"});
  }
  if (std::isnan(b.edge_distance) && design.lateral_link && design.lateral_link->bolt.given()) {
    out.push_back({"bracket.edge_distance", length_text(parts::edge_distance(b), design.inches),
                   "half of the depth at the bolt; proposal"});
  }
  if (std::isnan(b.rail_stress)) {
    const double unit = design.inches ? base::kKsi : base::kMegapascal;
    out.push_back(
        {"bracket.rail_stress",
         fmt::format("{:.3g} {}", parts::rail_stress(b) / unit, design.inches ? "ksi" : "MPa"),
         "0.4 of the rail's yield strength; proposal, no source"});
  }
  if (b.rail.frame_plate > 0.0) {
    out.push_back({"frame plate", "as wide as the rail's face, welded all round",
                   "it must reach past the bracket by half the face's width; common practice, no "
                   "source"});
  }
  if (!b.rail.boxed && b.welded_to.bottom && !b.welded_to.inner_side && !b.welded_to.outer_side) {
    out.push_back({"open rail", "its web is on the outer side",
                   "trucks' channels mostly open inward; common practice, no source"});
  }
  if (design.frame) {
    out.push_back({"rail under the bracket", "by `frame`", parts::frame_root_words(b)});
  } else if (parts::root_is_bounded(b)) {
    const parts::RootStiffness soft = parts::root_stiffness(b, parts::Bound::low);
    const parts::RootStiffness stiff = parts::root_stiffness(b, parts::Bound::high);
    out.push_back({"bracket.rail_stiffness",
                   two_turning_rates(soft.value, stiff.value, design.inches),
                   soft.basis + (soft.basis == stiff.basis ? "" : "; " + stiff.basis)});
  }
  std::string basis = "the usual bracket of a lateral link; common practice, no source";
  if (parts::is_tied(b)) {
    basis +=
        "; folded or tied plates bend as one, bent about their centroid, with no twist from "
        "their shear center; the weld of back and face to the rail is not counted";
  } else if (b.plates.count == 2) {
    basis +=
        "; taken as beams, each plate bending alone across its plane: beside solid elements "
        "(tests/published) one such bracket is 2 % softer and within 1 % of the stress in plane, "
        "4 times as soft and 2.5 times the stress across";
  }
  out.push_back({"bracket plates", "across the truck, bolt along it, under the rail's middle",
                 std::move(basis)});
}

void add_joints(std::vector<Assumption>& out, const parts::Design& design) {
  const std::vector<std::string> groups = parts::bushing_groups(design);
  if (groups.empty()) return;
  std::string names;
  for (const std::string& g : groups) names += (names.empty() ? "" : ", ") + g;
  const bool corners = design.bracket && parts::root_is_bounded(*design.bracket) && design.brace &&
                       std::isnan(design.brace->end_mount);
  const std::string where =
      corners ? ", with the rail soft and the brace's end rigid, and the other way about" : "";
  out.push_back(
      {names, "soft and stiff end of their range, one group at a time" + where,
       std::string(design.inches
                       ? "rubber 5700 to 28600 lb/in, hard 28600 to 114000 lb/in radial, along the "
                         "bolt 2300 to 5700 and 11400 to 28600 lb/in, tilt 4 to 19 and 19 to 77 "
                         "ft-lb/deg (common practice, no source; rounded from metric); "
                       : "rubber 1 to 5 kN/mm, hard 5 to 20 kN/mm radial, along the bolt 0.4 to 1 "
                         "and 2 to 5 kN/mm, tilt 300 to 1500 and 1500 to 6000 N m/rad (common "
                         "practice, no source); ") +
           "between them the geometric mean; entered rates at half and double"});
}

/// Every factor asked for, with its basis; first of all those that are under the usual ones.
void add_factors(std::vector<Assumption>& out, const parts::Design& design) {
  checks::RequiredFactors usual;
  checks::RequiredFactors of_preset = checks::factors_of(design.factor_preset);
  checks::RequiredFactors used = design.factors;
  const std::vector<checks::FactorEntry> usual_entries = checks::factor_entries(usual);
  const std::vector<checks::FactorEntry> preset_entries =
      checks::factor_entries(of_preset, design.factor_preset);
  const std::vector<checks::FactorEntry> used_entries = checks::factor_entries(used);
  const std::string preset = design.factor_preset == checks::FactorPreset::usual
                                 ? ""
                                 : "preset " + checks::name_of(design.factor_preset) + ": ";
  for (std::size_t i = 0; i < used_entries.size(); ++i) {
    const double value = *used_entries[i].value;
    const bool as_preset = value == *preset_entries[i].value;
    if (value < *usual_entries[i].value) {
      const std::string from =
          as_preset ? preset + preset_entries[i].basis : std::string("entered in the case");
      out.insert(out.begin(),
                 {"factors." + used_entries[i].key,
                  fmt::format("{:g}, LOWERED from the usual {:g}", value, *usual_entries[i].value),
                  from + "; the usual one: " + usual_entries[i].basis});
      continue;
    }
    if (!as_preset) continue;
    if (used_entries[i].value == &used.strap_abuse && !design.limit_strap) continue;
    out.push_back({"factors." + used_entries[i].key, fmt::format("{:g}", value),
                   preset + preset_entries[i].basis});
  }
}

/// What the tolerances took off each bar and tube, and strengths used outside their range.
void add_sticks(std::vector<Assumption>& out, const parts::Design& design) {
  for (const parts::StickOf& s : parts::used_sticks(design)) {
    const sections::Material& steel = s.stick->material;
    if (design.sizes == sections::Sizes::minimum) {
      const sections::MinimumShape least = sections::minimum_material(s.stick->shape, steel);
      out.push_back({s.key + " size",
                     (least.known ? "minimum: " : "as entered: ") +
                         sections::describe(least.shape, design.inches),
                     least.basis});
    }
    const double thickness = sections::governing_thickness(s.stick->shape);
    if (steel.covers(thickness)) continue;
    out.push_back({s.key + " strength",
                   fmt::format("that of {} up to {} thick", steel.id,
                               length_text(steel.thickness_to, design.inches)),
                   fmt::format("{}, {}: it is {} here, and thicker steel is often weaker",
                               steel.basis, steel.source, length_text(thickness, design.inches))});
  }
  if (design.sizes == sections::Sizes::minimum && design.bracket) {
    out.push_back({"bracket.plates size", "as entered",
                   "no table of tolerances for plate here: nothing is taken off"});
  }
}

std::string zones_text(const parts::Piece& piece, bool inches) {
  std::string text;
  for (const parts::WeldZone& zone : piece.weld_zones) {
    const double unit = inches ? base::kInch : base::kMillimeter;
    text += fmt::format("{}{:.3g} to {:.3g} {}{}", text.empty() ? "" : ", ", zone.from / unit,
                        zone.to / unit, inches ? "in" : "mm", zone.on_side ? " on one side" : "");
  }
  return text;
}

/// Which strength holds where, for each piece that welds weaken.
void add_weld_zones(std::vector<Assumption>& out, const parts::Design& design,
                    const parts::Assembly& assembly) {
  const double unit = design.inches ? base::kKsi : base::kMegapascal;
  const char* unit_name = design.inches ? "ksi" : "MPa";
  bool any = false;
  for (const parts::Piece& piece : assembly.pieces) {
    if (piece.weld_zones.empty()) continue;
    const std::string what =
        piece.name.empty() ? piece.part : fmt::format("{}, {}", piece.part, piece.name);
    const double beside = piece.material.haz_yield / unit;
    const double away = piece.material.yield / unit;
    if (piece.welds.empty()) {
      out.push_back({what + " yield", fmt::format("{:.3g} {} throughout", beside, unit_name),
                     fmt::format("weld zone ({}), as where it is welded is not known; away from "
                                 "welds {:.3g} {}",
                                 piece.material.haz_basis, away, unit_name)});
      continue;
    }
    any = true;
    out.push_back(
        {what + " yield",
         fmt::format("{:.3g} {} beside its welds, {:.3g} {} elsewhere", beside, unit_name, away,
                     unit_name),
         fmt::format("weld zones {} along its {} ({})", zones_text(piece, design.inches),
                     length_text(piece.center_line, design.inches), piece.material.haz_basis)});
  }
  if (!any) return;
  out.push_back(
      {"weld zones",
       fmt::format("the larger of {} and twice the wall, or twice a solid's thickness, beyond "
                   "each weld",
                   design.inches ? "0.591 in" : "15 mm"),
       "common practice, no source. Welds: of an eye up to `bolt_to_weld` from its bolt, else as "
       "far as the part is wide, twice that at a ball joint or rod end (proposal); of parts that "
       "meet up to where their outsides cross; at a "
       "sharp corner, taken as cut and welded (a `bend_radius` makes it a bend). Tabs, gussets and "
       "other welds on a side count where `side_welds` names them"});
}

/// Which bolts are not checked; empty when all are given, or there are none.
std::string bolts_left_out(const parts::Design& design) {
  std::string names;
  bool any_given = false;
  const auto look = [&](bool there, bool given, const char* name) {
    any_given = any_given || (there && given);
    if (there && !given) names += (names.empty() ? "" : ", ") + std::string(name);
  };
  const bool brace_bolted = design.brace && (design.brace->meets_bracket.at_bolt() ||
                                             design.brace->far_end == parts::BraceEnd::bolted);
  look(design.lateral_link.has_value(), design.lateral_link && design.lateral_link->bolt.given(),
       "lateral link");
  const bool on_link_bolt = parts::on_one_bolt(design) && design.lateral_link->bolt.given() &&
                            design.brace->far_end != parts::BraceEnd::bolted;
  look(brace_bolted, on_link_bolt || (brace_bolted && design.brace->bolt.given()), "brace");
  look(design.arm.has_value(), design.arm && design.arm->bolt.given(), "arm");
  if (names.empty()) return {};
  return fmt::format("bolts{}{} and plates at their holes (give `bolt:`)", any_given ? " of " : "",
                     any_given ? names : "");
}

/// Which tabs and threads are not checked; empty when all are given, or there are none.
std::string tabs_left_out(const parts::Design& design) {
  const bool link = design.lateral_link && !design.lateral_link->axle_tabs.given();
  const bool brace = design.brace && design.brace->far_end == parts::BraceEnd::bolted &&
                     !design.brace->far_tabs.given();
  const bool arm =
      design.arm && (!design.arm->axle_tabs.given() || !design.arm->frame_tabs.given());
  if (!link && !brace && !arm) return {};
  return "tabs on axle and frame (give `axle_tabs:`, `frame_tabs:`, `far_tabs:`)";
}

/// Whether a part has welded ends whose weld is not given.
bool end_welds_left_out(const parts::Design& design) {
  const bool link = design.lateral_link && parts::has_welded_end(*design.lateral_link) &&
                    !design.lateral_link->end_weld.given();
  return link || (design.brace && !design.brace->end_weld.given()) ||
         (design.arm && !design.arm->end_weld.given());
}

/// A line for each reason why load cases are not run.
void add_cases_not_run(std::vector<std::string>& out, const parts::Design& design) {
  std::vector<std::pair<std::string, std::string>> by_reason;
  for (const parts::CaseNotRun& one : parts::cases_not_run(design)) {
    const auto same = std::find_if(by_reason.begin(), by_reason.end(),
                                   [&](const auto& known) { return known.first == one.reason; });
    if (same == by_reason.end()) {
      by_reason.emplace_back(one.reason, one.name);
    } else {
      same->second += "; " + one.name;
    }
  }
  for (const auto& [reason, names] : by_reason) {
    out.push_back(fmt::format("load cases not run, {}: {}", reason, names));
  }
}

/// What the loads take for granted, as far as the cases that run use it.
void add_loads(std::vector<Assumption>& out, const parts::Design& design) {
  const parts::VehicleEntry& v = *design.vehicle;
  const auto runs = [&, kinds = parts::kind_outcomes(design)](std::string_view kind) {
    return std::any_of(kinds.begin(), kinds.end(), [&](const parts::KindOutcome& k) {
      return k.kind == kind && k.asked && !k.run.empty();
    });
  };
  const bool stops = runs("hard_stop") || runs("hard_stop_in_reverse");
  if (runs("hard_stop") && std::isnan(v.brake_share)) {
    out.push_back({"vehicle.brake_share", "each axle brakes to its tires' limit",
                   "the hardest stop; proposal, no source"});
  }
  if (runs("wheel_wedged_low_range") && std::isnan(v.driveline_efficiency)) {
    out.push_back({"vehicle.driveline_efficiency",
                   fmt::format("{:g}", parts::vehicle_of(design).driveline_efficiency),
                   "common practice, no source"});
  }
  if (runs("steering_jammed")) {
    out.push_back({"steering jammed",
                   "the wheel farther from the drag link is wedged: the tie rod carries all that "
                   "the gear pushes",
                   "the worst for the tie rod; statics, no source"});
  }
  if (runs("bump_stop_slammed")) {
    out.push_back({"energy of a bump stop",
                   fmt::format("{:g} x force x crush", parts::vehicle_of(design).stop_fill),
                   "0.4 to 0.5 for foam or rubber; common practice, no source"});
  }
  const bool known = !std::isnan(v.unsprung_weight);
  if ((design.axle || known) && (stops || runs("hard_corner"))) {
    out.push_back({"inertia of axle and wheels",
                   known ? "counted in stops and corners, at the middle of the axle"
                         : "not counted: `unsprung_weight` is not given",
                   known ? "d'Alembert; none is counted where a blow's acceleration is not known"
                         : "a relief is left out: the links carry all of the tires' force"});
  }
}

}  // namespace

std::vector<Assumption> all_assumptions(const parts::Design& design,
                                        const parts::Assembly& assembly) {
  std::vector<Assumption> out;
  if (design.sizes == sections::Sizes::minimum) {
    out.push_back({"sizes", "minimum",
                   "what the mill may leave away is taken off bars and tubes, where a table of "
                   "tolerances is here"});
  }
  out.insert(out.end(), design.assumed.begin(), design.assumed.end());
  if (design.vehicle && std::isnan(design.vehicle->hub_height)) {
    out.push_back({"vehicle.hub_height",
                   length_text(parts::to_vehicle(*design.vehicle).tire_radius, design.inches),
                   "0.965 of half the printed tire size; common practice, no source"});
  }
  if (design.vehicle && std::isnan(design.vehicle->mass_center_height)) {
    out.push_back({"vehicle.mass_center_height", "unknown",
                   "the curb case takes the full 1.75 x axle weight"});
  }
  if (design.limit_strap && std::isnan(design.limit_strap->slack) &&
      !std::isnan(parts::slack_of(design))) {
    out.push_back({"limit_strap.slack", length_text(parts::slack_of(design), design.inches),
                   "1 in short of the free travel, because straps stretch; common practice, no "
                   "source"});
  }
  if (design.vehicle && (design.axle || design.lateral_link)) {
    out.push_back(
        {"own weight of links and arms", "with axle and wheels, not along their length",
         "small beside the wheel loads; `self_weight:` adds it at its true place, that of "
         "a bent link off its axis too"});
  }
  if (design.vehicle) add_loads(out, design);
  if (design.bracket) add_bracket(out, design);
  if (design.brace && std::isnan(design.brace->end_mount)) {
    out.push_back({"brace.end_mount",
                   design.inches ? "57100 lb/in (10 kN/mm) and rigid" : "10 kN/mm and rigid",
                   "proposal, no source"});
  }
  add_joints(out, design);
  add_sticks(out, design);
  if (design.axle) {
    out.push_back({"ride height", "coils carry the static load, bushings unwound",
                   "the state every load case starts from"});
  }
  add_weld_zones(out, design, assembly);
  if (std::any_of(assembly.pieces.begin(), assembly.pieces.end(),
                  [](const parts::Piece& piece) { return piece.column; })) {
    out.push_back({"columns", "effective length = length, K = 1.0",
                   "bushed, pinned and ball ends; what holds a welded end is in the frame"});
    out.push_back({"combined forces",
                   "asked: that H1 to H3 hold with compression times the factor of buckling, all "
                   "else times that "
                   "of yield",
                   "as one factor between the two; proposal, no source"});
  }
  add_factors(out, design);
  for (const std::string& words : assembly.assumed) out.push_back({"model", words, "this version"});
  return out;
}

namespace {

/// Cross members of a frame that are open, and no channels, warp by no formula known here: they
/// give, but are not checked.
std::string open_frame_left_out(const parts::Design& design) {
  if (!design.frame || !design.bracket) return {};
  const auto left_out = [](const parts::Stick& stick) {
    return !stick.material.id.empty() && sections::is_open(stick.shape) &&
           !std::holds_alternative<sections::Channel>(stick.shape);
  };
  if (!left_out(design.frame->cross_member) && !left_out(design.frame->arm_cross_member)) return {};
  return "stresses of the cross members (open, and no channels: how they warp is not known here; "
         "only their give is in the model)";
}

std::string_view steering_left_out(const parts::Design& design) {
  if (!design.steering) return "steering and parking loads";
  const bool arm = parts::has_pitman_arm(*design.steering);
  if (design.steering->gear_bolts.given()) {
    return arm ? "taper sockets, how the pitman arm sits on its shaft, steering gear and the wall "
                 "that it is bolted to, knuckles, kingpins"
               : "pitman arm, steering gear and the wall that it is bolted to, knuckles, kingpins";
  }
  return arm ? "taper sockets, how the pitman arm sits on its shaft, steering gear and its mount "
               "(give `gear_bolts:`), knuckles, kingpins"
             : "pitman arm, steering gear and its mount (give `gear_bolts:`), knuckles, kingpins";
}

}  // namespace

std::vector<std::string> left_out(const parts::Design& design) {
  std::vector<std::string> out;
  if (std::string bolts = bolts_left_out(design); !bolts.empty()) out.push_back(std::move(bolts));
  if (end_welds_left_out(design)) {
    out.emplace_back("welds at the ends of bars and tubes (give `end_weld:`)");
  }
  if (design.lateral_link || design.brace || design.arm) {
    out.emplace_back(
        "eyes, sleeves and bushings at the ends of bars, and whether a bolt fits them");
  }
  if (std::string tabs = tabs_left_out(design); !tabs.empty()) out.push_back(std::move(tabs));
  const bool on_balls = design.lateral_link && parts::has_ball_end(*design.lateral_link);
  if (on_balls && !design.lateral_link->thread.given()) {
    out.emplace_back("threads of the lateral link's rod ends (give `thread:`)");
  }
  if (design.steering) out.emplace_back("threads at the ends of the steering links");
  if (!design.bolt_groups.empty()) {
    out.emplace_back("block shear and the bar's net section at `bolt_groups`");
  }
  if (design.vehicle) {
    out.emplace_back(steering_left_out(design));
    const std::vector<parts::CaseNotRun> not_run = parts::cases_not_run(design);
    if (!not_run.empty()) {
      out.push_back(fmt::format("{} of {} built-in load cases (`linkmargin cases` says which)",
                                not_run.size(), loads::case_names().size()));
    }
  }
  if (std::string open = open_frame_left_out(design); !open.empty()) out.push_back(std::move(open));
  out.push_back("clearances, travel, steering geometry");
  out.push_back(
      design.frame     ? "the rails' own load, mounts and joints of the frame, and what holds the "
                         "parts to the axle"
      : design.bracket ? "the rail itself (here by its wall under the bracket, the weld "
                         "and the rail_stiffness alone), and what holds the parts to the axle"
                       : "the frame itself, and what holds the parts to the axle");
  if (design.vehicle) add_cases_not_run(out, design);
  return out;
}

}  // namespace studies
