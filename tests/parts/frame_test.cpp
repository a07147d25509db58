// A bracket on a frame of two rails and cross members. Expected: statics and closed forms of
// beams and shafts, derived here (no published source), in round invented sizes.
#include "parts/frame.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "parts/rail_root.hpp"

namespace frame_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kYoung = 200.0e9;  // of A36, AISC
constexpr double kShear = kYoung / 2.6;
constexpr double kAhead = 0.25;
constexpr double kBehind = 0.45;
constexpr double kApart = 0.8;

/// Plates that reach both corners of a boxed rail between two stout cross members, where both rails
/// are clamped.
parts::Design on_frame() {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->rail = {.boxed = true, .width = 0.070, .height = 0.150, .wall = 0.004};
  d.frame.emplace();
  d.frame->rails_apart = kApart;
  d.frame->cross_member = parts_test::tube(0.060, 0.003);
  d.frame->cross_members_at = {kAhead, -kBehind};
  d.frame->held_at = {kAhead, -kBehind};
  d.frame->held = parts::RailHold::clamped;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  return d;
}

fea::Solution solved(const parts::Assembly& a, const fea::Loads& loads) {
  return fea::solve(fea::factor(a.model), loads, {.method = fea::Method::linear});
}

/// Moment about the rail over the root's turning.  [N m/rad]
double root_twist(const parts::Design& d, parts::Bound rail = parts::Bound::given) {
  const parts::Assembly a = parts::assemble(d, {.name = "", .rail = rail, .bushings = {}});
  fea::Loads loads;
  loads.nodes.push_back({.node = a.root->node,
                         .offset_g = fea::Vector3::Zero(),
                         .force_g = fea::Vector3::Zero(),
                         .moment_g = {1000.0, 0.0, 0.0}});
  return 1000.0 / solved(a, loads).placement(a.root->node)[3];
}

sections::AreaProps rail_of(const parts::Design& d) {
  return sections::area_props(parts::rail_stick(d).shape);
}

}  // namespace

// G J / a + G J / b: a shaft held at both ends.
TEST_CASE("a rail clamped beside the bracket twists as a shaft", "[parts][frame]") {
  const parts::Design d = on_frame();
  const double expected = kShear * rail_of(d).torsion * (1.0 / kAhead + 1.0 / kBehind);
  CHECK_THAT(root_twist(d), WithinRel(expected, 2e-3));
  CHECK(parts::stiffness_sets(d).front().rail == parts::Bound::given);
}

// 15 and 2000 kN m/rad: proposal, no source.
TEST_CASE("a frame's root stiffness lies between the bounds of an unknown rail", "[parts][frame]") {
  for (const bool boxed : {true, false}) {
    for (const double depth : {0.1, 0.05}) {
      INFO(boxed << " " << depth);
      parts::Design d = on_frame();
      d.bracket->rail.boxed = boxed;
      d.bracket->depth_at_rail = d.bracket->depth_at_bolt = depth;
      d.frame->held_at = {1.2, -1.0};
      d.frame->held = parts::RailHold::pinned;
      REQUIRE(parts::frame_root_is_bounded(d) == (!boxed || depth < 0.06));
      const double soft = root_twist(d, parts::Bound::low);
      const double stiff = root_twist(d, parts::Bound::high);
      CHECK(soft >= 0.5 * 15.0e3);
      CHECK(soft <= stiff * (1.0 + 1e-9));
      CHECK(stiff <= 2000.0e3);
      parts::Design unknown = d;
      unknown.frame.reset();
      CHECK(parts::root_stiffness(*unknown.bracket, parts::Bound::low).value <= stiff);
    }
  }
}

// In series with the rail's own twist.
TEST_CASE("plates that end within a wall bend it", "[parts][frame]") {
  parts::Design d = on_frame();
  d.bracket->depth_at_rail = d.bracket->depth_at_bolt = 0.05;
  const double rail = kShear * rail_of(d).torsion * (1.0 / kAhead + 1.0 / kBehind);
  const double wall = parts::wall_root(*d.bracket);
  CHECK_THAT(root_twist(d, parts::Bound::low), WithinRel(1.0 / (1.0 / rail + 1.0 / wall), 1e-3));
  CHECK_THAT(root_twist(d, parts::Bound::high), WithinRel(rail, 2e-3));
}

