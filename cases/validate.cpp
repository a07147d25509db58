#include "cases/validate.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include <fmt/format.h>

#include "cases/believable.hpp"
#include "cases/frame_rules.hpp"
#include "cases/place_rules.hpp"
#include "cases/plain_rules.hpp"
#include "cases/quantity.hpp"
#include "cases/words.hpp"
#include "loads/case_library.hpp"
#include "parts/bracket_weld.hpp"
#include "parts/used_sticks.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Design;
using Problems = std::vector<InputError>;

/// The lateral link's place: two lengths, or two points.
void add_link_place(Problems& out, const parts::LateralLink& l, bool with_axle) {
  const bool lengths = !std::isnan(l.bolt_to_bolt) || !std::isnan(l.rise);
  const bool points = !l.frame_bolt.empty() || !l.axle_bolt.empty();
  if (lengths && points) {
    out.emplace_back("lateral_link",
                     "give either bolt_to_bolt and rise, or the points frame_bolt "
                     "and axle_bolt, not both");
  } else if (!lengths && !points) {
    out.emplace_back("lateral_link",
                     "its place is missing: give bolt_to_bolt and rise, e.g. 34 in "
                     "and 4 in, or the points frame_bolt and axle_bolt");
  } else if (lengths && std::isnan(l.rise)) {
    out.emplace_back("lateral_link", "`rise` is missing: frame bolt above axle bolt, e.g. 4 in");
  } else if (lengths && std::isnan(l.bolt_to_bolt)) {
    out.emplace_back("lateral_link",
                     "`bolt_to_bolt` is missing: straight from bolt to bolt, e.g. 34 in");
  } else if (points && l.frame_bolt.empty()) {
    out.emplace_back("lateral_link", "`frame_bolt` is missing: point of the bolt at the bracket");
  } else if (points && l.axle_bolt.empty()) {
    out.emplace_back("lateral_link", "`axle_bolt` is missing: point of the bolt at the axle");
  } else if (lengths && with_axle) {
    out.emplace_back("lateral_link",
                     "with `axle:` its place is needed in space; give the points "
                     "frame_bolt and axle_bolt instead of the two lengths");
  }
}

std::string length_text(double si, bool inches) {
  return write_quantity(si, parts::Dimension::length, inches);
}

void add_link_values(Problems& out, const parts::LateralLink& l, bool inches) {
  if (std::abs(l.rise) >= l.bolt_to_bolt) {
    out.emplace_back("lateral_link.rise",
                     fmt::format("{} is not under the length from bolt to bolt ({})",
                                 length_text(l.rise, inches), length_text(l.bolt_to_bolt, inches)));
  }
  if (!l.frame_bolt.empty() && l.frame_bolt == l.axle_bolt) {
    out.emplace_back("lateral_link.axle_bolt",
                     "the link has no length: both bolts are at `" + l.axle_bolt + "`");
  }
  if (!l.through.empty() && l.frame_bolt.empty()) {
    out.emplace_back("lateral_link.through",
                     "points along the link go with the points frame_bolt "
                     "and axle_bolt");
  }
  if (!std::isnan(l.bend_radius) && !(l.bend.off_straight > 0.0) && l.through.empty()) {
    out.emplace_back("lateral_link.bend_radius",
                     "the link is straight: give `bend` or `through` as well");
  }
  if (l.bend.off_straight > 0.0 && !l.through.empty()) {
    out.emplace_back("lateral_link.bend", "give either `bend` or `through`, not both");
  }
  for (std::size_t i = 0; i < l.through.size(); ++i) {
    const bool end = l.through[i] == l.frame_bolt || l.through[i] == l.axle_bolt;
    if (!end && std::count(l.through.begin(), l.through.end(), l.through[i]) == 1) continue;
    out.emplace_back("lateral_link.through",
                     "the link comes to `" + l.through[i] + "` twice; name each point once");
    return;
  }
}

/// A specification's strengths end at its thickness limits. Estimates end less sharply: those are
/// listed under assumed instead.
void add_thickness(Problems& out, const std::string& key, const sections::Material& steel,
                   double thickness, bool inches) {
  if (steel.covers(thickness) || !steel.specified()) return;
  const sections::Material* other = sections::same_steel_for(steel, thickness);
  out.emplace_back(
      key, fmt::format(
               "{} is outside the thickness for which {} ({}) has its strength, {} to {}; {}",
               length_text(thickness, inches), steel.id, steel.description,
               length_text(steel.thickness_over, inches), length_text(steel.thickness_to, inches),
               other != nullptr ? "name " + other->id
                                : "name another steel, or give yours under `materials:`"));
}

