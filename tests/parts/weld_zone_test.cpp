// Where welds weaken a part. Zone of 15 mm or 2 t beyond a weld, welds of eyes as far from the bolt
// as the part is wide: common practice and proposal, no source. Geometry by hand.
#include "parts/weld_zone.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "parts/assembly.hpp"

namespace weld_zone_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kBeside = 240.0e6;  // invented: beside a weld
constexpr double kAway = 350.0e6;    // parts_test::steel()

parts::Stick weakened(const sections::Shape& shape) {
  parts::Stick stick{shape, parts_test::steel()};
  stick.material.haz_yield = kBeside;
  return stick;
}

/// An upright post of 80 mm on the ground, 1 m high, and a beam of 50 mm that leaves its top.
parts::Design post_and_beam(double beam_x, double beam_z) {
  parts::Design d;
  d.points = {{"foot", {0.0, 0.0, 0.0}}, {"top", {0.0, 0.0, 1.0}}, {"far", {beam_x, 0.0, beam_z}}};
  parts::Member post;
  post.from = "foot";
  post.to = "top";
  post.stick = weakened(sections::RoundTube{.outside = 0.080, .wall = 0.005});
  parts::Member beam;
  beam.from = "top";
  beam.to = "far";
  beam.stick = weakened(sections::RoundTube{.outside = 0.050, .wall = 0.010});
  d.members = {{"post", post}, {"beam", beam}};
  d.supports = {{"foot", {.at = "foot", .held = {}}}};
  return d;
}

void check_zones(const parts::Piece& piece, const std::vector<parts::WeldZone>& expected) {
  REQUIRE(piece.weld_zones.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    CHECK_THAT(piece.weld_zones[i].from, WithinAbs(expected[i].from, 1e-9));
    CHECK_THAT(piece.weld_zones[i].to, WithinAbs(expected[i].to, 1e-9));
  }
}

}  // namespace

TEST_CASE("a zone goes 15 mm or twice the thickness beyond a weld", "[parts]") {
  CHECK(parts::beyond_weld(sections::RoundTube{.outside = 0.050, .wall = 0.005}) == 0.015);
  CHECK(parts::beyond_weld(sections::RoundTube{.outside = 0.050, .wall = 0.008}) == 0.016);
  CHECK(parts::beyond_weld(sections::RoundBar{.diameter = 0.040}) == 0.080);
  CHECK(parts::beyond_weld(sections::FlatBar{.depth = 0.080, .width = 0.010}) == 0.020);
  CHECK(std::isnan(parts::beyond_weld(sections::ByNumbers{})));
}

TEST_CASE("a weld lies where the outsides of two bars cross", "[parts]") {
  // Square on: half of the other bar. At 45 degrees the toe is (R + r cos 45) / sin 45 away.
  CHECK_THAT(parts::weld_reach(0.025, 0.040, 0.5 * base::kPi), WithinRel(0.040, 1e-9));
  CHECK_THAT(parts::weld_reach(0.025, 0.040, 0.25 * base::kPi),
             WithinRel(std::sqrt(2.0) * 0.040 + 0.025, 1e-9));
  // End to end, and a miter of 20 degrees, cut at 10.
  CHECK_THAT(parts::weld_reach(0.025, 0.025, base::kPi), WithinAbs(0.0, 1e-12));
  CHECK_THAT(parts::weld_reach(0.025, 0.025, 160.0 * base::kDegree),
             WithinRel(0.025 * std::tan(10.0 * base::kDegree), 1e-9));
  CHECK(std::isnan(parts::weld_reach(0.025, base::kUnset, 1.0)));
}

