#include "studies/criterion.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "checks/bolt_hole.hpp"
#include "checks/bolt_shear.hpp"
#include "checks/column.hpp"
#include "checks/joint_rating.hpp"
#include "checks/joint_tilt.hpp"
#include "checks/local_buckling.hpp"
#include "checks/rail_wall.hpp"
#include "checks/strap.hpp"
#include "checks/wall_slenderness.hpp"
#include "checks/warped_channel.hpp"
#include "checks/weld.hpp"
#include "checks/yield.hpp"
#include "parts/piece_forces.hpp"
#include "parts/side_force.hpp"
#include "parts/warped_twist.hpp"
#include "parts/weld_zone.hpp"
#include "studies/combined_criterion.hpp"
#include "studies/joint_criterion.hpp"
#include "studies/piece_places.hpp"
#include "studies/posture.hpp"
#include "studies/set_model.hpp"

namespace studies {
namespace {

checks::Wrench root_wrench(const parts::Assembly& assembly, const fea::Solution& solution) {
  const parts::RootWeld& root = *assembly.root;
  // The weld turns with the bracket.
  const fea::Vector6 load = parts::root_load(assembly, solution);
  const checks::Wrench wrench{.force = load.head<3>(), .moment = load.tail<3>(), .at = root.at_g};
  if (!root.side_force) return wrench;
  return parts::with_side_force(wrench, assembly.model[*assembly.bracket_bolt].at_g,
                                parts::side_force(*root.side_force, solution));
}

/// What a check of the root says besides.
void add_side_note(const parts::RootWeld& root, checks::Finding& finding) {
  if (root.side_force) finding.notes.push_back(parts::side_force_words(*root.side_force));
}

checks::WeldInput weld_input(const parts::Assembly& assembly, const fea::Solution& solution) {
  const parts::RootWeld& root = *assembly.root;
  return {.group = root.backed.group,
          .wrench = root_wrench(assembly, solution),
          .thinner_part = root.thinner,
          .edge = base::kUnset,
          .base_tensile = root.base_tensile,
          .base_basis = root.base_basis,
          .directional = root.directional,
          .en = assembly.en_welds,
          .backed = root.backed.words};
}

checks::RailWallInput rail_wall_input(const parts::Assembly& assembly,
                                      const fea::Solution& solution) {
  const parts::RootWeld& root = *assembly.root;
  return {.seat = root.seat.seat,
          .load = parts::seat_load(root.seat, root_wrench(assembly, solution)),
          .strength_basis = root.rail_basis};
}

/// Force through a joint, and of it along its bolt; that of a spring counts as across.
struct JointForce {
  double whole = 0.0;
  double along = 0.0;
};
JointForce joint_force(const parts::RatedJoint& joint, const fea::Solution& solution) {
  if (joint.spring) return {solution.spring_force(*joint.spring).head<3>().norm(), 0.0};
  const fea::Vector3 force_g = end_force_g(joint.beam, joint.end, solution);
  return {force_g.norm(), std::abs(force_g.dot(joint.bolt_g))};
}

checks::JointRatingInput joint_input(const parts::RatedJoint& joint, const fea::Solution& at) {
  const JointForce force = joint_force(joint, at);
  return {.force = force.whole,
          .along = force.along,
          .static_rating = joint.static_rating,
          .ultimate_rating = joint.ultimate_rating,
          .axial_rating = joint.axial_rating};
}

sections::Channel channel_of(const parts::Piece& piece) {
  return std::get<sections::Channel>(piece.beams.front().at_a);
}

/// What the stress of a piece that warps needs besides its forces; once for all of its places.
struct Warped {
  checks::WarpedChannel section;
  std::vector<std::vector<parts::WarpedEnds>> ways;
  bool slender;  ///< a wall may buckle first: its stress decides nothing
};

std::optional<Warped> warped(const parts::Piece& piece, const fea::Solution& solution) {
  if (!piece.warping) return std::nullopt;
  const sections::Channel channel = channel_of(piece);
  return Warped{checks::WarpedChannel(channel), parts::warped_ways(piece, solution),
                checks::has_slender_wall(channel, piece.material.elastic, piece.material.yield)};
}

/// Takes in what a piece that warps carries at that place, in the way that asks most there.
void add_warping(PieceStress& here, const Warped& warped) {
  double most = -1.0;
  for (const std::vector<parts::WarpedEnds>& way : warped.ways) {
    const parts::WarpedEnds& ends = way[here.beam];
    const double st_venant = std::lerp(ends.a.st_venant, ends.b.st_venant, here.part);
    const double bimoment = std::lerp(ends.a.bimoment, ends.b.bimoment, here.part);
    const double stress = warped.section.von_mises({here.resultants, st_venant, bimoment});
    if (!(stress > most)) continue;
    most = stress;
    here.st_venant = st_venant;
    here.bimoment = bimoment;
  }
  here.von_mises = warped.slender ? base::kUnset : most;
}

/// A station of one of its beams, without its stress.
/// @param at  from the beam's end a  [m]
PieceStress place_at(const parts::Piece& piece, const fea::Solution& solution, std::size_t index,
                     double at, double beam_length) {
  const parts::PieceBeam& beam = piece.beams[index];
  const double part = at / beam_length;
  sections::Resultants cut = parts::forces_at(beam, solution, at);
  cut.my *= beam.curved;
  cut.mz *= beam.curved;
  const double along = beam.starts_at + at;
  if (piece.side_force) {
    cut = parts::with_side_force(cut, *piece.side_force, along,
                                 parts::side_force(*piece.side_force, solution));
  }
  return {.von_mises = base::kUnset,
          .beam = index,
          .part = part,
          .along = along,
          .strength = piece.yield_at(along),
          .resultants = cut};
}

/// The stress at a place, its warping left out.  [Pa]
/// @param from  less than this need not be told
double stress_of(const parts::Piece& piece, const PieceStress& at, double from = 0.0) {
  return sections::largest_von_mises(shape_at(piece.beams[at.beam], at.part), at.resultants, from);
}

/// The worst of the shape there, or of the part of it that a weld on one side weakens.
sections::PointStress worst_of(const parts::Piece& piece, const PieceStress& at) {
  const sections::Shape shape = shape_at(piece.beams[at.beam], at.part);
  return at.on_side ? sections::worst_point_within(shape, at.resultants, *at.on_side)
                    : sections::worst_point(shape, at.resultants);
}

/// The same place, looked at where the zone of a weld on one side of it lies.
PieceStress on_side_of(const parts::Piece& piece, PieceStress at,
                       const sections::OutlinePart& side) {
  at.on_side = side;
  at.strength = piece.material.haz_yield;
  at.von_mises = worst_of(piece, at).von_mises;
  return at;
}

double stress_itself(double most, const PieceStress& /*here*/) {
  return most;
}

/// The station at which `value` of the stress is largest; the first where it is NaN.
/// @param up_to  the stress up to which no value is larger than one that is known, rounding aside
template <class Value, class UpTo>
PieceStress largest(const parts::Piece& piece, const fea::Solution& solution, const Value& value,
                    const UpTo& up_to) {
  constexpr double kSurely = 1.0 - 1.0e-12;
  PieceStress worst;
  double most = -std::numeric_limits<double>::infinity();
  const std::optional<Warped> warps = warped(piece, solution);
  const auto offer = [&](const PieceStress& here) {
    const double there = value(here);
    if (!(there <= most)) {
      most = there;
      worst = here;
    }
  };
  std::vector<double> stations;
  for (std::size_t i = 0; i < piece.beams.size(); ++i) {
    stations_of(piece, piece.beams[i], solution, stations);
    for (const double at : stations) {
      PieceStress here = place_at(piece, solution, i, at, stations.back());
      if (warps) {
        add_warping(here, *warps);
      } else {
        here.von_mises = stress_of(piece, here, std::max(0.0, kSurely * up_to(most, here)));
      }
      offer(here);
      for (const parts::WeldZone& zone : piece.weld_zones) {
        if (zone.on_side && zone.reaches(here.along)) {
          offer(on_side_of(piece, here, *zone.on_side));
        }
      }
      if (std::isnan(most)) return worst;
    }
  }
  return worst;
}

/// The plates take what the bolt brings, or what all that meets there leaves, whichever is more.
checks::BoltHoleInput bolt_hole_input(const parts::Assembly& assembly,
                                      const fea::Solution& solution) {
  const parts::BoltedPlates& plates = *assembly.bolted_plates;
  const parts::BoltedJoint& bolt = assembly.bolts[plates.bolt];
  const fea::Vector3 on_plates_g = end_force_g(plates.plates, 0, solution);
  const double of_bolt = bolt_force(bolt, solution).across;
  return {.force = std::max(of_bolt, std::hypot(on_plates_g.y(), on_plates_g.z())),
          .bolt = bolt.bolt.thread.diameter,
          .hole = bolt.bolt.thread.standard_hole(),
          .edge = plates.edge,
          .thickness = plates.thickness,
          .plates = bolt.bolt.double_shear ? plates.count : 1,
          .tensile = plates.material.tensile,
          .strength_basis = parts::parent_words(plates.material)};
}

/// The eyes of the bracket's plates; edges as of the bolt hole.
checks::TabInput bracket_eye_input(const parts::Assembly& assembly, const fea::Solution& solution) {
  const checks::BoltHoleInput hole = bolt_hole_input(assembly, solution);
  return {.plate = {.thickness = hole.thickness,
                    .bolt = hole.bolt,
                    .hole = hole.hole,
                    .ahead = hole.edge,
                    .beside = hole.edge,
                    .yield = assembly.bolted_plates->material.yield,
                    .tensile = hole.tensile},
          .plates = hole.plates,
          .force = hole.force,
          .strength_basis = hole.strength_basis};
}

/// The finding of a check of tabs, seats or threads; nothing for any other kind.
std::optional<checks::Finding> end_finding(const Criterion& criterion,
                                           const parts::Assembly& assembly,
                                           const fea::Solution& solution, const Decided& by,
                                           double multiple = 1.0) {
  const auto placed = [&](auto input) {
    input.required = by.required;
    input.safety_factor = by.safety_factor;
    return input;
  };
  const auto tab_found = [&](TabCheck check) {
    const parts::TabbedJoint& tabs = assembly.tabs[criterion.index];
    const parts::BoltedJoint& bolt = assembly.bolts[tabs.bolt];
    return tab_finding(check, tabs, bolt.bolt, bolt_force(bolt, solution), by);
  };
  const auto by_code = [&](checks::WeldInput input) {
    input.en = assembly.en_welds;
    return checks::weld(placed(std::move(input)));
  };
  const auto around = [&](const parts::RingWeld& weld, double force, const char* check) {
    checks::Finding found = by_code(ring_weld_input(weld, force));
    found.check = check;
    found.notes.emplace_back(
        "the force lies off the middle by a tenth of the diameter: proposal, no source");
    return found;
  };
  switch (criterion.kind) {
    case Criterion::Kind::bracket_eye:
      return checks::tab(placed(bracket_eye_input(assembly, solution)));
    case Criterion::Kind::tab:
      return tab_found(TabCheck::hole);
    case Criterion::Kind::tab_root:
      return tab_found(TabCheck::root);
    case Criterion::Kind::tab_wall:
      return tab_found(TabCheck::wall);
    case Criterion::Kind::tab_weld:
      return tab_found(TabCheck::weld);
    case Criterion::Kind::end_weld: {
      checks::Finding weld = by_code(end_weld_input(assembly.end_welds[criterion.index], solution));
      weld.check = "end weld";
      weld.notes.emplace_back(
          assembly.end_welds[criterion.index].weld.groove > 0.0
              ? "a groove all round, square to the tube, its throat in the wall and no deeper; "
                "what "
                "it is welded to is taken as stiff"
          : assembly.end_welds[criterion.index].weld.around > 0.0
              ? "a fishmouth: throat leg cos(psi / 2) of the angle between the surfaces, nothing "
                "past 135 degrees (AWS D1.1, from memory); turned about the bar as it is loaded "
                "most"
              : "taken as a ring around the tube, square to it; a saddle or slant is longer; what "
                "it is welded to is taken as stiff");
      return weld;
    }
    case Criterion::Kind::rosettes:
      return checks::rosettes(placed(rosette_input(assembly.end_welds[criterion.index], solution)));
    case Criterion::Kind::net_section:
      return checks::tube_net_section(
          placed(net_section_input(assembly.end_welds[criterion.index], solution)));
    case Criterion::Kind::bolt_group:
      return checks::bolt_group(
          placed(group_input(assembly.bolt_groups[criterion.index], solution)));
    case Criterion::Kind::group_hole:
      return checks::bolt_hole(
          placed(group_hole_input(assembly.bolt_groups[criterion.index], solution)));
    case Criterion::Kind::group_slip:
      return checks::bolt_group_slip(
          placed(group_input(assembly.bolt_groups[criterion.index], solution)));
    case Criterion::Kind::slip:
      return checks::bolt_slip(placed(slip_input(assembly.bolts[criterion.index], solution)));
    case Criterion::Kind::seat_load:
      return checks::rated_load(
          placed(coil_load_input(assembly.coil_seats[criterion.index], solution, multiple)));
    case Criterion::Kind::stop_load:
      return checks::rated_load(placed(stop_load_input(assembly.stops[criterion.index], solution)));
    case Criterion::Kind::seat_weld: {
      const parts::CoilSeat& seat = assembly.coil_seats[criterion.index];
      return around(seat.weld, coil_force(seat, solution, multiple), "seat weld");
    }
    case Criterion::Kind::pad_weld: {
      const parts::TravelStop& stop = assembly.stops[criterion.index];
      return around(stop.pad, std::max(0.0, force_of(stop, solution)), "pad weld");
    }
    case Criterion::Kind::shank:
      return checks::threaded_shank(
          placed(shank_input(assembly.threads[criterion.index], solution)));
    case Criterion::Kind::thread:
      return checks::thread_engagement(
          placed(engagement_input(assembly.threads[criterion.index], solution)));
    default:
      return std::nullopt;
  }
}

/// Where a check of tabs or threads is.
std::string end_place(const Criterion& criterion, const parts::Assembly& assembly) {
  using Kind = Criterion::Kind;
  if (criterion.kind == Kind::bracket_eye) return "plates at the bolt hole";
  if (criterion.kind == Kind::end_weld || criterion.kind == Kind::rosettes ||
      criterion.kind == Kind::net_section) {
    return assembly.end_welds[criterion.index].where;
  }
  if (criterion.kind == Kind::bolt_group || criterion.kind == Kind::group_hole ||
      criterion.kind == Kind::group_slip) {
    return assembly.bolt_groups[criterion.index].where;
  }
  if (criterion.kind == Kind::slip) return assembly.bolts[criterion.index].where;
  if (criterion.kind == Kind::seat_load || criterion.kind == Kind::seat_weld) {
    return assembly.coil_seats[criterion.index].name;
  }
  if (criterion.kind == Kind::stop_load || criterion.kind == Kind::pad_weld) {
    return assembly.stops[criterion.index].name;
  }
  const bool threaded = criterion.kind == Kind::shank || criterion.kind == Kind::thread;
  return threaded ? assembly.threads[criterion.index].where : assembly.tabs[criterion.index].where;
}

/// Demand over capacity of such a check; unset when it cannot be decided.
std::optional<double> end_ratio(const Criterion& criterion, const parts::Assembly& assembly,
                                const fea::Solution& solution, double multiple) {
  const std::optional<checks::Finding> found =
      end_finding(criterion, assembly, solution, {1.0, base::kUnset}, multiple);
  if (!found) return std::nullopt;
  if (found->state == checks::State::undecided) return base::kUnset;
  return found->demand / found->capacity;
}

bool is_thin_walled(const parts::Piece& piece) {
  const auto slender = [&](const sections::Shape& shape) {
    return checks::has_slender_wall(shape, piece.material.elastic, piece.material.yield);
  };
  return std::any_of(piece.beams.begin(), piece.beams.end(), [&](const parts::PieceBeam& beam) {
    return slender(beam.at_a) || slender(beam.at_b);
  });
}

checks::LocalBucklingInput thin_wall_input(const parts::Piece& piece, const PieceStress& at) {
  const bool in_zone = at.strength < piece.material.yield;
  return {.shape = shape_at(piece.beams[at.beam], at.part),
          .elastic = piece.material.elastic,
          .yield = at.strength,
          .strength_basis = in_zone ? parts::weld_zone_words(piece.material)
                                    : parts::parent_words(piece.material),
          .length = piece.length,
          .resultants = at.resultants};
}

/// Where a thin wall of the piece comes nearest to its limit.
PieceStress thinnest_place(const parts::Piece& piece, const fea::Solution& solution) {
  return largest(
      piece, solution,
      [&](const PieceStress& here) {
        return checks::local_buckling(thin_wall_input(piece, here)).demand;
      },
      [](double /*most*/, const PieceStress& /*here*/) { return 0.0; });
}

checks::Finding thin_wall_finding(const parts::Piece& piece, const Outcome& outcome) {
  const PieceStress at = thinnest_place(piece, *outcome.at_load);
  checks::LocalBucklingInput input = thin_wall_input(piece, at);
  input.safety_factor = outcome.safety_factor;
  input.required = outcome.asked.value;
  checks::Finding finding = checks::local_buckling(input);
  finding.part = piece.part;
  finding.where = place_words(piece, at.beam, at.part);
  return finding;
}

/// The strength that does not decide at `at`, and the largest stress where it holds.
std::optional<checks::OtherStrength> other_strength(const parts::Piece& piece,
                                                    const fea::Solution& solution,
                                                    const PieceStress& at) {
  if (piece.weld_zones.empty()) return std::nullopt;
  checks::OtherStrength other;
  other.zone_decides = at.strength < piece.material.yield;
  other.strength = other.zone_decides ? piece.material.yield : piece.material.haz_yield;
  other.basis = other.zone_decides ? parts::parent_words(piece.material)
                                   : parts::weld_zone_words(piece.material);
  for (const parts::WeldZone& zone : piece.weld_zones) {
    other.weld_zones.push_back({zone.from, zone.to});
  }
  bool anywhere = false;
  const PieceStress there = largest(
      piece, solution,
      [&](const PieceStress& here) {
        const bool holds = other.zone_decides ? piece.parent_holds_beside(here.along)
                                              : here.strength < piece.material.yield;
        anywhere = anywhere || holds;
        return holds ? here.von_mises : -1.0;
      },
      stress_itself);
  if (anywhere) other.von_mises = there.von_mises;
  return other;
}

/// Where the piece gives first: the place that governs at the load itself, or the one that governs
/// at the limit, where the two have different strengths.
PieceStress deciding_stress(const parts::Piece& piece, const Outcome& outcome) {
  const PieceStress at_load = governing_stress(piece, *outcome.at_load);
  if (outcome.at_limit == nullptr) return at_load;
  const PieceStress at_limit = governing_stress(piece, *outcome.at_limit);
  if (at_limit.strength == at_load.strength) return at_load;
  const parts::PieceBeam& beam = piece.beams[at_limit.beam];
  const double beam_length = outcome.at_load->length(beam.beam);
  PieceStress there =
      place_at(piece, *outcome.at_load, at_limit.beam, at_limit.part * beam_length, beam_length);
  there.von_mises = stress_of(piece, there);
  return at_limit.on_side ? on_side_of(piece, there, *at_limit.on_side) : there;
}

std::string ends_words(const parts::Warping& warping) {
  if (warping.any_ends) return "its ends' warping held or free, whichever asks most at a place";
  return warping.held ? "warping held where its twist is held; free is another set"
                      : "warping free where its twist is held; held is another set";
}

checks::Finding warped_finding(const parts::Piece& piece, const Outcome& outcome) {
  const PieceStress at = governing_stress(piece, *outcome.at_load);
  const bool in_zone = at.strength < piece.material.yield;
  checks::Finding finding =
      checks::warped_channel({.shape = channel_of(piece),
                              .cut = {at.resultants, at.st_venant, at.bimoment},
                              .elastic = piece.material.elastic,
                              .strength = at.strength,
                              .strength_basis = in_zone ? parts::weld_zone_words(piece.material)
                                                        : parts::parent_words(piece.material),
                              .ends = ends_words(*piece.warping),
                              .safety_factor = outcome.safety_factor,
                              .required = outcome.asked.value});
  finding.part = piece.part;
  finding.where = place_words(piece, at.beam, at.part);
  finding.notes.insert(finding.notes.end(), piece.notes.begin(), piece.notes.end());
  finding.notes.emplace_back(
      "the torque divides between lengths as the frame's twist says, in each length as Vlasov's "
      "bar does; the largest stress of each kind at one place, shear by its mean in a wall");
  return finding;
}

checks::Finding yield_finding(const parts::Piece& piece, const Outcome& outcome) {
  if (piece.warping) return warped_finding(piece, outcome);
  const PieceStress at = deciding_stress(piece, outcome);
  const sections::Shape shape = shape_at(piece.beams[at.beam], at.part);
  const bool in_zone = at.strength < piece.material.yield;
  checks::YieldInput input{.shape = shape,
                           .resultants = at.resultants,
                           .worst = worst_of(piece, at),
                           .strength = at.strength,
                           .strength_basis = in_zone ? parts::weld_zone_words(piece.material)
                                                     : parts::parent_words(piece.material),
                           .safety_factor = outcome.safety_factor,
                           .required = outcome.asked.value,
                           .at_limit = {},
                           .other = other_strength(piece, *outcome.at_load, at),
                           .on_side = at.on_side,
                           .at_bend = piece.beams[at.beam].curved};
  if (outcome.at_limit != nullptr) {
    input.at_limit = governing_stress(piece, *outcome.at_limit).resultants;
  }
  checks::Finding finding = checks::yield(input);
  finding.part = piece.part;
  finding.where = place_words(piece, at.beam, at.part);
  finding.notes.insert(finding.notes.end(), piece.notes.begin(), piece.notes.end());
  if (piece.part == "bracket" || piece.part == "brace") finding.notes.emplace_back(kAskedAsLink);
  if (at.on_side) {
    finding.notes.push_back(fmt::format(
        "the weld is on one side of it: its zone takes {:.0f} degrees of the outside, the arc of "
        "what stands there and 15 mm or 2 t to both sides (common practice, no source); the "
        "parent's strength holds around the rest",
        2.0 * at.on_side->half / base::kDegree));
  }
  const std::string walls = checks::wall_words(shape, piece.material.elastic, piece.material.yield);
  if (!walls.empty()) finding.notes.push_back(walls);
  if (piece.bent) {
    finding.notes.emplace_back(
        "not straight: its stress is that of second order along its true shape, a lateral link's "
        "with a bow of 1/1000 of its length beside its bend");
  }
  if (!piece.weld_zones.empty() && piece.welds.empty()) {
    finding.notes.emplace_back("where it is welded is not known: the weld zone is all of it");
  }
  return finding;
}

}  // namespace

namespace {

/// The bolt or the tabs of a strap that is slack: they carry nothing.
bool is_of_slack_strap(const Criterion& criterion, const parts::Assembly& assembly,
                       const fea::Solution& solution) {
  using Kind = Criterion::Kind;
  const bool of_bolt = criterion.kind == Kind::bolt || criterion.kind == Kind::slip;
  const bool of_tabs = criterion.kind == Kind::tab || criterion.kind == Kind::tab_root ||
                       criterion.kind == Kind::tab_wall || criterion.kind == Kind::tab_weld;
  if (!of_bolt && !of_tabs) return false;
  const std::size_t bolt = of_bolt ? criterion.index : assembly.tabs[criterion.index].bolt;
  const std::optional<parts::TravelStop>& strap = assembly.bolts[bolt].strap;
  return strap && !(force_of(*strap, solution) > 0.0);
}

/// Nothing while the strap is slack.
std::optional<checks::Finding> strap_finding(const Criterion& criterion,
                                             const parts::Assembly& assembly,
                                             const Outcome& outcome) {
  const parts::TravelStop& stop = assembly.stops[criterion.index];
  const double force = force_of(stop, *outcome.at_load);
  if (!(force > 0.0)) return std::nullopt;
  checks::Finding found = checks::tight_strap({.force = force,
                                               .rate = stop.rate,
                                               .slack = stop.travel,
                                               .breaking_load = assembly.strap_breaking_load,
                                               .required = outcome.asked.value,
                                               .safety_factor = outcome.safety_factor});
  found.part = "limit_strap";
  found.where = stop.name + ", as it holds the axle";
  return found;
}

checks::RailFactors rail_factors(const checks::RequiredFactors& factors, bool abuse) {
  using checks::Item;
  return {.yielding = checks::required(factors, Item::rail_wall, abuse),
          .punching = checks::required(factors, Item::rail_punching, abuse),
          .crippling = checks::required(factors, Item::rail_crippling, abuse)};
}

/// What a rail's wall is asked for, by the ways in which it gives.
/// @param at_load  null when the frame cannot carry the load: the largest
AskedFactor rail_asked(const parts::Assembly& assembly, const checks::RailFactors& factors,
                       const fea::Solution* at_load) {
  const double largest = std::max({factors.yielding, factors.punching, factors.crippling});
  AskedFactor asked{largest, factors.yielding, factors.yielding, factors, {}};
  if (at_load != nullptr) {
    checks::RailWallInput input = rail_wall_input(assembly, *at_load);
    input.asked = factors;
    asked.value = checks::rail_wall(input).required;
  }
  return asked;
}

/// The factor asked for by a check that asks the same of all its parts.
double one_factor(const Criterion& criterion, const parts::Assembly& assembly,
                  const checks::RequiredFactors& factors, bool abuse) {
  using checks::Item;
  switch (criterion.kind) {
    case Criterion::Kind::yield:
    case Criterion::Kind::thin_wall:
      return checks::required(factors, Item::yield, abuse, assembly.pieces[criterion.index].duty);
    case Criterion::Kind::column:
    case Criterion::Kind::combined:
      return checks::required(factors, Item::buckling, abuse,
                              assembly.pieces[criterion.index].duty);
    case Criterion::Kind::weld:
      return checks::required(factors, Item::weld, abuse);
    case Criterion::Kind::rail_wall:
    case Criterion::Kind::bolt:
    case Criterion::Kind::bolt_hole:
    case Criterion::Kind::bolt_group:
    case Criterion::Kind::group_hole:
      return checks::required(factors, Item::bolt, abuse);
    case Criterion::Kind::thread:
      return checks::required(factors, Item::bolt, abuse);
    case Criterion::Kind::bracket_eye:
    case Criterion::Kind::tab:
    case Criterion::Kind::net_section:
    case Criterion::Kind::tab_wall:
      return checks::required(factors, Item::tab, abuse);
    case Criterion::Kind::tab_root:
      return checks::required(factors, Item::yield, abuse, assembly.tabs[criterion.index].duty);
    case Criterion::Kind::tab_weld:
    case Criterion::Kind::end_weld:
    case Criterion::Kind::rosettes:
    case Criterion::Kind::seat_weld:
    case Criterion::Kind::pad_weld:
      return checks::required(factors, Item::weld, abuse);
    case Criterion::Kind::slip:
    case Criterion::Kind::group_slip:
      return checks::required(factors, Item::slip, abuse);
    case Criterion::Kind::shank:
      return checks::required(factors, Item::yield, abuse, checks::Duty::lateral_link);
    case Criterion::Kind::strap:
      return checks::required(factors, Item::strap, abuse);
    case Criterion::Kind::tilt:
    case Criterion::Kind::seat_load:
    case Criterion::Kind::stop_load:
      return 1.0;
    case Criterion::Kind::joint:
      break;
  }
  const parts::RatedJoint& joint = assembly.rated_joints[criterion.index];
  return checks::required(factors, joint.reversing ? Item::reversing_joint : Item::joint, abuse);
}

}  // namespace

std::vector<Criterion> criteria(const parts::Assembly& assembly) {
  std::vector<Criterion> all;
  for (std::size_t i = 0; i < assembly.pieces.size(); ++i) {
    all.push_back({Criterion::Kind::yield, i});
    if (assembly.pieces[i].column) all.push_back({Criterion::Kind::column, i});
    if (assembly.pieces[i].column) all.push_back({Criterion::Kind::combined, i});
    const bool by_walls = !assembly.pieces[i].warping && is_thin_walled(assembly.pieces[i]);
    if (by_walls) all.push_back({Criterion::Kind::thin_wall, i});
  }
  if (assembly.root) {
    all.push_back({Criterion::Kind::weld, 0});
    all.push_back({Criterion::Kind::rail_wall, 0});
  }
  for (std::size_t i = 0; i < assembly.rated_joints.size(); ++i) {
    all.push_back({Criterion::Kind::joint, i});
  }
  for (std::size_t i = 0; i < assembly.bolts.size(); ++i) {
    all.push_back({Criterion::Kind::bolt, i});
    if (assembly.bolts[i].bolt.must_not_slip) all.push_back({Criterion::Kind::slip, i});
  }
  if (assembly.bolted_plates) {
    all.push_back({Criterion::Kind::bolt_hole, 0});
    all.push_back({Criterion::Kind::bracket_eye, 0});
  }
  for (std::size_t i = 0; i < assembly.bolt_groups.size(); ++i) {
    all.push_back({Criterion::Kind::bolt_group, i});
    const bool bears = !assembly.bolt_groups[i].plates.material.id.empty();
    if (bears) all.push_back({Criterion::Kind::group_hole, i});
    if (assembly.bolt_groups[i].bolt.must_not_slip) {
      all.push_back({Criterion::Kind::group_slip, i});
    }
  }
  for (std::size_t i = 0; i < assembly.tabs.size(); ++i) {
    all.push_back({Criterion::Kind::tab, i});
    all.push_back({Criterion::Kind::tab_root, i});
    if (assembly.tabs[i].tabs.on_tube()) all.push_back({Criterion::Kind::tab_wall, i});
    if (assembly.tabs[i].tabs.weld.given()) all.push_back({Criterion::Kind::tab_weld, i});
  }
  for (std::size_t i = 0; i < assembly.end_welds.size(); ++i) {
    const parts::EndWeldSpec& weld = assembly.end_welds[i].weld;
    if (weld.all_round()) all.push_back({Criterion::Kind::end_weld, i});
    if (weld.rosettes > 0) all.push_back({Criterion::Kind::rosettes, i});
    if (weld.rosettes > 0) all.push_back({Criterion::Kind::net_section, i});
  }
  for (std::size_t i = 0; i < assembly.threads.size(); ++i) {
    all.push_back({Criterion::Kind::shank, i});
    all.push_back({Criterion::Kind::thread, i});
  }
  for (std::size_t i = 0; i < assembly.coil_seats.size(); ++i) {
    const parts::CoilSeat& seat = assembly.coil_seats[i];
    if (seat.rating > 0.0) all.push_back({Criterion::Kind::seat_load, i});
    if (seat.weld.given()) all.push_back({Criterion::Kind::seat_weld, i});
  }
  for (std::size_t i = 0; i < assembly.stops.size(); ++i) {
    const parts::TravelStop& stop = assembly.stops[i];
    if (stop.known() && stop.rating > 0.0) all.push_back({Criterion::Kind::stop_load, i});
    if (stop.known() && stop.pad.given()) all.push_back({Criterion::Kind::pad_weld, i});
    if (stop.kind == parts::TravelStop::Kind::limit_strap && stop.known()) {
      all.push_back({Criterion::Kind::strap, i});
    }
  }
  for (std::size_t i = 0; i < assembly.joints.size(); ++i) {
    if (!std::isnan(assembly.joints[i].most_tilt)) all.push_back({Criterion::Kind::tilt, i});
  }
  return all;
}

bool rests_on_piece(const Criterion& criterion, const parts::Assembly& assembly) {
  using Kind = Criterion::Kind;
  if (criterion.kind != Kind::yield && criterion.kind != Kind::column &&
      criterion.kind != Kind::combined) {
    return false;
  }
  const parts::Piece& piece = assembly.pieces[criterion.index];
  return !piece.side_force && !piece.warping && !piece.beams.front().axial;
}

const std::string& part_judged(const Criterion& criterion, const parts::Assembly& assembly) {
  switch (criterion.kind) {
    case Criterion::Kind::weld:
    case Criterion::Kind::rail_wall:
      return assembly.root->part;
    case Criterion::Kind::joint:
      return assembly.rated_joints[criterion.index].part;
    case Criterion::Kind::bolt:
    case Criterion::Kind::slip:
      return assembly.bolts[criterion.index].part;
    case Criterion::Kind::bolt_group:
    case Criterion::Kind::group_hole:
    case Criterion::Kind::group_slip:
      return assembly.bolt_groups[criterion.index].part;
    case Criterion::Kind::bolt_hole:
    case Criterion::Kind::bracket_eye:
      return assembly.bolted_plates->part;
    case Criterion::Kind::tab:
    case Criterion::Kind::tab_root:
    case Criterion::Kind::tab_wall:
    case Criterion::Kind::tab_weld:
      return assembly.tabs[criterion.index].part;
    case Criterion::Kind::end_weld:
    case Criterion::Kind::rosettes:
    case Criterion::Kind::net_section:
      return assembly.end_welds[criterion.index].part;
    case Criterion::Kind::seat_load:
    case Criterion::Kind::seat_weld:
    case Criterion::Kind::stop_load:
    case Criterion::Kind::pad_weld: {
      static const std::string kAxle = "axle";
      return kAxle;
    }
    case Criterion::Kind::shank:
    case Criterion::Kind::thread:
      return assembly.threads[criterion.index].part;
    case Criterion::Kind::tilt:
      return assembly.joints[criterion.index].part;
    case Criterion::Kind::strap: {
      static const std::string kStrap = "limit_strap";
      return kStrap;
    }
    case Criterion::Kind::yield:
    case Criterion::Kind::column:
    case Criterion::Kind::combined:
    case Criterion::Kind::thin_wall:
      break;
  }
  return assembly.pieces[criterion.index].part;
}

std::string check_name(Criterion::Kind kind) {
  switch (kind) {
    case Criterion::Kind::yield:
      return "yield";
    case Criterion::Kind::column:
      return "column";
    case Criterion::Kind::combined:
      return "combined forces";
    case Criterion::Kind::thin_wall:
      return "thin wall";
    case Criterion::Kind::weld:
      return "weld";
    case Criterion::Kind::rail_wall:
      return "rail wall";
    case Criterion::Kind::bolt:
      return "bolt";
    case Criterion::Kind::bolt_hole:
    case Criterion::Kind::group_hole:
      return "bolt hole";
    case Criterion::Kind::bolt_group:
      return "bolt group";
    case Criterion::Kind::bracket_eye:
    case Criterion::Kind::tab:
      return "tab";
    case Criterion::Kind::tab_root:
      return "tab root";
    case Criterion::Kind::tab_wall:
      return "tab wall";
    case Criterion::Kind::tab_weld:
      return "tab weld";
    case Criterion::Kind::end_weld:
      return "end weld";
    case Criterion::Kind::rosettes:
      return "rosettes";
    case Criterion::Kind::net_section:
      return "net section";
    case Criterion::Kind::seat_load:
    case Criterion::Kind::stop_load:
      return "rated load";
    case Criterion::Kind::seat_weld:
      return "seat weld";
    case Criterion::Kind::pad_weld:
      return "pad weld";
    case Criterion::Kind::slip:
    case Criterion::Kind::group_slip:
      return "slip";
    case Criterion::Kind::shank:
      return "threaded shank";
    case Criterion::Kind::thread:
      return "thread engagement";
    case Criterion::Kind::strap:
      return "strap";
    case Criterion::Kind::tilt:
      return "joint tilt";
    case Criterion::Kind::joint:
      break;
  }
  return "joint rating";
}

PieceStress worst_stress(const parts::Piece& piece, const fea::Solution& solution) {
  return largest(
      piece, solution, [](const PieceStress& here) { return here.von_mises; }, stress_itself);
}

PieceStress governing_stress(const parts::Piece& piece, const fea::Solution& solution) {
  return largest(
      piece, solution, [](const PieceStress& here) { return here.utilized(); },
      [](double most, const PieceStress& here) { return most * here.strength; });
}

double demand_over_capacity(const Criterion& criterion, const parts::Assembly& assembly,
                            const fea::Solution& solution, double multiple) {
  if (const std::optional<double> of_end = end_ratio(criterion, assembly, solution, multiple)) {
    return *of_end;
  }
  switch (criterion.kind) {
    case Criterion::Kind::yield: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      return governing_stress(piece, solution).utilized();
    }
    case Criterion::Kind::column: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      const double pressing = compression(piece, solution);
      return pressing > 0.0 ? pressing / checks::column_capacity(column_input(piece, pressing))
                            : 0.0;
    }
    case Criterion::Kind::combined:
      return combined_used(assembly.pieces[criterion.index], solution);
    case Criterion::Kind::thin_wall: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      return checks::local_buckling(thin_wall_input(piece, thinnest_place(piece, solution))).demand;
    }
    case Criterion::Kind::weld: {
      if (!assembly.root->backed.why_not.empty()) return base::kUnset;
      return checks::weld_use(weld_input(assembly, solution));
    }
    case Criterion::Kind::rail_wall:
      return checks::rail_wall(rail_wall_input(assembly, solution)).demand;
    case Criterion::Kind::bolt:
      return checks::bolt_use(bolt_input(assembly.bolts, criterion.index, solution));
    case Criterion::Kind::bolt_hole: {
      const checks::Finding hole = checks::bolt_hole(bolt_hole_input(assembly, solution));
      return hole.demand / hole.capacity;
    }
    default:
    case Criterion::Kind::strap: {
      const double force = force_of(assembly.stops[criterion.index], solution);
      return force > 0.0 ? force / (checks::kOfBreakingLoad * assembly.strap_breaking_load) : 0.0;
    }
    case Criterion::Kind::tilt: {
      const JointAngles angles = angles_of(assembly.joints[criterion.index], assembly, solution);
      return angles.tilt / angles.most_tilt;
    }
    case Criterion::Kind::joint:
      break;
  }
  const checks::Finding joint =
      checks::joint_rating(joint_input(assembly.rated_joints[criterion.index], solution));
  return joint.demand / joint.capacity;
}