void add_thicknesses(Problems& out, const Design& design) {
  for (const parts::StickOf& s : parts::used_sticks(design)) {
    add_thickness(out, s.key, s.stick->material, sections::governing_thickness(s.stick->shape),
                  design.inches);
  }
  if (design.bracket) {
    const parts::Plates& plates = design.bracket->plates;
    add_thickness(out, "bracket.plates", plates.material, plates.thickness, design.inches);
  }
}

/// What an upper arm needs, and what needs one.
void add_upper_arm(Problems& out, const parts::Arm& a) {
  const bool upper = parts::has_upper_arm(a);
  const bool joins = !std::isnan(a.joins_at);
  const bool own_joint = !a.upper_frame.empty();
  if ((upper || joins || own_joint) && a.axle_upper.empty()) {
    out.emplace_back("arm", "`axle_upper` is missing: the upper arm's bolt at the axle, a point");
  }
  if ((joins || own_joint) && !upper) {
    out.emplace_back("arm", "`upper` is missing: the upper arm, e.g. 1-1/4 x 0.188 in DOM");
  }
  if (upper && !joins && !own_joint) {
    out.emplace_back("arm",
                     "`joins_at` or `upper_frame` is missing: where the upper arm joins, along the "
                     "lower tube from its bolt, e.g. 16 in, or the point of its own joint at the "
                     "frame");
  }
  if (joins && own_joint) {
    out.emplace_back("arm.upper_frame",
                     "the upper arm joins the lower tube, as `joins_at` says; give one of the two");
  }
  if (a.shared_upper && !own_joint) {
    out.emplace_back("arm.shared_upper",
                     "only an upper arm with a joint of its own at the frame, `upper_frame`, can "
                     "be there once");
  }
}

void add_arm(Problems& out, const Design& design) {
  const parts::Arm& a = *design.arm;
  add_upper_arm(out, a);
  if (!a.frame.empty() && a.axle_lower == a.frame) {
    out.emplace_back("arm.frame", "the arm has no length: both ends are at `" + a.frame + "`");
  }
  const bool tabs = a.joins_on == parts::JoinsOn::tabs_on_sides;
  const bool sized = !std::isnan(a.join_width) && !std::isnan(a.join_length);
  const bool some = !std::isnan(a.join_width) || !std::isnan(a.join_length);
  if (tabs && std::isnan(a.joins_at)) {
    out.emplace_back("arm.joins_on", "it goes with `joins_at`: no upper arm joins the lower tube");
  } else if (tabs && !sized) {
    out.emplace_back("arm.joins_on",
                     "how large the tabs are is missing: give join_width around the tube and "
                     "join_length along it, e.g. 1 in and 3 in");
  } else if (some && !tabs) {
    out.emplace_back(std::isnan(a.join_width) ? "arm.join_length" : "arm.join_width",
                     "it goes with `joins_on: tabs on both sides`");
  }
  if (!a.axle_upper.empty() && a.axle_upper == a.axle_lower) {
    out.emplace_back("arm.axle_upper", "both bolts at the axle are at `" + a.axle_upper + "`");
  }
  if (!a.axle_upper.empty() && a.axle_upper == a.upper_frame) {
    out.emplace_back("arm.upper_frame",
                     "the upper arm has no length: both ends are at `" + a.upper_frame + "`");
  }
  double length = base::kUnset;
  for (const auto& from : design.points) {
    for (const auto& to : design.points) {
      if (from.name != a.axle_lower || to.name != a.frame) continue;
      if (a.mirror && from.value[1] * to.value[1] < 0.0) {
        out.emplace_back("arm.frame", "`" + to.name +
                                          "` lies on the other side of the truck than `" +
                                          from.name +
                                          "`: left and right arm would cross; y is to the left, so "
                                          "is a sign wrong?");
      }
      length = std::hypot(from.value[0] - to.value[0], from.value[1] - to.value[1],
                          from.value[2] - to.value[2]);
    }
  }
  if (a.joins_at >= length) {
    out.emplace_back("arm.joins_at",
                     fmt::format("{} is beyond the lower tube, which is {:.4g} {} "
                                 "long",
                                 length_text(a.joins_at, design.inches),
                                 length / (design.inches ? base::kInch : base::kMillimeter),
                                 design.inches ? "in" : "mm"));
  }
}

void add_pitman_arm(Problems& out, const Design& design) {
  const parts::Steering& s = *design.steering;
  if (parts::has_pitman_arm(s) && std::isnan(design.vehicle->pitman_arm)) {
    out.emplace_back("steering.pitman_arm",
                     "its length is missing: give vehicle.pitman_arm, shaft to drag link ball, "
                     "e.g. 6 in");
  }
  if (!std::isnan(s.pitman_drop) && !parts::has_pitman_arm(s)) {
    out.emplace_back("steering.pitman_drop",
                     "there is no arm that drops: give `pitman_arm`, its bar with its steel, e.g. "
                     "20 x 45 mm flat bar 1045_HR");
  }
}