TEST_CASE("zones that meet are one, and a place not known takes all of the piece", "[parts]") {
  const auto zones = parts::weld_zones({{0.0, 0.02}, {0.5, 0.0}, {0.53, 0.01}}, 0.015, 1.0);
  REQUIRE(zones.size() == 2);
  CHECK_THAT(zones[0].from, WithinAbs(0.0, 1e-12));
  CHECK_THAT(zones[0].to, WithinAbs(0.035, 1e-12));
  CHECK_THAT(zones[1].from, WithinAbs(0.485, 1e-12));
  CHECK_THAT(zones[1].to, WithinAbs(0.555, 1e-12));
  for (const auto& all :
       {parts::weld_zones({}, 0.015, 1.0), parts::weld_zones({{0.0, 0.0}}, base::kUnset, 1.0),
        parts::weld_zones({{0.0, 0.0}, {0.5, base::kUnset}}, 0.015, 1.0)}) {
    REQUIRE(all.size() == 1);
    CHECK(all.front().from == 0.0);
    CHECK(all.front().to == 1.0);
  }
}

TEST_CASE("a link is weakened beside the eyes at its ends", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->stick = weakened(sections::RoundTube{.outside = 0.038, .wall = 0.005});
  parts::Piece link = parts::assemble(d, {}).pieces.front();
  check_zones(link, {{0.0, 0.091}, {0.809, 0.9}});  // its ball joints: twice 38 mm
  d.lateral_link->ends.joint.kind = parts::JointKind::bushing;
  link = parts::assemble(d, {}).pieces.front();
  check_zones(link, {{0.0, 0.053}, {0.847, 0.9}});
  CHECK_THAT(link.farthest_weld(), WithinAbs(0.038, 1e-9));
  CHECK(link.yield_at(0.053) == kBeside);
  CHECK(link.yield_at(0.0531) == kAway);
  CHECK_FALSE(link.parent_holds_beside(0.0));
  CHECK(link.parent_holds_beside(0.053));
  d.lateral_link->bolt_to_weld = 0.020;
  link = parts::assemble(d, {}).pieces.front();
  check_zones(link, {{0.0, 0.035}, {0.865, 0.9}});
  CHECK_THAT(link.farthest_weld(), WithinAbs(0.020, 1e-9));
  d.lateral_link->ends.welded = false;
  CHECK(parts::assemble(d, {}).pieces.front().weld_zones.empty());
  d.lateral_link->ends.welded = true;
  d.lateral_link->stick = parts_test::tube(0.038, 0.005);  // as strong beside a weld
  CHECK(parts::assemble(d, {}).pieces.front().weld_zones.empty());
}

TEST_CASE("a sharp corner of a link counts as welded, a bend does not", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->stick = weakened(sections::RoundTube{.outside = 0.038, .wall = 0.005});
  d.lateral_link->ends.joint.kind = parts::JointKind::bushing;
  d.lateral_link->bend = {.off_straight = 0.05, .toward = parts::BendToward::forward};
  const parts::Piece sharp = parts::assemble(d, {}).pieces.front();
  const double half_turn = std::atan((0.05 + 0.0009) / 0.45);  // with the bow of L/1000
  const double corner = std::hypot(0.45, 0.0509);
  const double zone = 0.019 * std::tan(half_turn) + 0.015;
  check_zones(sharp,
              {{0.0, 0.053}, {corner - zone, corner + zone}, {2.0 * corner - 0.053, 2.0 * corner}});
  d.lateral_link->bend_radius = 0.2;
  CHECK(parts::assemble(d, {}).pieces.front().weld_zones.size() == 2);
}

