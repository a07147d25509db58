// Linear frames against published results. "from memory": the numbers were recalled from the
// named source and recomputed, not read in it. Units are the source's.

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using fea_test::section;

namespace {

// in, lb: the inputs of the three single beams
constexpr double kSpan = 40.0;
const fea::Elastic kInchSteel{.young = 29.0e6, .shear = 11.2e6};
const sections::AreaProps kBar = section(2.0, 0.5, 0.5, 0.8);

}  // namespace

TEST_CASE("cantilever with an end load", "[fea][published]") {
  // AISC Manual Table 3-23, cantilever with a load at the free end: P L, P L^3 / 3EI, P L^2 / 2EI
  // (from memory). Four figures are given.
  fea::Model model;
  const Chain beam = chain(model, Vector3::Zero(), {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel);
  fea_test::clamp(model, beam.nodes[0]);
  const fea::Solution s = fea_test::linear(model, push(beam.nodes[1], {0.0, 0.0, -1000.0}));
  CHECK_THAT(s.placement(beam.nodes[1])(2), WithinRel(-1.4713, 1e-4));
  CHECK_THAT(s.placement(beam.nodes[1])(4), WithinRel(0.055172, 1e-4));
  CHECK_THAT(s.reaction(beam.nodes[0])(2), WithinRel(1000.0, 1e-12));
  // Up on the cut's positive face at the wall is compression below: My = int sigma z dA > 0.
  CHECK_THAT(s.forces_at(beam.beams[0], 0.0).my, WithinRel(40000.0, 1e-12));
  CHECK_THAT(s.forces_at(beam.beams[0], kSpan).my, WithinAbs(0.0, 1e-7));
  CHECK(s.residual() < 1e-12);
}

TEST_CASE("beam fixed at both ends with a load at the center", "[fea][published]") {
  // AISC Manual Table 3-23: P L / 8 at the ends and the center, P L^3 / 192EI (from memory).
  fea::Model model;
  const Chain beam = chain(model, Vector3::Zero(), {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel);
  fea_test::clamp(model, beam.nodes[0]);
  fea_test::clamp(model, beam.nodes[1]);
  fea::Loads loads;
  loads.points.push_back(
      {.beam = beam.beams[0], .at = 0.5 * kSpan, .force_g = {0.0, 0.0, -1000.0}});
  const fea::Solution s = fea_test::linear(model, loads);
  CHECK_THAT(s.forces_at(beam.beams[0], 0.0).my, WithinRel(5000.0, 1e-12));
  CHECK_THAT(s.forces_at(beam.beams[0], 0.5 * kSpan).my, WithinRel(-5000.0, 1e-12));

  fea::Model split;
  const Chain halves = chain(split, Vector3::Zero(), {kSpan, 0.0, 0.0}, 2, kBar, kInchSteel);
  fea_test::clamp(split, halves.nodes[0]);
  fea_test::clamp(split, halves.nodes[2]);
  const fea::Solution t = fea_test::linear(split, push(halves.nodes[1], {0.0, 0.0, -1000.0}));
  CHECK_THAT(t.placement(halves.nodes[1])(2), WithinRel(-0.022989, 1e-4));
}

TEST_CASE("propped cantilever with a uniform load", "[fea][published]") {
  // AISC Manual Table 3-23: 3wL/8, 5wL/8, wL^2/8, 9wL^2/128, wL^4/184.6EI at 0.4215 L from the
  // prop (from memory).
  const double w = 50.0;
  fea::Model model;
  const Chain beam = chain(model, Vector3::Zero(), {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel);
  fea_test::clamp(model, beam.nodes[0]);
  fea_test::hold(model, beam.nodes[1], {false, true, true, true, false, true});
  fea::Loads loads;
  loads.lines.push_back(
      {.beam = beam.beams[0], .at_from_g = {0.0, 0.0, -w}, .at_to_g = {0.0, 0.0, -w}});
  const fea::Solution s = fea_test::linear(model, loads);
  CHECK_THAT(s.reaction(beam.nodes[1])(2), WithinRel(750.0, 1e-12));
  CHECK_THAT(s.reaction(beam.nodes[0])(2), WithinRel(1250.0, 1e-12));
  CHECK_THAT(s.forces_at(beam.beams[0], 0.0).my, WithinRel(10000.0, 1e-12));
  CHECK_THAT(s.forces_at(beam.beams[0], 0.625 * kSpan).my, WithinRel(-5625.0, 1e-12));

  const double at = (1.0 - 0.4215) * kSpan;
  fea::Model split;
  const Chain left = chain(split, Vector3::Zero(), {at, 0.0, 0.0}, 1, kBar, kInchSteel);
  const Chain right =
      chain(split, {at, 0.0, 0.0}, {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel, left.nodes[1]);
  fea_test::clamp(split, left.nodes[0]);
  fea_test::hold(split, right.nodes[1], {false, true, true, true, false, true});
  fea::Loads halves;
  for (const fea::BeamId id : {left.beams[0], right.beams[0]}) {
    halves.lines.push_back({.beam = id, .at_from_g = {0.0, 0.0, -w}, .at_to_g = {0.0, 0.0, -w}});
  }
  CHECK_THAT(fea_test::linear(split, halves).placement(left.nodes[1])(2),
             WithinRel(-0.04782, 2e-4));
}

TEST_CASE("short tube cantilever with shear give", "[fea][published]") {
  // Timoshenko beam with Cowper's coefficient, J. Appl. Mech. 33 (1966): P L^3 / 3EI +
  // P L / (kappa A G), kappa = 0.53703 for m = 0.84 (formula value, from memory).
  sections::AreaProps tube = fea_test::tube(1.5, 0.120);
  tube.shear_y = tube.shear_z = 0.53703 * tube.area;
  const fea::Elastic elastic{.young = 30.0e6, .shear = 11.5e6};
  for (const int n : {1, 3}) {
    fea::Model model;
    const Chain beam = chain(model, Vector3::Zero(), {6.0, 0.0, 0.0}, n, tube, elastic);
    fea_test::clamp(model, beam.nodes.front());
    const fea::Solution s = fea_test::linear(model, push(beam.nodes.back(), {0.0, 1000.0, 1000.0}));
    CHECK_THAT(s.placement(beam.nodes.back())(1), WithinRel(0.021101, 3e-5));
    CHECK_THAT(s.placement(beam.nodes.back())(2), WithinRel(0.021101, 3e-5));
  }
}

TEST_CASE("plane portal with fixed feet", "[fea][published]") {
  // Logan, A First Course in the Finite Element Method, Example 5.1 (from memory; the moments are
  // from a re-run, printed 376000, 223000, 375000). x right, z up here; counterclockwise about -y.
  const fea::Elastic elastic{.young = 30.0e6, .shear = 11.5e6};
  const sections::AreaProps post = section(10.0, 200.0, 200.0, 100.0);
  const sections::AreaProps rail = section(10.0, 100.0, 100.0, 100.0);
  fea::Model model;
  const Chain left = chain(model, {0.0, 0.0, 0.0}, {0.0, 0.0, 120.0}, 1, post, elastic);
  const Chain top =
      chain(model, {0.0, 0.0, 120.0}, {120.0, 0.0, 120.0}, 1, rail, elastic, left.nodes[1]);
  const Chain right =
      chain(model, {120.0, 0.0, 120.0}, {120.0, 0.0, 0.0}, 1, post, elastic, top.nodes[1]);
  fea_test::clamp(model, left.nodes[0]);
  fea_test::clamp(model, right.nodes[1]);
  const fea::Loads loads = push(left.nodes[1], {10000.0, 0.0, 0.0}) +
                           push(top.nodes[1], Vector3::Zero(), {0.0, -5000.0, 0.0});
  const fea::Solution s = fea_test::linear(model, loads);
  const Vector6 two = s.placement(top.nodes[0]);
  const Vector6 three = s.placement(top.nodes[1]);
  CHECK_THAT(two(0), WithinRel(0.21136, 1e-3));
  CHECK_THAT(two(2), WithinRel(0.0014813, 1e-3));
  CHECK_THAT(-two(4), WithinRel(-0.001526, 1e-3));
  CHECK_THAT(three(0), WithinRel(0.20936, 1e-3));
  CHECK_THAT(three(2), WithinRel(-0.0014813, 1e-3));
  CHECK_THAT(-three(4), WithinRel(-0.001486, 1e-3));
  CHECK_THAT(std::abs(s.end_forces(left.beams[0])(4)), WithinRel(375803.0, 1e-4));
  CHECK_THAT(std::abs(s.end_forces(left.beams[0])(10)), WithinRel(223200.0, 1e-4));
  CHECK_THAT(std::abs(s.end_forces(right.beams[0])(10)), WithinRel(374798.0, 1e-4));
}

TEST_CASE("space frame of three members", "[fea][published]") {
  // Logan, A First Course in the Finite Element Method, space-frame example (5.9 in the 4th and 5th
  // ed.) (from memory). in, kip.
  const fea::Elastic elastic{.young = 30000.0, .shear = 10000.0};
  const sections::AreaProps member = section(10.0, 100.0, 100.0, 50.0);
  fea::Model model;
  const NodeId one = model.add(fea::Node{.at_g = Vector3::Zero()});
  std::vector<fea::BeamId> beams;
  for (const Vector3& foot :
       {Vector3(-100.0, 0.0, 0.0), Vector3(0.0, 0.0, -100.0), Vector3(0.0, -100.0, 0.0)}) {
    const Chain leg = chain(model, foot, Vector3::Zero(), 1, member, elastic, std::nullopt, one);
    fea_test::clamp(model, leg.nodes[0]);
    beams.push_back(leg.beams[0]);
  }
  const fea::Solution s =
      fea_test::linear(model, push(one, {0.0, -50.0, 0.0}, {-1000.0, 0.0, 0.0}));
  const Vector6 moved = s.placement(one);
  const Vector6 expected =
      (Vector6() << 7.0983e-5, -0.013995, -2.3519e-3, -3.9961e-3, 1.7801e-5, -1.0334e-4).finished();
  for (Eigen::Index i = 0; i < 6; ++i) CHECK_THAT(moved(i), WithinRel(expected(i), 1e-4));
  CHECK_THAT(std::abs(s.end_forces(beams[0])(3)), WithinRel(19.98, 1e-3));
  CHECK_THAT(std::abs(s.end_forces(beams[0])(5)), WithinRel(18.991, 1e-3));
}