void add_steering(Problems& out, const Design& design) {
  const parts::Steering& s = *design.steering;
  add_pitman_arm(out, design);
  if (s.pitman_ball == s.knuckle_ball) {
    out.emplace_back("steering.knuckle_ball",
                     "the drag link has no length: both balls are at `" + s.pitman_ball + "`");
  }
  const double kingpin_offset = design.vehicle->kingpin_offset;
  if (std::isnan(kingpin_offset)) {
    out.emplace_back("steering",
                     "it needs vehicle.kingpin_offset: kingpin to tire center on the "
                     "ground, e.g. 3 in");
    return;
  }
  const auto shown_length = [&](double si) {
    return shown_quantity(si, parts::Dimension::length, design.inches);
  };
  const double arm = parts::steering_arm_of(design);
  if (std::isnan(arm)) return;  // the point is missing, and that is said
  if (arm < 0.05 || arm > 0.4) {
    out.emplace_back(
        "steering.tie_rod_ball",
        fmt::format("it is {} from the kingpin, seen from above; a steering arm has {} "
                    "to {}; is the point right?",
                    shown_length(arm), shown_length(0.05), shown_length(0.4)));
  }
  const double given = design.vehicle->steering_arm;
  if (std::abs(given / arm - 1.0) > 0.02) {
    out.emplace_back(
        "vehicle.steering_arm",
        fmt::format("it is {} here, and {} from the kingpin to steering.tie_rod_ball; "
                    "leave it out, or mend one of them",
                    length_text(given, design.inches), length_text(arm, design.inches)));
  }
  const auto drag = [&](const std::string& ball) { return parts::point_of(design, ball)[1]; };
  if (std::abs(drag(s.knuckle_ball) - drag(s.pitman_ball)) < 0.1) {
    out.emplace_back("steering.knuckle_ball",
                     "the drag link does not run across the truck; only one that does is known "
                     "here");
  }
}

/// One that is given as ending the drop cannot end it before the free travel.
void add_limit_strap(Problems& out, const Design& design) {
  const parts::LimitStrap& s = *design.limit_strap;
  for (const auto& [key, drop] :
       {std::pair{"damper_travel", s.damper_travel}, std::pair{"spring_travel", s.spring_travel},
        std::pair{"joint_travel", s.joint_travel},
        std::pair{"brake_hose_travel", s.brake_hose_travel}}) {
    if (!(drop < s.free_travel)) continue;
    out.emplace_back("limit_strap.free_travel",
                     fmt::format("{} is more than {} ({}), which ends the drop before; leave it "
                                 "out, or mend one of them",
                                 length_text(s.free_travel, design.inches), key,
                                 length_text(drop, design.inches)));
    return;
  }
}

/// A groove's throat lies in the plate or the wall; from both sides two of them do.
void add_groove(Problems& out, const std::string& key, double throat, double room, bool inches) {
  if (!std::isfinite(throat) || throat <= room * (1.0 + 1e-9)) return;
  out.emplace_back(key, fmt::format("a groove of {} is deeper than the {} that are there for it",
                                    length_text(throat, inches), length_text(room, inches)));
}

void add_plate_groove(Problems& out, const std::string& key, const parts::FilletWeld& weld,
                      double thickness, bool inches) {
  add_groove(out, key, weld.groove, weld.both_sides ? 0.5 * thickness : thickness, inches);
}

/// Between two plates there must be room for an eye beside the spacers.
void add_spacers(Problems& out, const std::string& key, const parts::BoltSpec& bolt, double gap,
                 bool inches) {
  if (!(bolt.spacer > 0.0) || std::isnan(gap) || 2.0 * bolt.spacer < gap) return;
  out.emplace_back(key, fmt::format("its spacers of {} on each side leave no room for an eye in a "
                                    "gap of {}",
                                    length_text(bolt.spacer, inches), length_text(gap, inches)));
}

/// Tabs hang on a bolt, and its hole must lie within them.
void add_tabs(Problems& out, const std::string& key, const parts::TabSpec& tabs,
              const parts::BoltSpec& bolt, bool inches) {
  if (!tabs.given()) return;
  add_plate_groove(out, key, tabs.weld, tabs.plates.thickness, inches);
  if (!bolt.given()) {
    out.emplace_back(key, "their bolt is missing: give `bolt`, e.g. 5/8 in grade 8");
    return;
  }
  add_spacers(out, key, bolt, tabs.gap, inches);
  const double hole = bolt.thread.standard_hole();
  if (tabs.edge > 0.5 * hole) return;
  out.emplace_back(key,
                   fmt::format("{} from the bolt's center to the tabs' edge is not over half of "
                               "its hole ({})",
                               length_text(tabs.edge, inches), length_text(hole, inches)));
}