TEST_CASE("bracket plates are weakened at the rail and where the brace meets them", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->plates.material.haz_yield = kBeside;
  const auto piece = [&](const std::string& part) {
    for (const parts::Piece& p : parts::assemble(d, {}).pieces) {
      if (p.part == part) return p;
    }
    FAIL("no such part");
    return parts::Piece{};
  };
  check_zones(piece("bracket"), {{0.235, 0.25}});
  d.brace.emplace();
  d.brace->stick = weakened(sections::RoundTube{.outside = 0.032, .wall = 0.003});
  d.brace->length = 0.8;
  d.brace->slope = 0.0;
  check_zones(piece("brace"), {{0.0, 0.047}, {0.785, 0.8}});
  // Square to plates of 100 mm: 50 mm along the brace, half of the brace along the plates.
  d.brace->meets_bracket = {0.1};
  check_zones(piece("bracket"), {{0.069, 0.131}, {0.235, 0.25}});
  check_zones(piece("brace"), {{0.0, 0.065}, {0.785, 0.8}});
  d.brace->far_end = parts::BraceEnd::bolted;
  check_zones(piece("brace"), {{0.0, 0.065}, {0.753, 0.8}});
}

TEST_CASE("members are weakened where they meet, up to each other's outside", "[parts]") {
  parts::Design d = post_and_beam(1.0, 1.0);
  parts::Assembly a = parts::assemble(d, {});
  check_zones(a.pieces[0], {{0.0, 0.015}, {1.0 - 0.025 - 0.015, 1.0}});
  check_zones(a.pieces[1], {{0.0, 0.040 + 0.020}, {1.0 - 0.020, 1.0}});
  // Straight on from the post they are welded end to end.
  a = parts::assemble(post_and_beam(0.0, 2.0), {});
  check_zones(a.pieces[0], {{0.0, 0.015}, {0.985, 1.0}});
  // An eye on a pin is as far away as the member is wide, a ball joint's housing twice that.
  d.members[1].value.to_joint.kind = parts::JointKind::pin;
  check_zones(parts::assemble(d, {}).pieces[1], {{0.0, 0.060}, {1.0 - 0.050 - 0.020, 1.0}});
  d.members[1].value.to_joint.kind = parts::JointKind::ball;
  check_zones(parts::assemble(d, {}).pieces[1], {{0.0, 0.060}, {1.0 - 0.100 - 0.020, 1.0}});
  // With both ends on joints it is not known where it is welded.
  d.members[1].value.from_joint.kind = parts::JointKind::ball;
  const parts::Piece loose = parts::assemble(d, {}).pieces[1];
  check_zones(loose, {{0.0, 1.0}});
  CHECK(std::isnan(loose.farthest_weld()));
  CHECK_FALSE(loose.parent_holds_beside(0.5));
  d.members[1].value.welded = false;
  CHECK(parts::assemble(d, {}).pieces[1].weld_zones.empty());
}

TEST_CASE("a member is weakened where another meets it part-way", "[parts]") {
  parts::Design d = post_and_beam(1.0, 0.5);
  d.points.push_back({"middle", {0.0, 0.0, 0.5}});
  d.members[0].value.through = {"middle"};
  d.members[1].value.from = "middle";
  check_zones(parts::assemble(d, {}).pieces[0],
              {{0.0, 0.015}, {0.5 - 0.040, 0.5 + 0.040}, {0.985, 1.0}});
}

