// Points and sizes of an axle's parts that cannot be: each is refused in one line, at its key, in
// the case's own units. Invented numbers.
#include <catch2/catch.hpp>

#include "tests/cases/case_texts.hpp"

namespace place_rules_test {
using case_texts::problems;
using case_texts::with;
using Catch::Matchers::Contains;

namespace {

const std::string kAxle =
    "title: invented\n"
    "vehicle: {axle_weight: 3200 lb, tire: 35 in, track: 66 in, wheelbase: 120 in,\n"
    "  kingpin_offset: 3 in}\n"
    "points:\n"
    "  link at frame: [4, 17, 20 in]\n"
    "  link at axle: [4, -17, 18 in]\n"
    "  lower bolt: [0, 16, 13 in]\n"
    "  upper bolt: [0, 16, 22 in]\n"
    "  pivot: [-36, 16, 17 in]\n"
    "  pitman: [7, 17, 20 in]\n"
    "  knuckle: [6, -29, 18 in]\n"
    "  tie rod: [-6, 29, 16 in]\n"
    "  bolt 1: [6, 17, 24 in]\n"
    "  bolt 2: [10, 17, 24 in]\n"
    "  bolt 3: [8, 17, 28 in]\n"
    "lateral_link: {frame_bolt: link at frame, axle_bolt: link at axle, tube: 1-3/4 x 0.250 in "
    "DOM,\n"
    "  ends: weld-on bushing, axle_end: tapped rod end}\n"
    "arm: {axle_lower: lower bolt, axle_upper: upper bolt, frame: pivot, joins_at: 16 in,\n"
    "  lower: 2 x 0.250 in DOM, upper: 1-1/2 x 0.250 in DOM}\n"
    "axle: {coil_spacing: 38 in, coil_rate: 350 lb/in}\n"
    "steering: {pitman_ball: pitman, knuckle_ball: knuckle, tie_rod_ball: tie rod,\n"
    "  drag_link: 1-1/4 x 0.250 in DOM, tie_rod: 1-1/4 x 0.250 in DOM,\n"
    "  gear_bolts: 7/16 in grade 8, gear_bolts_at: [bolt 1, bolt 2, bolt 3]}\n";

std::string changed(const std::string& piece, const std::string& instead) {
  return problems(with(kAxle, piece, instead));
}

}  // namespace

TEST_CASE("the axle that the others change has no problem", "[cases][place]") {
  CHECK(problems(kAxle).empty());
  CHECK(changed("3200 lb", "450 lb").empty());  // the smallest trucks'
}

TEST_CASE("a point of an axle's parts that cannot lie there is refused", "[cases][place]") {
  CHECK_THAT(changed("lower bolt: [0, 16, 13 in]", "lower bolt: [0, 16, -13 in]"),
             Contains("arm.axle_lower: `lower bolt` is 13 in under the ground"));
  CHECK_THAT(
      changed("link at frame: [4, 17, 20 in]", "link at frame: [4, 170, 20 in]"),
      Contains("`link at frame` is 170 in from the middle of the truck, more than the track"));
  CHECK_THAT(changed("pivot: [-36, 16, 17 in]", "pivot: [-36, 16, 17 ft]"),
             Contains("arm.frame: `pivot` is 204 in over the ground"));
  CHECK_THAT(changed("upper bolt: [0, 16, 22 in]", "upper bolt: [0, -16, 22 in]"),
             Contains("arm.axle_upper: `upper bolt` lies on the other side of the truck than "
                      "`lower bolt`; y is to the left: is a sign wrong?"));
  CHECK_THAT(changed("pivot: [-36, 16, 17 in]", "pivot: [-36, -16, 17 in]"),
             Contains("arm.frame: `pivot` lies on the other side of the truck than `lower bolt`"));
  CHECK_THAT(changed("lower bolt: [0, 16, 13 in]", "lower bolt: [0, 40, 13 in]"),
             Contains("`lower bolt` is 40 in from the middle of the truck, outside of the tire's "
                      "center (33 in)"));
  CHECK_THAT(changed("link at axle: [4, -17, 18 in]", "link at axle: [44, -17, 18 in]"),
             Contains("lateral_link.axle_bolt: `link at axle` is on the axle, and 44 in ahead of "
                      "its middle"));
  CHECK_THAT(changed("link at axle: [4, -17, 18 in]", "link at axle: [4, 17, 18 in]"),
             Contains("lateral_link.axle_bolt: the link does not run across the truck"));
  CHECK_THAT(changed("pivot: [-36, 16, 17 in]", "pivot: [-36, 16, 17 in]\n  mid: [0, 0, 13 in]") +
                 problems(with(with(kAxle, "bolt 1:", "mid: [0, 0, 13 in]\n  bolt 1:"),
                               "axle_lower: lower bolt, axle_upper: upper bolt, frame: pivot, "
                               "joins_at: 16 in,",
                               "axle_lower: mid, frame: pivot,\n ")),
             Contains("arm.axle_lower: it lies in the middle of the truck"));
  CHECK_THAT(changed("coil_spacing: 38 in", "coil_spacing: 80 in"),
             Contains("axle.coil_spacing: 80 in is more than the track (66 in)"));
}

TEST_CASE("bolts of a steering gear are three or more near it, not in one line", "[cases][place]") {
  CHECK_THAT(changed("[bolt 1, bolt 2, bolt 3]", "[bolt 1, bolt 2]"),
             Contains("steering.gear_bolts_at: they lie in one line"));
  CHECK_THAT(changed("bolt 3: [8, 17, 28 in]", "bolt 3: [12, 17, 24 in]"),
             Contains("steering.gear_bolts_at: they lie in one line"));
  CHECK_THAT(changed("bolt 3: [8, 17, 28 in]", "bolt 3: [8, 17, 58 in]"),
             Contains("`bolt 3` is 38.01 in from the pitman arm's ball"));
  CHECK_THAT(changed(", gear_bolts_at: [bolt 1, bolt 2, bolt 3]", ""),
             Contains("steering.gear_bolts: where they are is missing"));
  CHECK_THAT(changed("gear_bolts: 7/16 in grade 8, ", ""),
             Contains("steering.gear_bolts_at: the bolts are missing"));
}

TEST_CASE("numbers that no truck has are refused", "[cases][place]") {
  const auto vehicle = [](const std::string& more) {
    return changed("kingpin_offset: 3 in", "kingpin_offset: 3 in, " + more);
  };
  CHECK_THAT(vehicle("gear: 31"), Contains("vehicle.gear: 31 is not believable here"));
  CHECK_THAT(vehicle("tire_pressure: 32 ksi"),
             Contains("vehicle.tire_pressure: 32 ksi is not believable"));
  CHECK_THAT(vehicle("slam_speed: 30 mph"), Contains("vehicle.slam_speed"));
  CHECK_THAT(vehicle("articulation: 40 deg"),
             Contains("vehicle.articulation: 40 deg is not believable"));
  CHECK_THAT(vehicle("stop_crush: 2 ft"), Contains("vehicle.stop_crush: 24 in is not believable"));
  CHECK_THAT(changed("coil_rate: 350 lb/in", "coil_rate: 350 kN/mm"), Contains("axle.coil_rate"));
}

}  // namespace place_rules_test