/// A fillet all round goes around something round.
void add_end_weld(Problems& out, const std::string& key, const parts::EndWeldSpec& weld,
                  const sections::Shape& shape, bool inches) {
  if (!weld.given()) return;
  const auto* tube = std::get_if<sections::RoundTube>(&shape);
  const auto* bar = std::get_if<sections::RoundBar>(&shape);
  if (tube == nullptr && bar == nullptr) {
    out.emplace_back(key, "only the weld around a round bar or tube is known here; leave it out");
    return;
  }
  const double outside = tube != nullptr ? tube->outside : bar->diameter;
  add_groove(out, key, weld.groove, tube != nullptr ? tube->wall : 0.5 * outside, inches);
  if (weld.around < outside * (1.0 - 1e-9)) {
    out.emplace_back(key, "its end is wider than the round part that it is cut to");
  }
  if (weld.rosettes > 0 && tube == nullptr) {
    out.emplace_back(key, "rosettes are holes in a tube's wall; this is a bar");
  }
}

void add_all_tabs(Problems& out, const Design& design) {
  if (design.lateral_link) {
    const parts::LateralLink& link = *design.lateral_link;
    add_tabs(out, "lateral_link.axle_tabs", link.axle_tabs, link.bolt, design.inches);
    add_end_weld(out, "lateral_link.end_weld", link.end_weld, link.stick.shape, design.inches);
    if (link.end_weld.given() && !parts::has_welded_end(link)) {
      out.emplace_back("lateral_link.end_weld", "its ends are not welded, as `ends` says");
    }
    if (link.thread.given() && !parts::has_ball_end(link)) {
      out.emplace_back("lateral_link.thread",
                       "its ends have no thread: say `ends: threaded rod end` or `tapped rod end`");
    }
  }
  if (design.brace) {
    const parts::Brace& brace = *design.brace;
    const parts::BoltSpec& far_bolt = brace.far_bolt.given() ? brace.far_bolt : brace.bolt;
    add_tabs(out, "brace.far_tabs", brace.far_tabs, far_bolt, design.inches);
    add_end_weld(out, "brace.end_weld", brace.end_weld, brace.stick.shape, design.inches);
    if (brace.far_tabs.given() && brace.far_end != parts::BraceEnd::bolted) {
      out.emplace_back("brace.far_tabs",
                       "its far end is welded: say `far_end: bolted to opposite rail`");
    }
  }
  if (design.bracket) {
    add_plate_groove(out, "bracket.weld", design.bracket->weld, design.bracket->plates.thickness,
                     design.inches);
    if (design.lateral_link && design.bracket->plates.count == 2) {
      add_spacers(out, "lateral_link.bolt", design.lateral_link->bolt, design.bracket->gap,
                  design.inches);
    }
  }
  if (design.limit_strap) {
    add_tabs(out, "limit_strap.tabs", design.limit_strap->tabs, design.limit_strap->bolt,
             design.inches);
  }
  if (design.arm) {
    add_end_weld(out, "arm.end_weld", design.arm->end_weld, design.arm->lower.shape, design.inches);
    if (parts::has_upper_arm(*design.arm)) {
      add_end_weld(out, "arm.end_weld", design.arm->end_weld, design.arm->upper.shape,
                   design.inches);
    }
    add_tabs(out, "arm.axle_tabs", design.arm->axle_tabs, design.arm->bolt, design.inches);
    add_tabs(out, "arm.frame_tabs", design.arm->frame_tabs, design.arm->bolt, design.inches);
  }
}

/// Where it ends, and by which bolt.
void add_brace(Problems& out, const Design& design) {
  const parts::Brace& b = *design.brace;
  const bool length = !std::isnan(b.length);
  const bool slope = !std::isnan(b.slope);
  if (!length && (slope || !design.frame)) {
    out.emplace_back("brace", "`length` is missing: end to end, e.g. 34 in");
  }
  if (!slope && (length || !design.frame)) {
    out.emplace_back("brace", "`slope` is missing: rise toward the opposite rail, e.g. 15 deg");
  }
  if (b.slope < 0.0) {
    out.emplace_back(
        "brace.slope",
        "it falls toward the opposite rail, which is above the bracket's bolt; give its "
        "rise, e.g. 15 deg");
  }
  if (b.far_bolt.given() && b.far_end != parts::BraceEnd::bolted) {
    out.emplace_back("brace.far_bolt",
                     "its far end is welded: say `far_end: bolted to opposite rail`");
  }
  if (b.far_bolt.given() && !b.bolt.given() && b.meets_bracket.at_bolt()) {
    out.emplace_back("brace.far_bolt",
                     "its bolt at the bracket is missing: give `bolt`, e.g. 5/8 in grade 8");
  }
}

