// Heat, wrong fit, own weight and settling supports against textbook closed forms.
// Sources: Roark's Formulas for Stress and Strain, 7th ed., Table 8.1 (temperature rows) and the
// slope-deflection equations of any structural analysis text (Hibbeler, Structural Analysis); all
// from memory.

#include <cmath>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "fea/buckling.hpp"
#include "tests/fea/build_frames.hpp"

namespace imposed_motion_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::BeamId;
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;

namespace {

const fea::Elastic kElastic{.young = 2.0e5, .shear = 8.0e4};
const sections::AreaProps kBar = fea_test::section(3.0, 0.7, 0.2, 0.4);
constexpr double kLength = 20.0;
constexpr double kHeat = 12.0e-6 * 40.0;  // expansion times warming  [-]

struct Bar {
  fea::Model model;
  Chain chain;
};

/// Along x, both ends fixed.
Bar fixed_bar(int n = 1) {
  Bar out;
  out.chain = chain(out.model, Vector3::Zero(), {kLength, 0.0, 0.0}, n, kBar, kElastic);
  fea_test::clamp(out.model, out.chain.nodes.front());
  fea_test::clamp(out.model, out.chain.nodes.back());
  return out;
}

fea::Loads strained(const Chain& chain, double stretch, double bend_y, double bend_z) {
  fea::Loads loads;
  for (const BeamId id : chain.beams) {
    loads.strains.push_back({.beam = id, .stretch = stretch, .bend_y = bend_y, .bend_z = bend_z});
  }
  return loads;
}

fea::Loads moved(NodeId node, const Vector6& by_g) {
  fea::Loads loads;
  loads.moves.push_back({.node = node, .by_g = by_g});
  return loads;
}

}  // namespace

TEST_CASE("a bar that cannot grow is pressed by heat", "[fea][published][strain]") {
  // N = -E A alpha dT.
  for (const int n : {1, 3}) {
    const Bar bar = fixed_bar(n);
    const fea::Solution s = fea_test::linear(bar.model, strained(bar.chain, kHeat, 0.0, 0.0));
    for (const BeamId id : bar.chain.beams) {
      CHECK_THAT(s.forces_at(id, 1.0).n, WithinRel(-2.0e5 * 3.0 * kHeat, 1e-12));
    }
    CHECK_THAT(s.reaction(bar.chain.nodes.front())(0), WithinRel(2.0e5 * 3.0 * kHeat, 1e-12));
    CHECK(s.placement(bar.chain.nodes[1]).norm() < 1e-12);
    CHECK(s.residual() < 1e-12);
  }
}

TEST_CASE("a bar free to grow is not stressed", "[fea][published][strain]") {
  Bar bar = fixed_bar(2);
  bar.model.supports.pop_back();
  const fea::Solution s = fea_test::linear(bar.model, strained(bar.chain, kHeat, 1.0e-4, 0.0));
  const NodeId tip = bar.chain.nodes.back();
  CHECK_THAT(s.placement(tip)(0), WithinRel(kHeat * kLength, 1e-12));
  // Warmer on the +z side: the top grows, the tip sinks by kappa L^2 / 2 and turns by kappa L.
  CHECK_THAT(s.placement(tip)(2), WithinRel(-0.5e-4 * kLength * kLength, 1e-12));
  CHECK_THAT(s.placement(tip)(4), WithinRel(1.0e-4 * kLength, 1e-12));
  for (const double x : {0.0, 3.0, 10.0}) {
    CHECK_THAT(s.forces_at(bar.chain.beams[0], x).n, WithinAbs(0.0, 1e-9));
    CHECK_THAT(s.forces_at(bar.chain.beams[0], x).my, WithinAbs(0.0, 1e-9));
  }
}

TEST_CASE("heat through the depth of a beam", "[fea][published][strain]") {
  // Curvature alpha dT / h: M = E I alpha dT / h with both ends fixed (Roark case 6d), 3/2 of it at
  // the wall of a propped beam (6c), a rise of alpha dT L^2 / (8 h) at mid-span on two supports.
  const double kappa = 12.0e-6 * 30.0 / 0.8;
  const Bar fixed = fixed_bar(2);
  fea::Solution s = fea_test::linear(fixed.model, strained(fixed.chain, 0.0, kappa, -kappa));
  CHECK_THAT(s.forces_at(fixed.chain.beams[0], 4.0).my, WithinRel(-2.0e5 * 0.7 * kappa, 1e-11));
  CHECK_THAT(s.forces_at(fixed.chain.beams[1], 4.0).mz, WithinRel(2.0e5 * 0.2 * kappa, 1e-11));

  Bar propped = fixed_bar(2);
  propped.model.supports.back().held = {true, true, true, true, false, true};
  s = fea_test::linear(propped.model, strained(propped.chain, 0.0, kappa, 0.0));
  CHECK_THAT(s.forces_at(propped.chain.beams[0], 0.0).my,
             WithinRel(-1.5 * 2.0e5 * 0.7 * kappa, 1e-11));

  Bar simple = fixed_bar(2);
  simple.model.supports.front().held = {true, true, true, true, false, true};
  simple.model.supports.back().held = {false, true, true, true, false, true};
  s = fea_test::linear(simple.model, strained(simple.chain, 0.0, kappa, 0.0));
  CHECK_THAT(s.placement(simple.chain.nodes[1])(2),
             WithinRel(kappa * kLength * kLength / 8.0, 1e-11));
}

