// Hand check of a radius arm under braking: statics of the arm and its two axle bolts, common
// practice, no source (each number follows from the formula beside it).
#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/put_loads.hpp"

using Catch::Matchers::WithinRel;

namespace {

/// Axle at 0.40 m; arm pivots 0.90 m behind and 0.50 m high; bolts 0.20 m apart at axle height.
parts::Design braking_design() {
  parts::Design d;
  d.vehicle.emplace();
  d.vehicle->axle_weight = 16.0e3;
  d.vehicle->tire = 0.8;
  d.vehicle->hub_height = 0.4;
  d.vehicle->track = 1.6;
  d.axle.emplace();
  d.axle->coil_spacing = 0.9;
  d.axle->coil_rate = 40.0e3;
  d.points = {{"rear bolt", {-0.1, 0.4, 0.4}},
              {"front bolt", {0.1, 0.4, 0.4}},
              {"pivot", {-0.9, 0.4, 0.5}},
              {"link frame", {0.0, 0.45, 0.4}},
              {"link axle", {0.0, -0.45, 0.4}}};
  d.arm.emplace();
  d.arm->axle_lower = "rear bolt";
  d.arm->axle_upper = "front bolt";
  d.arm->frame = "pivot";
  d.arm->joins_at = 0.2;
  // Far stiffer than the bushings, so that the two bolts share as on a rigid arm.
  d.arm->lower = parts_test::tube(0.120, 0.020);
  d.arm->upper = parts_test::tube(0.120, 0.020);
  parts::JointSpec bushing{.kind = parts::JointKind::bushing,
                           .grade = parts::BushingGrade::given,
                           .axis = parts::Axis::y,
                           .rates = {1.0e6, 1.0e6, 1.0e6, 100.0, 0.0, 100.0}};
  d.arm->axle_joint = bushing;
  d.arm->frame_joint = bushing;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->frame_bolt = "link frame";
  d.lateral_link->axle_bolt = "link axle";
  return d;
}

}  // namespace

TEST_CASE("braking is carried by the arm's pivot and a couple in its axle bolts", "[parts]") {
  const parts::Design d = braking_design();
  const parts::Assembly assembly = parts::assemble(d, {});
  const parts::DesignCase braking{.name = "braking",
                                  .abuse = false,
                                  .basis = {},
                                  .pushes = {{loads::Role::left_contact, {-10.0e3, 0.0, 8.0e3}},
                                             {loads::Role::right_contact, {-10.0e3, 0.0, 8.0e3}}},
                                  .forces = {}};
  const fea::Solution s = fea::solve(fea::factor(assembly.model), parts::put(assembly, d, braking),
                                     {.method = fea::Method::linear});
  // V = (Fx R + 0.1 Fx) / 0.9 = 5.556 kN; pivot resultant 11.44 kN.
  for (const parts::NamedNode& held : assembly.held) {
    if (held.name.find("frame joint") == std::string::npos) continue;
    const fea::Vector6 r = s.reaction(held.node);
    CHECK_THAT(std::abs(r[0]), WithinRel(10.0e3, 1e-3));
    CHECK_THAT(std::abs(r[2]), WithinRel(5.556e3, 2e-3));
    CHECK_THAT(r.head<3>().norm(), WithinRel(11.44e3, 2e-3));
  }
  // Bolts: 5 kN along each, 20 +- 2.778 kN vertical: resultants 23.32 and 17.93 kN. Soft bushings
  // against a stiff arm; the arm's own give leaves under 1 %.
  double largest = 0.0;
  double smallest = 1.0e9;
  for (const parts::Piece& piece : assembly.pieces) {
    if (piece.part != "arm, left") continue;
    if (piece.name.find("behind") != std::string::npos) continue;
    const double force = s.end_forces(piece.beams.front().beam).head<3>().norm();
    largest = std::max(largest, force);
    smallest = std::min(smallest, force);
  }
  CHECK_THAT(largest, WithinRel(23.32e3, 0.01));
  CHECK_THAT(smallest, WithinRel(17.93e3, 0.01));
}

TEST_CASE("nothing is loaded at ride height", "[parts]") {
  const parts::Design d = braking_design();
  const parts::Assembly assembly = parts::assemble(d, {});
  const parts::DesignCase rest{.name = "rest",
                               .abuse = false,
                               .basis = {},
                               .pushes = loads::static_pushes(parts::to_vehicle(*d.vehicle)),
                               .forces = {}};
  const fea::Solution s = fea::solve(fea::factor(assembly.model), parts::put(assembly, d, rest));
  CHECK(s.placement(*assembly.axle).norm() < 1e-9);
}