/// What the coils carry is said by weights or by the coil itself.
void add_axle(Problems& out, const Design& design) {
  const parts::Axle& axle = *design.axle;
  if (std::isnan(axle.seat_weld) != std::isnan(axle.seat_diameter)) {
    out.emplace_back("axle", "a coil seat's weld needs seat_diameter and seat_weld");
  }
  if (std::isnan(axle.pad_weld) != std::isnan(axle.pad_diameter)) {
    out.emplace_back("axle", "the weld of a bump stop's pad needs pad_diameter and pad_weld");
  }
  const bool of_stop = !std::isnan(axle.stop_rating) || !std::isnan(axle.pad_weld);
  if (of_stop && std::isnan(axle.bump_travel)) {
    out.emplace_back("axle", "there is no bump stop: give bump_travel and stop_rate");
  }
  if (axle.stop_spacer >= axle.bump_travel) {
    out.emplace_back("axle.stop_spacer", fmt::format("{} takes all of bump_travel ({})",
                                                     length_text(axle.stop_spacer, design.inches),
                                                     length_text(axle.bump_travel, design.inches)));
  }
  if (!std::isnan(axle.stop_spacer) && std::isnan(axle.bump_travel)) {
    out.emplace_back("axle.stop_spacer", "there is no bump stop: give bump_travel and stop_rate");
  }
  if (std::isnan(axle.coil_preload) || !design.vehicle) return;
  const parts::VehicleEntry& v = *design.vehicle;
  const auto shown = [&](double si) {
    return shown_quantity(si, parts::Dimension::force, design.inches);
  };
  const double both = 2.0 * axle.coil_preload;
  if (both >= v.axle_weight) {
    out.emplace_back("axle.coil_preload",
                     fmt::format("both coils would carry {}, and the front tires weigh {}",
                                 shown(both), shown(v.axle_weight)));
    return;
  }
  constexpr double kAgree = 0.05;
  const double by_weights = v.axle_weight - v.unsprung_weight;
  if (std::abs(both - by_weights) <= kAgree * v.axle_weight || std::isnan(by_weights)) return;
  out.emplace_back("axle.coil_preload",
                   fmt::format("both coils carry {} by it, and {} by vehicle.axle_weight less "
                               "unsprung_weight; leave out one, or mend it",
                               shown(both), shown(by_weights)));
}

/// A fold, a back and a face have their place between and on the plates.
void add_bracket_walls(Problems& out, const Design& design) {
  const parts::Bracket& b = *design.bracket;
  const bool tied = b.back_plate > 0.0 || b.face_plate > 0.0;
  if (tied && b.plates.count == 1) {
    out.emplace_back("bracket.plates", "a back or face plate joins two plates: say `2 of ...`");
  }
  if (b.plates.folded() && b.back_plate > 0.0) {
    out.emplace_back("bracket.back_plate", "a folded bracket has its back already; leave it out");
  }
  if (b.plates.folded() && 2.0 * b.plates.fold_radius > b.gap) {
    out.emplace_back("bracket.plates",
                     fmt::format("two folds of {} inside radius do not fit in a gap of {}",
                                 length_text(b.plates.fold_radius, design.inches),
                                 length_text(b.gap, design.inches)));
  }
  const double least = std::min(parts::depth_at_bolt(b), b.depth_at_rail);
  const double fold = b.plates.folded() ? b.plates.fold_radius + b.plates.thickness : 0.0;
  const double walls = std::max(fold, b.back_plate > 0.0 ? b.back_plate : 0.0) +
                       (b.face_plate > 0.0 ? b.face_plate : 0.0);
  if (walls > 0.0 && walls >= 0.5 * least) {
    out.emplace_back("bracket.plates",
                     fmt::format("fold, back and face take half or more of the plates' smallest "
                                 "depth ({})",
                                 length_text(least, design.inches)));
  }
}

