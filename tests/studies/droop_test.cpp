// What ends the axle's drop first: a comparison of lengths, and 1 in of a strap's own stretch
// (common practice, no source).
#include "studies/droop.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/studies/read_case.hpp"

namespace droop_test {
using Catch::Matchers::WithinAbs;

namespace {

/// An axle whose coils carry 6.6 kN each at rest.
studies::Droop droop(const std::string& strap) {
  const std::string text =
      "title: droop\n"
      "vehicle: {axle_weight: 16 kN, tire: 830 mm, hub_height: 400 mm, track: 1.6 m,\n"
      "  unsprung_weight: 2.8 kN, droop_speed: 1.5 m/s}\n"
      "points: {a: [0, 0.45, 0.4 m], b: [0, -0.45, 0.4 m], c: [0, 0.4, 0.3 m],\n"
      "  d: [-0.9, 0.4, 0.3 m]}\n"
      "lateral_link: {frame_bolt: a, axle_bolt: b, tube: 40 x 5 mm E355}\n"
      "arm: {axle_lower: c, frame: d, lower: 50 x 6 mm E355}\n"
      "axle: {coil_spacing: 0.9 m, coil_rate: 40 N/mm}\n"
      "limit_strap: {" +
      strap + "}\n";
  const std::optional<studies::Droop> found = studies::droop_of(studies_tests::read_case(text));
  REQUIRE(found.has_value());
  return *found;
}

}  // namespace

TEST_CASE("what ends the drop is listed nearest first, and a strap is set an inch short of it",
          "[studies][droop]") {
  const studies::Droop d = droop(
      "slack: 120 mm, damper_travel: 150 mm, joint_travel: 170 mm, brake_hose_travel: 140 mm");
  REQUIRE(d.ends.size() == 5);
  CHECK(d.ends[0].what == "limit strap tight");
  CHECK(d.ends[1].what == "brake hose tight");
  CHECK(d.ends[2].what == "damper at full length");
  // 6.6 kN / 40 N/mm
  CHECK(d.ends[3].what == "coil carries nothing");
  CHECK_THAT(d.ends[3].drop, WithinAbs(0.165, 1e-12));
  CHECK(d.ends[4].what == "joint at the end of its angle");
  CHECK_THAT(d.free_travel, WithinAbs(0.140, 1e-12));
  CHECK_THAT(d.advised, WithinAbs(0.140 - 0.0254, 1e-12));
  CHECK(std::isnan(d.stretched));
}

TEST_CASE("a free travel that is given counts before what ends later", "[studies][droop]") {
  const studies::Droop d = droop("free_travel: 100 mm, damper_travel: 130 mm");
  CHECK_THAT(d.advised, WithinAbs(0.0746, 1e-12));
  // Left out, the straps are set so.
  CHECK_THAT(d.strap, WithinAbs(0.0746, 1e-12));
  CHECK(d.ends.front().what == "limit strap tight");
  CHECK(std::isnan(droop("rate: 400 kN/m").strap));  // no travel is stated
}

TEST_CASE("a damper that is at full length first is said to be no stop", "[studies][droop]") {
  CHECK(droop("slack: 120 mm, damper_travel: 110 mm").ends.front().what == studies::kDamperEnds);
  CHECK(droop("damper_travel: 110 mm").ends.front().what == "limit strap tight");
}

// 18.86 kN on one strap of 400 kN/m would stretch it 47.1 mm (280 kg at 1.5 m/s; here 2.8 kN).
TEST_CASE("the drop of a strap that catches the axle alone counts its stretch",
          "[studies][droop]") {
  const studies::Droop d = droop("slack: 120 mm, rate: 400 kN/m, damper_travel: 150 mm");
  const double mass = 2800.0 / 9.80665;
  const double down = 2800.0 + 13.2e3 - 2.0 * 40.0e3 * 0.120;  // the coils still push then
  const double force = down + std::sqrt(down * down + 400.0e3 * mass * 1.5 * 1.5);
  CHECK_THAT(d.stretched, WithinAbs(0.120 + force / 400.0e3, 1e-9));
  CHECK(d.stretched > d.free_travel);
}

// A comparison of lengths: 70 mm of travel to the bump stop and 40 mm of its crush.
TEST_CASE("what ends the rise is listed nearest first, and a damper is no stop",
          "[studies][droop]") {
  const auto bump = [](const std::string& more) {
    return studies::bump_of(studies_tests::read_case(
        "title: bump\n"
        "vehicle: {axle_weight: 16 kN, tire: 830 mm, track: 1.6 m, stop_crush: 40 mm}\n"
        "points: {a: [0, 0.45, 0.4 m], b: [0, -0.45, 0.4 m], c: [0, 0.4, 0.3 m],\n"
        "  d: [-0.9, 0.4, 0.3 m]}\n"
        "lateral_link: {frame_bolt: a, axle_bolt: b, tube: 40 x 5 mm E355}\n"
        "arm: {axle_lower: c, frame: d, lower: 50 x 6 mm E355}\n"
        "axle: {coil_spacing: 0.9 m, coil_rate: 40 N/mm, bump_travel: 70 mm,\n"
        "  stop_rate: 1500 N/mm" +
        more + "}\n"));
  };
  CHECK_FALSE(bump("").has_value());
  std::optional<studies::Bump> b = bump(", damper_bump_travel: 90 mm, coil_bump_travel: 120 mm");
  REQUIRE(b.has_value());
  REQUIRE(b->ends.size() == 4);
  CHECK(b->ends[0].what == "bump stop met");
  CHECK(b->ends[1].what == studies::kDamperShortest);
  CHECK(b->ends[2].what == studies::kFullBump);
  CHECK_THAT(b->full, WithinAbs(0.110, 1e-12));
  studies::PostureExtremes up{.posture = "bump", .joints = {}, .stops = {}};
  up.highest = 0.095;
  studies::take_solved(*b, {up});
  CHECK_THAT(b->solved, WithinAbs(0.095, 1e-12));
}

// Of two joints the one whose tilt is nearer to its limit ends the drop: 100 mm x 15/10 and x
// 15/12.
TEST_CASE("the solved posture tells at what drop a joint comes to the end of its tilt",
          "[studies][droop]") {
  studies::Droop d = droop("slack: 120 mm");
  studies::PostureExtremes hanging{.posture = "droop", .joints = {}, .stops = {}};
  hanging.lowest = -0.1;
  hanging.joints = {{.part = "arm, left", .where = "frame end", .tilt = 0.10, .most_tilt = 0.15},
                    {.part = "arm, right", .where = "frame end", .tilt = 0.12, .most_tilt = 0.15},
                    {.part = "lateral_link", .where = "axle end", .tilt = 0.5}};
  studies::take_solved(d, {hanging});
  CHECK_THAT(d.hangs, WithinAbs(0.1, 1e-12));
  CHECK_THAT(d.joint_at_tilt, WithinAbs(0.125, 1e-12));
  CHECK(d.joint == "arm, right, frame end");
}

}  // namespace droop_test
