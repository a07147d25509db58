// A lateral link whose two ends differ, and the weight of a bent one, by statics.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"
#include "parts/put_loads.hpp"

namespace link_ends_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// A bushing that is welded on at the frame, a rod end screwed in at the axle.
parts::Design mixed_ends() {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->stick.material.haz_yield = 250.0e6;
  d.lateral_link->ends = {.joint = {.kind = parts::JointKind::bushing}, .welded = true};
  d.lateral_link->axle_end = {.joint = {.kind = parts::JointKind::ball}, .welded = false};
  d.lateral_link->static_rating = 50.0e3;
  return d;
}

}  // namespace

TEST_CASE("a link's end at the axle may be made another way than the one at the frame", "[parts]") {
  const parts::Design d = mixed_ends();
  CHECK(parts::bushing_groups(d) == std::vector<std::string>{"link bushings"});
  const parts::Assembly built = parts::assemble(d, {});
  REQUIRE(built.joints.size() == 2);
  CHECK(built.joints[0].where == "frame bolt");
  CHECK(built.joints[0].kind == parts::JointKind::bushing);
  CHECK(built.joints[1].where == "axle bolt");
  CHECK(built.joints[1].kind == parts::JointKind::ball);
  REQUIRE(built.rated_joints.size() == 1);
  CHECK(built.rated_joints[0].where == "axle end");
  const parts::Piece& link = built.pieces.front();
  CHECK_FALSE(link.spin_held);  // the bushing holds it
  // Welded at the frame alone: the eye as far as it is wide, 15 mm beyond.
  REQUIRE(link.weld_zones.size() == 1);
  CHECK(link.weld_zones[0].from == 0.0);
  CHECK_THAT(link.weld_zones[0].to, WithinAbs(0.053, 1e-9));
}

TEST_CASE("without an end of its own the axle's is as the frame's", "[parts]") {
  parts::Design d = mixed_ends();
  d.lateral_link->axle_end = parts::LateralLink{}.axle_end;
  CHECK(parts::assemble(d, {}).rated_joints.empty());
  CHECK(parts::assemble(d, {}).pieces.front().weld_zones.size() == 2);
}

// Two legs of a V lie half of its offset off the chord: weight x offset / 2 turns the link about
// its chord, weight x chord / 8 bends it at mid-length, half of it stands at each end.
TEST_CASE("a bent link's weight acts off the line between its bolts", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->ends = {.joint = {.kind = parts::JointKind::pin}, .welded = true};
  d.lateral_link->bend = {.off_straight = 0.100, .toward = parts::BendToward::forward};
  d.self_weight = {{"dead", parts::SelfWeight{}}};
  const parts::Assembly built = parts::assemble(d, {});
  const fea::Solution solved =
      fea::solve(fea::factor(built.model), parts::put(built, d, parts::design_cases(d).front()),
                 {.method = fea::Method::linear});
  const double offset = 0.100 + 0.9e-3;  // with the bow of L / 1000
  const double length = 2.0 * std::hypot(0.45, offset);
  const double area = base::kPi / 4.0 * (0.038 * 0.038 - 0.028 * 0.028);
  const double weight = 7850.0 * area * length * 9.80665;
  double turning = 0.0;
  for (const parts::NamedNode& held : built.held) {
    const fea::Vector6 reaction = solved.reaction(held.node);
    CHECK_THAT(reaction[2], WithinRel(0.5 * weight, 1e-6));
    turning += reaction[4];
  }
  // The weight pulls the middle, ahead of the chord, down: about y.
  CHECK_THAT(std::abs(turning), WithinRel(weight * 0.5 * offset, 1e-6));
  const parts::PieceBeam& middle =
      built.pieces.front().beams[built.pieces.front().beams.size() / 2];
  const fea::Vector12 ends = solved.end_forces(middle.beam);
  const fea::Vector3 moment_g = solved.axes(middle.beam).transpose() * ends.segment<3>(3);
  CHECK_THAT(std::abs(moment_g.x()), WithinRel(weight * 0.9 / 8.0, 1e-3));
}

TEST_CASE("a bolt through two tabs spans the gap between them", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->ends.joint.kind = parts::JointKind::pin;
  d.lateral_link->bolt.thread.name = "M16 x 2";
  d.lateral_link->bolt.loose_stack = true;
  parts::TabSpec& tabs = d.lateral_link->axle_tabs;
  tabs.plates.count = 2;
  tabs.plates.thickness = 0.006;
  tabs.plates.material = parts_test::steel();
  tabs.plates.material.id = "S355";
  const auto stack = [&] { return parts::assemble(d, {}).bolts.at(1).stack; };
  CHECK_FALSE(stack());  // the gap is not given
  tabs.gap = 0.040;
  REQUIRE(stack());
  CHECK(stack()->plate == 0.006);
  CHECK(stack()->eye == 0.040);
  CHECK(stack()->loose);
  tabs.plates.count = 1;
  CHECK_FALSE(stack());
}

}  // namespace link_ends_test