void add_bracket(Problems& out, const Design& design) {
  add_bracket_walls(out, design);
  const parts::Bracket& b = *design.bracket;
  if (b.up_the_side > b.rail.height) {
    out.emplace_back("bracket.up_the_side", fmt::format("{} is more than the rail's height ({})",
                                                        length_text(b.up_the_side, design.inches),
                                                        length_text(b.rail.height, design.inches)));
  }
  if (design.lateral_link && design.lateral_link->bolt.given()) {
    const double hole = design.lateral_link->bolt.thread.standard_hole();
    const double edge = parts::edge_distance(b);
    const double half = 0.5 * parts::depth_at_bolt(b);
    if (edge > (1.0 + 1.0e-9) * half) {
      out.emplace_back(
          "bracket.edge_distance",
          fmt::format("{} from the bolt's center to the nearest edge of a plate is "
                      "over half of its depth at the bolt ({})",
                      length_text(edge, design.inches), length_text(2.0 * half, design.inches)));
    }
    if (!(edge > 0.5 * hole)) {
      out.emplace_back(
          "bracket.edge_distance",
          fmt::format("{} from the bolt's center to the plates' edge is not over half "
                      "of its hole ({})",
                      length_text(edge, design.inches), length_text(hole, design.inches)));
    }
  }
  const bool ahead = !std::isnan(b.cross_member_ahead);
  const bool behind = !std::isnan(b.cross_member_behind);
  const bool section = !b.cross_member.material.id.empty();
  const bool long_known = !std::isnan(b.cross_member_length);
  if (ahead != behind) {
    out.emplace_back("bracket", fmt::format("`{}` is missing: the rail's twist is known only "
                                            "between two cross members",
                                            ahead ? "cross_member_behind" : "cross_member_ahead"));
  }
  if (section != long_known) {
    out.emplace_back(
        "bracket",
        fmt::format("`{}` is missing: a cross member's bending needs its section and its "
                    "length, e.g. {}",
                    section ? "cross_member_length" : "cross_member",
                    section ? "28 in" : "3 x 2 x 0.125 in A500C_rect"));
  }
  if (section && !ahead) {
    out.emplace_back("bracket.cross_member",
                     "how far the cross members are is missing: give cross_member_ahead and "
                     "cross_member_behind");
  }
  if (design.brace && design.brace->meets_bracket.above_bolt >= b.drop) {
    out.emplace_back("brace.meets_bracket",
                     fmt::format("{} above the bolt is not below the rail: the drop is {}",
                                 length_text(design.brace->meets_bracket.above_bolt, design.inches),
                                 length_text(b.drop, design.inches)));
  }
  const bool two_bolts =
      parts::on_one_bolt(design) && design.brace->bolt.given() && design.lateral_link->bolt.given();
  if (two_bolts && (design.brace->bolt.thread.name != design.lateral_link->bolt.thread.name ||
                    design.brace->bolt.grade.name != design.lateral_link->bolt.grade.name)) {
    out.emplace_back("brace.bolt",
                     "the brace meets the bracket at the link's bolt, and `lateral_link.bolt` is "
                     "another one; name the same bolt, or leave one out");
  }
}

void add_vehicle(Problems& out, const Design& design) {
  const parts::VehicleEntry& v = *design.vehicle;
  if (v.total_weight < v.axle_weight) {
    out.emplace_back("vehicle.total_weight",
                     "the whole truck weighs less than its front tires "
                     "carry (`axle_weight`)");
  }
  if (v.unsprung_weight >= v.axle_weight) {
    out.emplace_back("vehicle.unsprung_weight",
                     "axle and wheels weigh no less than the front "
                     "tires carry (`axle_weight`)");
  }
}

/// A slip in a unit or a factor of a thousand gives answers that look right.
void add_material(Problems& out, const parts::Named<sections::Material>& steel) {
  const sections::Material& m = steel.value;
  const std::string key = "materials." + steel.name;
  if (m.elastic < 4.0e10 || m.elastic > 4.5e11) {
    out.emplace_back(key + ".young",
                     "no structural metal has that modulus; steel has 29000 ksi or "
                     "200 GPa");
  }
  if (m.density < 1500.0 || m.density > 12000.0) {
    out.emplace_back(key + ".density",
                     "no structural metal has that density; steel has 0.284 "
                     "lb/in^3 or 7850 kg/m^3");
  }
  if (m.tensile < m.yield) {
    out.emplace_back(key + ".tensile", "the tensile strength is under the yield strength");
  }
  if (m.haz_yield > m.yield) {
    out.emplace_back(key + ".weld_zone_yield", "it is over the yield strength away from the weld");
  }
}

bool is_placed(const parts::CustomCase& c) {
  return c.posture != loads::Posture::ride || !std::isnan(c.heave) || !std::isnan(c.roll);
}