TEST_CASE("the junction of an arm is a weld part-way along its lower tube", "[parts]") {
  parts::Design d;
  d.vehicle.emplace();
  d.vehicle->axle_weight = 16.0e3;
  d.vehicle->tire = 0.8;
  d.vehicle->track = 1.6;
  d.vehicle->hub_height = 0.4;
  d.axle = parts::Axle{};
  d.axle->coil_spacing = 0.9;
  d.axle->coil_rate = 60.0e3;
  d.points = {{"lower", {0.0, 0.4, 0.3}}, {"upper", {-0.5, 0.4, 0.5}}, {"frame", {-1.0, 0.4, 0.3}}};
  d.arm.emplace();
  d.arm->axle_lower = "lower";
  d.arm->axle_upper = "upper";
  d.arm->frame = "frame";
  d.arm->joins_at = 0.5;
  d.arm->lower = weakened(sections::RoundTube{.outside = 0.060, .wall = 0.005});
  d.arm->upper = weakened(sections::RoundTube{.outside = 0.040, .wall = 0.005});
  d.arm->mirror = false;
  const parts::Assembly a = parts::assemble(d, {});
  REQUIRE(a.pieces.size() == 3);
  check_zones(a.pieces[0], {{0.0, 0.075}, {0.5 - 0.035, 0.5}});
  check_zones(a.pieces[1], {{0.0, 0.035}, {0.5 - 0.075, 0.5}});
  check_zones(a.pieces[2], {{0.0, 0.055}, {0.2 - 0.030 - 0.015, 0.2}});
  // The lower tube goes through: on the side that faces the upper arm, 40 of 60 mm wide.
  REQUIRE(a.pieces[0].weld_zones[1].on_side);
  CHECK_THAT(a.pieces[0].weld_zones[1].on_side->half,
             WithinRel(std::asin(40.0 / 60.0) + 0.5, 1e-9));
  CHECK_FALSE(a.pieces[2].weld_zones[1].on_side);
  // With tabs at its two sides, square to the plane of the arm.
  parts::Design tabs = d;
  tabs.arm->joins_on = parts::JoinsOn::tabs_on_sides;
  tabs.arm->join_width = 0.030;
  tabs.arm->join_length = 0.080;
  const parts::Piece lower = parts::assemble(tabs, {}).pieces[0];
  check_zones(lower, {{0.0, 0.075}, {0.5 - 0.055, 0.5}, {0.5 - 0.055, 0.5}});
  REQUIRE(lower.weld_zones[1].on_side);
  CHECK_THAT(lower.weld_zones[1].on_side->half, WithinRel(base::kPi / 6.0 + 0.5, 1e-9));
  CHECK_THAT(std::cos(lower.weld_zones[1].on_side->middle - lower.weld_zones[2].on_side->middle),
             WithinRel(-1.0, 1e-9));
  CHECK_THAT(
      std::cos(lower.weld_zones[1].on_side->middle - a.pieces[0].weld_zones[1].on_side->middle),
      WithinAbs(0.0, 1e-9));
  // Of the whole tube of 1 m, which buckles as one, the junction is in the middle.
  CHECK_THAT(a.pieces[0].farthest_weld(), WithinAbs(0.5, 1e-9));
  CHECK_THAT(a.pieces[1].farthest_weld(), WithinAbs(0.5, 1e-9));
  CHECK_THAT(a.pieces[2].farthest_weld(), WithinAbs(0.040, 1e-9));
}

TEST_CASE("the zone of a weld on the side of a tube is an arc of its outside", "[parts]") {
  const sections::Shape tube = sections::RoundTube{.outside = 0.060, .wall = 0.005};
  // 30 mm wide on a radius of 30: 30 degrees to each side, and 15 mm along the outside.
  const auto part = parts::side_of_outline(tube, 0.030, 0.4);
  REQUIRE(part.has_value());
  CHECK(part->middle == 0.4);
  CHECK_THAT(part->half, WithinRel(base::kPi / 6.0 + 0.015 / 0.030, 1e-12));
  // As wide as the tube, or with a zone that meets itself behind it, or not round: all round.
  CHECK(parts::side_of_outline(tube, 0.0599, 0.0).has_value());
  CHECK_FALSE(parts::side_of_outline(tube, 0.060, 0.0).has_value());
  const sections::Shape thin = sections::RoundTube{.outside = 0.009, .wall = 0.001};
  CHECK_FALSE(parts::side_of_outline(thin, 0.002, 0.0).has_value());
  CHECK_FALSE(parts::side_of_outline(sections::FlatBar{.depth = 0.06, .width = 0.01}, 0.01, 0.0));
}