TEST_CASE("three bars to one bolt, the middle one cut too long", "[fea][published][strain]") {
  // Outer bars at 30 degrees to the middle one, the same E A: the force in the middle bar is
  // -E A d / L * 2 c^3 / (1 + 2 c^3), c = cos 30 (Timoshenko, Strength of Materials Part I, art. on
  // assembly stresses; from memory).
  const double angle = 30.0 * 3.14159265358979323846 / 180.0;
  fea::Model model;
  const NodeId bolt = model.add(fea::Node{.at_g = {0.0, 0.0, -10.0}});
  fea_test::hold(model, bolt, {false, true, false, true, true, true});
  for (const double side : {-1.0, 0.0, 1.0}) {
    const NodeId top = model.add(fea::Node{.at_g = {side * 10.0 * std::tan(angle), 0.0, 0.0}});
    fea_test::clamp(model, top);
    fea::Joint swivel = fea_test::ball();
    swivel.axes_g = fea::Matrix3::Identity();
    swivel.stiffness[3] = swivel.stiffness[5] = fea::kRigid;  // turns in the plane alone
    model.add(fea::Beam{.a = {.node = top, .joint = swivel},
                        .b = {.node = bolt, .joint = swivel},
                        .section = kBar,
                        .elastic = kElastic});
  }
  fea::Loads loads;
  loads.strains.push_back({.beam = BeamId{1}, .stretch = 0.004 / 10.0});
  const fea::Solution s = fea_test::linear(model, loads);
  const double c3 = std::pow(std::cos(angle), 3);
  CHECK_THAT(s.forces_at(BeamId{1}, 0.0).n,
             WithinRel(-2.0e5 * 3.0 * 0.004 / 10.0 * 2.0 * c3 / (1.0 + 2.0 * c3), 1e-10));
}

TEST_CASE("own weight hangs and bends", "[fea][published][weight]") {
  // Hanging rod: rho g L^2 / (2 E); beam fixed at both ends: M = w L^2 / 12 at the walls.
  constexpr double kDensity = 7.85e-3;
  fea::Model rod;
  const Chain hanging = chain(rod, Vector3::Zero(), {0.0, 0.0, -kLength}, 2, kBar, kElastic);
  for (fea::Beam& beam : rod.beams) beam.density = kDensity;
  fea_test::clamp(rod, hanging.nodes.front());
  fea::Loads weight;
  weight.gravity_g = {0.0, 0.0, -9.80665};
  fea::Solution s = fea_test::linear(rod, weight);
  CHECK_THAT(s.placement(hanging.nodes.back())(2),
             WithinRel(-kDensity * 9.80665 * kLength * kLength / (2.0 * 2.0e5), 1e-12));
  CHECK_THAT(s.forces_at(hanging.beams[0], 0.0).n,
             WithinRel(kDensity * 9.80665 * 3.0 * kLength, 1e-12));

  Bar beam = fixed_bar();
  beam.model.beams[0].density = kDensity;
  s = fea_test::linear(beam.model, weight * 2.0);
  const double w = 2.0 * kDensity * 9.80665 * 3.0;
  CHECK_THAT(s.forces_at(BeamId{0}, 0.0).my, WithinRel(-w * kLength * kLength / 12.0, 1e-11) ||
                                                 WithinRel(w * kLength * kLength / 12.0, 1e-11));
  CHECK_THAT(s.forces_at(BeamId{0}, 10.0).vz, WithinAbs(0.0, 1e-9));
  beam.model.beams[0].density = base::kUnset;
  CHECK(fea_test::linear(beam.model, weight).reaction(NodeId{0}).norm() == 0.0);
}