/// What a posture needs, and what it cannot go with.
void add_place(Problems& out, const Design& design, const parts::CustomCase& c,
               const std::string& key) {
  using loads::Posture;
  if (!design.axle) {
    out.emplace_back(key, "a posture, heave or roll needs `axle:` with its coils");
    return;
  }
  const bool ends_travel = c.posture == Posture::bump || c.posture == Posture::droop;
  if (ends_travel && !std::isnan(c.heave)) {
    out.emplace_back(key + ".heave",
                     "stops or straps end the travel in that posture; give `heave` "
                     "without `posture`");
  }
  if (c.posture == Posture::bump && std::isnan(design.axle->stop_rate)) {
    out.emplace_back(key + ".posture", "bump needs axle.bump_travel and axle.stop_rate");
  }
  const bool straps = !std::isnan(parts::slack_of(design)) && !std::isnan(design.limit_strap->rate);
  if (c.posture == Posture::droop && !straps) {
    out.emplace_back(key + ".posture", "droop needs limit_strap.slack and limit_strap.rate");
  }
  if (c.posture == Posture::crossed && std::isnan(c.roll) &&
      (!design.vehicle || std::isnan(design.vehicle->articulation))) {
    out.emplace_back(key + ".posture", "crossed needs vehicle.articulation, or `roll`");
  }
  constexpr double kMostRoll = 45.0 * base::kDegree;
  if (std::abs(c.roll) > kMostRoll) {
    out.emplace_back(key + ".roll", "an axle does not roll that far; give less than 45 deg");
  }
}

/// A custom load case says one thing, and something.
void add_custom_case(Problems& out, const Design& design,
                     const parts::Named<parts::CustomCase>& named) {
  const parts::CustomCase& c = named.value;
  const std::string key = "load_cases." + named.name;
  const bool wheels = parts::is_given(c.left_wheel) || parts::is_given(c.right_wheel);
  const bool whole = parts::is_given(c.acceleration);
  const bool pushed = parts::is_given(c.force) || parts::is_given(c.moment);
  const bool at_point = pushed || !c.at.empty();
  const bool placed = is_placed(c);
  const int ways = static_cast<int>(wheels) + static_cast<int>(whole) + static_cast<int>(at_point);
  if (ways > 1 || (ways == 0 && !placed)) {
    out.emplace_back(key,
                     "it needs one of: left_wheel and right_wheel; acceleration; at with force or "
                     "moment; or a posture, heave or roll with the wheels at rest");
    return;
  }
  if (placed) {
    add_place(out, design, c, key);
    if (whole || at_point) {
      out.emplace_back(key, "a posture, heave or roll goes with wheel forces, or alone");
    }
  }
  const auto nothing = [](const std::array<double, 3>& v) {
    return !parts::is_given(v) || (v[0] == 0.0 && v[1] == 0.0 && v[2] == 0.0);
  };
  if (!placed && nothing(c.left_wheel) && nothing(c.right_wheel) && nothing(c.acceleration) &&
      nothing(c.force) && nothing(c.moment)) {
    out.emplace_back(key, "it is 0; give a force, e.g. left_wheel: [-8, 0, 20 kN]");
  }
  if (at_point && c.at.empty()) out.emplace_back(key, "`at` is missing: the point it acts at");
  if (c.at_hub && !wheels) out.emplace_back(key + ".at_hub", "it goes with wheel forces");
  if (c.both_sides && at_point && !placed) {
    out.emplace_back(key + ".both_sides", "it goes with wheel forces or an acceleration");
  }
  if (!at_point && !design.vehicle) {
    out.emplace_back(key, "wheel forces and accelerations need `vehicle:`");
  } else if (!at_point && !design.lateral_link) {
    out.emplace_back(key, "nothing takes it: add `lateral_link:`");
  }
}

std::string without_commas(const std::string& name) {
  std::string words = lower(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  words.erase(std::remove(words.begin(), words.end(), ','), words.end());
  return words;
}

void add_custom_cases(Problems& out, const Design& design) {
  std::vector<std::string> taken;
  for (const std::string& name : loads::all_case_names()) taken.push_back(without_commas(name));
  for (const std::string& kind : loads::case_names()) taken.push_back(without_commas(kind));
  for (const auto& custom : design.custom_cases) {
    const std::string words = without_commas(custom.name);
    if (std::find(taken.begin(), taken.end(), words) != taken.end()) {
      out.emplace_back("load_cases." + custom.name,
                       "there is a load case of that name; give yours another");
    }
    taken.push_back(words);
    add_custom_case(out, design, custom);
  }
}

void add_duty(Problems& out, const Design& design) {
  if (design.duty.empty()) return;
  std::vector<std::string> known = {"at rest"};
  for (const std::string& name : loads::all_case_names()) known.push_back(without_commas(name));
  for (const auto& custom : design.custom_cases) {
    known.push_back(without_commas(custom.name));
    if (custom.value.both_sides) known.push_back(without_commas(custom.name) + " mirrored");
  }
  for (const parts::GivenCase& given : parts::given_cases(design)) {
    known.push_back(without_commas(given.load_case));
  }
  for (const auto& entry : design.duty) {
    for (const auto& [key, name] :
         {std::pair{"from", entry.value.block.from}, std::pair{"to", entry.value.block.to}}) {
      const std::string words = without_commas(name);
      if (words.empty() || std::find(known.begin(), known.end(), words) != known.end()) continue;
      out.emplace_back(
          fmt::format("duty.{}.{}", entry.name, key),
          fmt::format("there is no load case {}{}", quoted(name), did_you_mean(words, known)));
    }
  }
}

}  // namespace