AskedFactor asked_factor(const Criterion& criterion, const parts::Assembly& assembly,
                         const checks::RequiredFactors& factors, bool abuse,
                         const fea::Solution* solution) {
  if (criterion.kind == Criterion::Kind::rail_wall) {
    return rail_asked(assembly, rail_factors(factors, abuse), solution);
  }
  if (criterion.kind != Criterion::Kind::combined) {
    const double one = one_factor(criterion, assembly, factors, abuse);
    return {one, one, one, {}, {}};
  }
  return combined_use(assembly.pieces[criterion.index], solution, factors, abuse).asked;
}

std::optional<checks::Finding> finding(const Criterion& criterion, const parts::Assembly& assembly,
                                       const Outcome& outcome) {
  if (is_of_slack_strap(criterion, assembly, *outcome.at_load)) return std::nullopt;
  std::optional<checks::Finding> of_end = end_finding(criterion, assembly, *outcome.at_load,
                                                      {outcome.asked.value, outcome.safety_factor});
  if (of_end) {
    of_end->part = part_judged(criterion, assembly);
    of_end->where = end_place(criterion, assembly);
    return of_end;
  }
  switch (criterion.kind) {
    case Criterion::Kind::yield:
      return yield_finding(assembly.pieces[criterion.index], outcome);
    case Criterion::Kind::column: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      checks::ColumnInput input = column_input(piece, compression(piece, *outcome.at_load));
      add_bases(input, piece);
      input.required = outcome.asked.value;
      input.safety_factor = outcome.safety_factor;
      std::optional<checks::Finding> column = checks::column(input);
      if (column) {
        column->part = piece.part;
        if (!piece.name.empty()) {
          column->where = piece.name + (column->where.empty() ? "" : ", " + column->where);
        } else if (column->where.empty()) {
          column->where = "between its joints";
        }
        if (piece.bent) {
          column->notes.emplace_back(
              "bent: as if it were straight from end to end, for it holds no more than that; what "
              "its bend adds is in combined forces and in yield (AISC Design Guide 33, from "
              "memory, takes curved bars so)");
        }
      }
      return column;
    }
    case Criterion::Kind::combined:
      return combined_finding(assembly.pieces[criterion.index], outcome);
    case Criterion::Kind::thin_wall:
      return thin_wall_finding(assembly.pieces[criterion.index], outcome);
    case Criterion::Kind::weld: {
      checks::WeldInput input = weld_input(assembly, *outcome.at_load);
      input.required = outcome.asked.value;
      input.safety_factor = outcome.safety_factor;
      checks::Finding weld = checks::weld(input);
      weld.part = assembly.root->part;
      weld.where = "root weld at the rail";
      add_side_note(*assembly.root, weld);
      weld.notes.insert(weld.notes.end(), assembly.root->warnings.begin(),
                        assembly.root->warnings.end());
      if (!assembly.root->backed.why_not.empty()) {
        checks::leave_undecided(
            weld, "the rail's wall under it is not decided: " + assembly.root->backed.why_not);
      }
      return weld;
    }
    case Criterion::Kind::rail_wall: {
      checks::RailWallInput input = rail_wall_input(assembly, *outcome.at_load);
      input.asked = outcome.asked.of_rail;
      input.safety_factor = outcome.safety_factor;
      checks::Finding wall = checks::rail_wall(input);
      wall.part = assembly.root->part;
      add_side_note(*assembly.root, wall);
      return wall;
    }
    case Criterion::Kind::bolt: {
      const parts::BoltedJoint& joint = assembly.bolts[criterion.index];
      checks::BoltInput input = bolt_input(assembly.bolts, criterion.index, *outcome.at_load);
      input.required = outcome.asked.value;
      input.safety_factor = outcome.safety_factor;
      input.if_slipped = outcome.if_slipped;
      input.slipped_in = outcome.slipped_in;
      checks::Finding bolt = checks::bolt_shear(input);
      bolt.part = joint.part;
      bolt.where = joint.where;
      std::vector<checks::WorkedLine> shared =
          bolt_share_lines(assembly.bolts, criterion.index, *outcome.at_load);
      bolt.lines.insert(bolt.lines.begin(), std::make_move_iterator(shared.begin()),
                        std::make_move_iterator(shared.end()));
      return bolt;
    }
    case Criterion::Kind::bolt_hole: {
      checks::BoltHoleInput input = bolt_hole_input(assembly, *outcome.at_load);
      input.required = outcome.asked.value;
      input.safety_factor = outcome.safety_factor;
      checks::Finding hole = checks::bolt_hole(input);
      hole.part = assembly.bolted_plates->part;
      hole.where = "plates at the bolt hole";
      return hole;
    }
    default:
    case Criterion::Kind::tilt: {
      const JointAngles angles =
          angles_of(assembly.joints[criterion.index], assembly, *outcome.at_load);
      checks::Finding tilt = checks::joint_tilt({.tilt = angles.tilt,
                                                 .most = angles.most_tilt,
                                                 .required = outcome.asked.value,
                                                 .safety_factor = outcome.safety_factor});
      tilt.part = angles.part;
      tilt.where = angles.where;
      return tilt;
    }
    case Criterion::Kind::strap:
      return strap_finding(criterion, assembly, outcome);
    case Criterion::Kind::joint:
      break;
  }
  const parts::RatedJoint& joint = assembly.rated_joints[criterion.index];
  checks::JointRatingInput input = joint_input(joint, *outcome.at_load);
  input.required = outcome.asked.value;
  input.safety_factor = outcome.safety_factor;
  checks::Finding rated = checks::joint_rating(input);
  rated.part = joint.part;
  rated.where = joint.where;
  return rated;
}

}  // namespace studies