// Exact elements of G J phi'' - E Cw phi'''' = 0, tested on their own.
TEST_CASE("an open rail of a frame twists as one that warps", "[parts][frame]") {
  parts::Design d = on_frame();
  d.bracket->rail = {.boxed = false, .width = 0.065, .height = 0.180, .wall = 0.0045};
  d.bracket->welded_to = {.bottom = true, .inner_side = true, .outer_side = true};
  parts::Bracket between = *d.bracket;
  between.cross_member_ahead = kAhead;
  between.cross_member_behind = kBehind;
  // Beside it, the load off the shear center bends the rail a little.
  CHECK_THAT(root_twist(d, parts::Bound::low),
             WithinRel(parts::open_rail_root(between, false), 0.02));
  CHECK_THAT(root_twist(d, parts::Bound::high),
             WithinRel(parts::open_rail_root(between, true), 0.02));
  const parts::Assembly a = parts::assemble(d, {});
  const auto rail = std::find_if(a.pieces.begin(), a.pieces.end(),
                                 [](const parts::Piece& p) { return p.name == "left rail"; });
  REQUIRE(rail != a.pieces.end());
  REQUIRE(rail->warping.has_value());
  CHECK_FALSE(rail->column);
  CHECK(rail->warping->twist_held_at.size() == 2);
}

// Half of the load bends both rails alike; the other half up on one and down on the other, which
// the cross member between them resists by bending and both rails by twisting.
TEST_CASE("two rails share a load through a cross member as a hand solution says",
          "[parts][frame]") {
  parts::Design d = on_frame();
  constexpr double kSpan = 2.4;
  constexpr double kLoad = 10.0e3;
  d.frame->cross_member = parts_test::tube(0.120, 0.010);
  d.frame->cross_members_at = {0.0};
  d.frame->held_at = {0.5 * kSpan, -0.5 * kSpan};
  const parts::Assembly a = parts::assemble(d, {});
  fea::Loads loads;
  loads.nodes.push_back({.node = a.frame->rail,
                         .offset_g = fea::Vector3::Zero(),
                         .force_g = {0.0, 0.0, kLoad},
                         .moment_g = fea::Vector3::Zero()});
  const fea::Solution s = solved(a, loads);

  const sections::AreaProps rail = rail_of(d);
  const double bend = 1.0 / (std::pow(kSpan, 3) / (192.0 * kYoung * rail.iyy) +
                             kSpan / (4.0 * kShear * rail.shear_z));
  const double twist = 4.0 * kShear * rail.torsion / kSpan;
  const sections::AreaProps cross = sections::area_props(d.frame->cross_member.shape);
  const double e = d.frame->cross_member.material.elastic;
  const double g = d.frame->cross_member.material.shear_modulus();
  const double phi = 12.0 * e * cross.iyy / (g * cross.shear_z * kApart * kApart);
  const double turn = 6.0 * e * cross.iyy / (kApart * (1.0 + phi));  // end moment per turn
  // v on one rail, -v on the other; both turn by t against the chord's 2 v / w.
  // twist t + turn (t - 2 v / w) = 0; bend v - (2 / w) turn (t - 2 v / w) = P / 2
  const double per_v = turn / (twist + turn) * 2.0 / kApart;  // t / v
  const double v = 0.5 * kLoad / (bend + 2.0 / kApart * turn * (2.0 / kApart - per_v));
  const double both = 0.5 * kLoad / bend;
  CHECK_THAT(s.placement(a.frame->rail)[2], WithinRel(both + v, 1e-3));
  CHECK_THAT(s.placement(a.frame->opposite_rail)[2], WithinRel(both - v, 5e-3));
  CHECK(v < 0.9 * both);
}

TEST_CASE("a brace ends on the opposite rail, and the frame's holds take all", "[parts][frame]") {
  parts::Design d = on_frame();
  d.brace.emplace();
  d.brace->stick = parts_test::tube(0.032, 0.003);
  d.brace->meets_bracket.above_bolt = 0.05;
  const parts::Brace placed = parts::placed_brace(d);
  CHECK_THAT(placed.length, WithinRel(std::hypot(0.8 - 0.035, 0.2 + 0.075), 1e-12));
  CHECK_THAT(std::tan(placed.slope), WithinRel(0.275 / 0.765, 1e-12));
  const parts::Assembly a = parts::assemble(d, {});
  const fea::Solution s = solved(a, parts::put(a, d, parts::design_cases(d).front()));
  fea::Vector3 sum(0.0, 15.0e3, 0.0);
  for (const parts::NamedNode& held : a.held) {
    CHECK(held.name != "brace far end");
    sum += s.reaction(held.node).head<3>();
  }
  CHECK(sum.norm() < 1e-6 * 15.0e3);
  // Link and axle take nothing along the truck or upward: the opposite rail moves with the brace.
  CHECK(std::abs(s.placement(a.frame->opposite_rail)[1]) > 1e-6);
  // Given the same, it is the same.
  parts::Design given = d;
  given.brace->length = placed.length;
  given.brace->slope = placed.slope;
  const auto [across, up] = parts::brace_end_off(given);
  CHECK_THAT(across, WithinAbs(-0.035, 1e-12));
  CHECK_THAT(up, WithinAbs(0.0, 1e-12));
}

}  // namespace frame_test