Problems missing_parts(const Design& design) {
  Problems out;
  const bool truck =
      design.lateral_link || design.bracket || design.brace || design.arm || design.axle;
  if (design.bracket && !design.lateral_link) {
    out.emplace_back("bracket", "a bracket carries a lateral link's bolt: add `lateral_link:`");
  }
  if (design.brace && !design.bracket) {
    out.emplace_back("brace", "a brace holds a bracket: add `bracket:`");
  }
  if (design.frame && !design.bracket) {
    out.emplace_back("frame", "its rails are those a bracket hangs from: add `bracket:`");
  }
  if (design.arm && !design.axle) out.emplace_back("arm", "an arm holds an axle: add `axle:`");
  if (design.steering && !design.axle) {
    out.emplace_back("steering", "it turns an axle's wheels: add `axle:`");
  }
  if (design.limit_strap && !design.axle) {
    out.emplace_back("limit_strap", "it catches an axle: add `axle:`");
  }
  if (design.axle && !design.lateral_link) {
    out.emplace_back("axle", "nothing holds the axle sideways: add `lateral_link:`");
  }
  if (design.axle && !design.arm) {
    out.emplace_back("axle", "nothing holds the axle lengthwise: add `arm:`");
  }
  if (design.axle && !design.vehicle) {
    out.emplace_back("axle", "its wheels and weight are missing: add `vehicle:`");
  } else if (truck && !design.vehicle && !parts::has_given_loads(design)) {
    const char* key = design.lateral_link ? "lateral_link" : design.arm ? "arm" : "";
    out.emplace_back(key,
                     "nothing loads it: add `vehicle:` (axle_weight, tire, track), or "
                     "`forces:`");
  }
  if (!truck && design.members.empty()) {
    out.emplace_back("",
                     "there is nothing to check: add `lateral_link:` and `vehicle:`, or "
                     "`members:`");
  } else if (!truck && !parts::has_given_loads(design)) {
    out.emplace_back("members", "nothing loads the frame: add `forces:`");
  }
  if (!design.load_cases.empty() && !design.vehicle) {
    out.emplace_back("load_cases", "the built-in load cases need `vehicle:`");
  }
  return out;
}

Problems clashing_values(const Design& design) {
  Problems out;
  if (design.vehicle) add_vehicle(out, design);
  for (const auto& steel : design.materials) add_material(out, steel);
  add_thicknesses(out, design);
  if (design.lateral_link) {
    add_link_place(out, *design.lateral_link, design.axle.has_value());
    add_link_values(out, *design.lateral_link, design.inches);
  }
  if (design.brace) add_brace(out, design);
  if (design.arm) add_arm(out, design);
  if (design.bracket) add_bracket(out, design);
  add_all_tabs(out, design);
  if (design.steering && design.vehicle) add_steering(out, design);
  if (design.limit_strap) add_limit_strap(out, design);
  if (design.axle && std::isnan(design.axle->bump_travel) != std::isnan(design.axle->stop_rate)) {
    const bool travel = !std::isnan(design.axle->bump_travel);
    out.emplace_back(
        "axle", fmt::format("`{}` is missing: a bump stop needs its travel and its "
                            "rate, e.g. {}",
                            travel ? "stop_rate" : "bump_travel", travel ? "9000 lb/in" : "3 in"));
  }
  if (design.axle) add_axle(out, design);
  for (InputError& clash : frame_clashes(design)) out.push_back(std::move(clash));
  for (InputError& odd : misplaced_points(design)) out.push_back(std::move(odd));
  for (InputError& clash : plain_clashes(design)) out.push_back(std::move(clash));
  add_custom_cases(out, design);
  add_duty(out, design);
  for (InputError& odd : unbelievable_values(design)) out.push_back(std::move(odd));
  return out;
}

Problems broken_rules(const Design& design) {
  Problems out = missing_parts(design);
  for (InputError& clash : clashing_values(design)) out.push_back(std::move(clash));
  return out;
}

}  // namespace cases