TEST_CASE("zones on a side stand beside those all round", "[parts]") {
  const sections::OutlinePart top{1.0, 0.5};
  const auto zones = parts::weld_zones({{0.0, 0.02}, {0.04, 0.02, top}, {0.5, 0.0}}, 0.015, 1.0);
  REQUIRE(zones.size() == 3);
  CHECK_FALSE(zones[0].on_side);
  CHECK_THAT(zones[0].to, WithinAbs(0.035, 1e-12));
  REQUIRE(zones[1].on_side);
  CHECK(*zones[1].on_side == top);
  CHECK_THAT(zones[1].from, WithinAbs(0.005, 1e-12));
  parts::Piece piece{.part = "bar", .name = {}, .beams = {}, .material = parts_test::steel()};
  piece.material.haz_yield = kBeside;
  piece.center_line = 1.0;
  piece.weld_zones = zones;
  CHECK(piece.yield_at(0.03) == kBeside);
  CHECK(piece.yield_at(0.05) == kAway);
  CHECK(piece.least_yield_at(0.05) == kBeside);
  CHECK(piece.least_yield_at(0.08) == kAway);
  CHECK(piece.parent_holds_beside(0.05));
}

TEST_CASE("a tab named on a link lies where it is said, and what meets a tube on its side too",
          "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->stick = weakened(sections::RoundTube{.outside = 0.038, .wall = 0.005});
  d.lateral_link->bolt_to_weld = 0.020;
  parts::SideWeld tab;
  tab.on = "lateral_link";
  tab.from_start = 0.4;
  tab.length = 0.04;
  tab.width = 0.019;
  tab.toward = {.kind = parts::Toward::Kind::axis, .axis = parts::Axis::x};
  d.side_welds = {{"tab", tab}};
  const parts::Piece link = parts::assemble(d, {}).pieces.front();
  check_zones(link, {{0.0, 0.035}, {0.4 - 0.035, 0.4 + 0.035}, {0.865, 0.9}});
  REQUIRE(link.weld_zones[1].on_side);
  CHECK_THAT(link.weld_zones[1].on_side->half, WithinRel(base::kPi / 6.0 + 15.0 / 19.0, 1e-9));
  // x of the case is square to the level link: its own y axis, or against it.
  CHECK_THAT(std::abs(std::cos(link.weld_zones[1].on_side->middle)), WithinRel(1.0, 1e-9));
  d.side_welds[0].value.from_start = 0.95;
  CHECK_THROWS_WITH(parts::assemble(d, {}), Catch::Contains("side_welds.tab.from_start"));
  d.side_welds[0].value.from_start = 0.4;
  d.side_welds[0].value.toward.axis = parts::Axis::y;
  CHECK_THROWS_WITH(parts::assemble(d, {}), Catch::Contains("across"));

  parts::Design post = post_and_beam(1.0, 0.5);
  post.points.push_back({"middle", {0.0, 0.0, 0.5}});
  post.members[0].value.through = {"middle"};
  post.members[1].value.from = "middle";
  const std::vector<parts::WeldZone> zones = parts::assemble(post, {}).pieces[0].weld_zones;
  REQUIRE(zones.size() == 3);
  REQUIRE(zones[1].on_side);
  // A beam of 50 mm on a post of 80 mm.
  CHECK_THAT(zones[1].on_side->half, WithinRel(std::asin(25.0 / 40.0) + 15.0 / 40.0, 1e-9));
}

TEST_CASE("a weld that reaches farther never makes a place stronger", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->stick = weakened(sections::RoundTube{.outside = 0.038, .wall = 0.005});
  parts::Piece nearer;
  for (const double reach : {0.01, 0.02, 0.05, 0.2, 0.44, 0.5, 2.0}) {
    d.lateral_link->bolt_to_weld = reach;
    const parts::Piece piece = parts::assemble(d, {}).pieces.front();
    for (int i = 0; i <= 90 && !nearer.weld_zones.empty(); ++i) {
      CHECK(piece.yield_at(0.01 * i) <= nearer.yield_at(0.01 * i));
    }
    if (!nearer.weld_zones.empty()) CHECK(piece.farthest_weld() >= nearer.farthest_weld());
    nearer = piece;
  }
}

}  // namespace weld_zone_test
