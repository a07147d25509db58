#include "loads/case_library.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "loads/case_builder.hpp"

namespace loads {
namespace {

using Builder = std::vector<LoadCase> (*)(const Vehicle&);

struct Kind {
  CaseInfo info;
  Builder build;
};

constexpr Severity kRoutine = Severity::routine;
constexpr Severity kAbuse = Severity::abuse;

const std::array<Kind, 16>& kinds() {
  static const std::array<Kind, 16> kKinds = {
      Kind{{"hard_stop",
            kRoutine,
            Posture::ride,
            "both wheels W and what a stop at the tires' friction moves forward; friction x wheel "
            "load rearward at the ground, brakes on",
            "arms, upper arm, axle bolts, frame joints",
            {Need::axle},
            "load transfer height / wheelbase x total weight x g: Gillespie, Fundamentals of "
            "Vehicle Dynamics, ch. 1 (from memory); a stop at the tires' limit lies within 0.75 to "
            "1.84 g of four sources: Brown, Robertson, Serpento, Motor Vehicle Structures, table "
            "2.4 (read)"},
           hard_stop},
      Kind{{"hard_stop_in_reverse",
            kRoutine,
            Posture::ride,
            "both wheels W less what a stop at 0.6 g moves rearward; 0.8 x wheel load forward at "
            "the ground, brakes on",
            "the same parts with the load turned round: what was pulled can buckle",
            {Need::axle},
            "braking with its sign turned; 0.6 g and 0.8: proposal, no source"},
           hard_stop_in_reverse},
      Kind{{"hard_corner",
            kRoutine,
            Posture::ride,
            "outer wheel 1.8 W, inner wheel 0.2 W; friction x wheel load sideways at the ground",
            "lateral link, its brackets, brace",
            {},
            "tires limit the side force to about 1 g: Ibrahim, Loads on Vehicle Structures (read); "
            "1.8 and 0.2: proposal, no source"},
           hard_corner},
      Kind{{"both_wheels_hit_hard",
            kAbuse,
            Posture::bump,
            "both wheels 3 W on the road, 4 W off it",
            "coil seats, bump stops, axle brackets",
            {Need::axle},
            "2 to 3 for an axle on a bump: Ibrahim, Loads on Vehicle Structures (read); 4 off the "
            "road: lecture slides Loads Acting on Frame (read)"},
           both_wheels_hit_hard},
      Kind{{"one_wheel_hits_hard",
            kAbuse,
            Posture::bump,
            "struck wheel 3 W on the road, 4 W off it; the other W",
            "seats, axle bending, arm twist",
            {Need::axle},
            "factors as for both wheels (read); on one wheel alone: proposal, no source"},
           one_wheel_hits_hard},
      Kind{{"hole_with_brakes_on",
            kAbuse,
            Posture::bump,
            "one wheel 2.5 W (3 W off the road) and 2 W rearward at the ground, brakes on; the "
            "other "
            "W and no brake force, which turns the axle most",
            "arms, upper arm, yaw of the axle",
            {Need::axle},
            "built from bump and braking; 2.5 and 2: proposal, no source"},
           hole_with_brakes_on},
      Kind{{"square_edge_head_on",
            kAbuse,
            Posture::ride,
            "both wheels W; the struck one 4.5 / tan(a) x W rearward at the hub, sin(a) = 1 - H/R; "
            "edge H 0.1 of the radius on the road, 0.2 off it",
            "near arm, steering arm",
            {Need::axle},
            "step factor 4.5 by Garrett, through the hub, in Brown, Robertson, Serpento, Motor "
            "Vehicle Structures, p. 22 (read); height of the edge: proposal, no source"},
           square_edge_head_on},
      Kind{{"slid_into_a_curb",
            kAbuse,
            Posture::ride,
            "struck wheel 2 W and 1.75 x 2 W inward at the ground, x the lesser of 1 and track / "
            "(2 x "
            "height of the mass center)",
            "lateral link, brackets, brace, knuckle; not the steering's links: it strikes in line "
            "with the kingpins",
            {},
            "1.75 x axle weight, all of it on the struck wheel: side curb factor by Garrett, in "
            "Brown, Robertson, Serpento, Motor Vehicle Structures, p. 24 (read)"},
           slid_into_a_curb},
      Kind{
          {"corner_plus_hole",
           kAbuse,
           Posture::bump,
           "outer wheel 2.5 W and W rearward, inner wheel 0.2 W; 2 W sideways, shared as the wheel "
           "loads",
           "lateral link and arms at once",
           {},
           "built from corner and hole: proposal, no source"},
          corner_plus_hole},
      Kind{{"wheel_wedged_low_range",
            kAbuse,
            Posture::ride,
            "wedged wheel 1.5 W and the axle's whole torque / R, forward and backward, at the "
            "ground; the other 0.5 W; torque of the propeller shaft about x, both ways",
            "arms, upper arm",
            {Need::axle},
            "torque engine x gear x transfer x final drive x efficiency, not limited by friction "
            "(statics, no source); shaft torque by Gillespie, ch. 2 (from memory); 1.5 and 0.5: "
            "proposal, no source"},
           wheel_wedged_low_range},
      Kind{{"full_cross_up",
            kAbuse,
            Posture::crossed,
            "wheels W; the axle rolled as far as it goes against the frame",
            "bolts of the arms at the axle, travel of bushings",
            {Need::axle},
            "twist of two stiff arms against bushings and axle (statics, no source); the roll is "
            "yours"},
           full_cross_up},
      Kind{{"strap_catch",
            kAbuse,
            Posture::droop,
            "wheels hang: W + sqrt(W^2 + k m v^2) at the straps, W = m g + coil push left",
            "strap, its tabs, frame tab",
            {Need::axle, Need::straps},
            "energy (statics, no source)"},
           strap_catch},
      Kind{{"bump_stop_slammed",
            kAbuse,
            Posture::bump,
            "as both wheels hit hard, and m v^2 / (2 x 0.45 x crush) more at each stop",
            "bump stops and their mounts",
            {Need::axle, Need::bump_stops},
            "energy (statics, no source); 0.45, within 0.4 to 0.5 for foam or rubber: common "
            "practice, no source"},
           bump_stop_slammed},
      Kind{{"dry_park_lock_to_lock",
            kRoutine,
            Posture::ride,
            "both wheels W; the ground resists turning about the kingpins",
            "drag link, tie rod, lateral link (it holds what the drag link pushes)",
            {Need::axle, Need::steering},
            "friction of a standing tire, either way (each formula with its own mark)"},
           dry_park_lock_to_lock},
      Kind{{"steering_jammed",
            kAbuse,
            Posture::ride,
            "wheels W; the steering gear's torque at its relief / pitman arm, either way",
            "drag link, tie rod, bracket of the steering gear",
            {Need::axle, Need::steering},
            "statics, no source"},
           steering_jammed},
      Kind{
          {"dragged_over_a_rock",
           kAbuse,
           Posture::ride,
           "W up at the middle of the lateral link, of an arm W (2 W off the road), friction of it "
           "rearward; wheels W",
           "lateral link, arms, tie rod: bending with axial load",
           {},
           "share of the static load at midspan: common practice, no source; friction along the "
           "way: proposal, no source"},
          dragged_over_a_rock}};
  return kKinds;
}

const Kind* find_kind(std::string_view name) {
  const auto found = std::find_if(kinds().begin(), kinds().end(),
                                  [&](const Kind& kind) { return kind.info.name == name; });
  return found == kinds().end() ? nullptr : &*found;
}

}  // namespace

const std::vector<CaseInfo>& case_library() {
  static const std::vector<CaseInfo> kLibrary = [] {
    std::vector<CaseInfo> all;
    for (const Kind& kind : kinds()) all.push_back(kind.info);
    return all;
  }();
  return kLibrary;
}

const std::vector<std::string>& case_names() {
  static const std::vector<std::string> kNames = [] {
    std::vector<std::string> all;
    for (const Kind& kind : kinds()) all.emplace_back(kind.info.name);
    return all;
  }();
  return kNames;
}

const std::vector<std::string>& all_case_names() {
  static const std::vector<std::string> kNames = [] {
    // Any vehicle that has every number.
    const Vehicle complete{.axle_weight = 16e3,
                           .tire_radius = 0.4,
                           .track = 1.6,
                           .total_weight = 30e3,
                           .wheelbase = 2.8,
                           .mass_center_height = 0.8,
                           .unsprung_weight = 3e3,
                           .engine_torque = 400.0,
                           .gear = 3.0,
                           .transfer = 2.5,
                           .final_drive = 4.0,
                           .articulation = 0.1,
                           .strap_rate = 4e5,
                           .droop_speed = 1.0,
                           .slam_speed = 1.0,
                           .stop_crush = 0.05,
                           .tire_pressure = 2e5,
                           .steering_arm = 0.15,
                           .gear_torque = 1e3,
                           .pitman_arm = 0.15};
    std::vector<std::string> all;
    for (const LoadCase& c : built_in_cases(complete, case_names())) all.push_back(c.name);
    return all;
  }();
  return kNames;
}

const CaseInfo& case_info(std::string_view name) {
  const Kind* kind = find_kind(name);
  INVARIANT(kind != nullptr);
  return kind->info;
}

std::string case_words(std::string_view name) {
  if (name == "full_cross_up") return "full cross-up";
  if (name == "wheel_wedged_low_range") return "wheel wedged, low range";
  if (name == "square_edge_head_on") return "square edge, head on";
  if (name == "dry_park_lock_to_lock") return "dry park, lock to lock";
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::vector<LoadCase> built_in_cases(const Vehicle& vehicle,
                                     const std::vector<std::string>& names) {
  std::vector<LoadCase> cases;
  for (const std::string& name : names) {
    const Kind* kind = find_kind(name);
    if (kind == nullptr) {
      throw base::InputError("load_cases",
                             fmt::format("`{}` is not a built-in load case; known are {}", name,
                                         fmt::join(case_names(), ", ")));
    }
    for (LoadCase& c : kind->build(vehicle)) cases.push_back(std::move(c));
  }
  return cases;
}

}  // namespace loads