TEST_CASE("supports that settle", "[fea][published][settlement]") {
  // Both ends fixed: M = 6 E I d / L^2, V = 12 E I d / L^3. Turned by t: 4 and 2 E I t / L.
  const double ei = 2.0e5 * 0.7;
  const Bar bar = fixed_bar(3);
  const NodeId far = bar.chain.nodes.back();
  Vector6 down = Vector6::Zero();
  down(2) = -0.05;
  fea::Solution s = fea_test::linear(bar.model, moved(far, down));
  CHECK(s.placement(far)(2) == -0.05);
  CHECK_THAT(s.reaction(far)(2), WithinRel(-12.0 * ei * 0.05 / 8000.0, 1e-9));
  CHECK_THAT(std::abs(s.forces_at(bar.chain.beams[0], 0.0).my),
             WithinRel(6.0 * ei * 0.05 / 400.0, 1e-9));
  CHECK(s.residual() < 1e-11);

  Vector6 turned = Vector6::Zero();
  turned(4) = 0.002;
  s = fea_test::linear(bar.model, moved(far, turned));
  CHECK_THAT(s.reaction(far)(4), WithinRel(4.0 * ei * 0.002 / kLength, 1e-9));
  CHECK_THAT(s.reaction(bar.chain.nodes.front())(4), WithinRel(2.0 * ei * 0.002 / kLength, 1e-9));

  // Two equal spans, the middle support settles: its reaction changes by 6 E I d / l^3.
  Bar spans = fixed_bar(2);
  spans.model.supports.front().held = {true, true, true, true, false, true};
  spans.model.supports.back().held = {false, true, true, true, false, true};
  fea_test::hold(spans.model, spans.chain.nodes[1], {false, false, true, false, false, false});
  s = fea_test::linear(spans.model, moved(spans.chain.nodes[1], down));
  CHECK_THAT(s.reaction(spans.chain.nodes[1])(2), WithinRel(-6.0 * ei * 0.05 / 1000.0, 1e-9));
}

TEST_CASE("a support settles under a compressed column", "[fea][published][settlement]") {
  // Stability functions: V = E I d / L^3 * u^3 sin u / (2 - 2 cos u - u sin u), u = L sqrt(P / EI)
  // (Przemieniecki; Ghali and Neville, Structural Analysis; from memory).
  Bar bar = fixed_bar(16);
  const NodeId far = bar.chain.nodes.back();
  bar.model.supports.back().held[0] = false;
  // The formula leaves out that the column is pressed shorter.
  for (fea::Beam& beam : bar.model.beams) beam.section.area *= 1000.0;
  const double ei = 2.0e5 * 0.7;
  const double u = 2.0;
  Vector6 down = Vector6::Zero();
  down(2) = -0.01;
  fea::Loads loads = moved(far, down);
  loads.nodes.push_back({.node = far, .force_g = {-u * u * ei / (kLength * kLength), 0.0, 0.0}});
  const fea::Solution s = fea::solve(fea::factor(bar.model), loads);
  REQUIRE(s.status() == fea::SolveStatus::converged);
  CHECK(s.residual() < 1e-9);
  const double shape = u * u * u * std::sin(u) / (2.0 - 2.0 * std::cos(u) - u * std::sin(u));
  CHECK_THAT(s.reaction(far)(2), WithinRel(-ei * 0.01 / 8000.0 * shape, 1e-4));
}

TEST_CASE("heat buckles a column between walls at its Euler load", "[fea][published][buckling]") {
  // E A alpha dT = pi^2 E I / L^2 about the weak axis, ends free to turn (Euler).
  Bar bar = fixed_bar(8);
  bar.model.supports.front().held = {true, true, true, true, false, false};
  bar.model.supports.back().held = {true, true, true, false, false, false};
  const fea::BucklingResult r =
      fea::buckle(fea::factor(bar.model), strained(bar.chain, kHeat, 0.0, 0.0));
  REQUIRE(r.status == fea::BucklingStatus::found);
  const double euler = 9.8696044011 * 2.0e5 * 0.2 / (kLength * kLength);
  CHECK_THAT(r.modes[0].factor, WithinRel(euler / (2.0e5 * 3.0 * kHeat), 1e-3));
}

TEST_CASE("an imposed motion needs a support", "[fea][settlement]") {
  Bar bar = fixed_bar(2);
  bar.model.nodes[1].name = "middle";
  Vector6 down = Vector6::Zero();
  down(2) = -0.05;
  CHECK_THROWS_WITH(fea_test::linear(bar.model, moved(NodeId{1}, down)),
                    Contains("moved along z, where no support holds it"));
  down(2) = base::kUnset;
  CHECK_THROWS_AS(fea_test::linear(bar.model, moved(NodeId{0}, down)), base::InputError);
  fea::Loads loads;
  loads.strains.push_back({.beam = BeamId{0}, .stretch = base::kUnset});
  CHECK_THROWS_AS(fea_test::linear(bar.model, loads), base::InputError);
}

}  // namespace imposed_motion_test
