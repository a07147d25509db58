// Resultants along a member against statics done by hand.

#include <algorithm>
#include <cmath>

#include <Eigen/LU>
#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"

namespace member_forces_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::BeamId;
using fea::NodeId;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using sections::Resultants;

namespace {

const fea::Elastic kElastic{.young = 2.0e5, .shear = 8.0e4};
const sections::AreaProps kBar = fea_test::section(3.0, 0.7, 0.2, 0.4);
constexpr double kLength = 2.0;

/// Cantilever along x from a wall at end a.
fea::Model cantilever(int n = 1, const sections::AreaProps& bar = kBar) {
  fea::Model model;
  chain(model, Vector3::Zero(), {kLength, 0.0, 0.0}, n, bar, kElastic);
  fea_test::clamp(model, NodeId{0});
  return model;
}

void check(const Resultants& r, const Resultants& expected) {
  CHECK_THAT(r.n, WithinAbs(expected.n, 1e-9));
  CHECK_THAT(r.vy, WithinAbs(expected.vy, 1e-9));
  CHECK_THAT(r.vz, WithinAbs(expected.vz, 1e-9));
  CHECK_THAT(r.t, WithinAbs(expected.t, 1e-9));
  CHECK_THAT(r.my, WithinAbs(expected.my, 1e-9));
  CHECK_THAT(r.mz, WithinAbs(expected.mz, 1e-9));
}

}  // namespace

TEST_CASE("resultants of a cantilever with its tip pushed every way", "[fea][forces]") {
  // Pull along x; up along z puts the lower fibers in tension, so My = -F (L - x) there (sigma z
  // is negative); left along y puts those at -y in tension, so Mz = -int sigma y is positive.
  const fea::Solution s =
      fea_test::linear(cantilever(), push(NodeId{1}, {7.0, 5.0, 3.0}, {0.4, 0.0, 0.0}));
  for (const double x : {0.0, 0.5, 2.0}) {
    const double arm = kLength - x;
    check(s.forces_at(BeamId{0}, x),
          {.n = 7.0, .vy = 5.0, .vz = 3.0, .t = 0.4, .my = -3.0 * arm, .mz = 5.0 * arm});
  }
  const fea::Vector12 ends = s.end_forces(BeamId{0});
  CHECK((ends.segment<3>(6) - Vector3(7.0, 5.0, 3.0)).norm() < 1e-9);
  CHECK((ends.segment<3>(0) + Vector3(7.0, 5.0, 3.0)).norm() < 1e-9);
}

TEST_CASE("bending signs agree with the deflected shape", "[fea][forces]") {
  // My = E Iyy d(ry)/dx and Mz = E Izz d(rz)/dx under moments at the tip.
  const fea::Solution s =
      fea_test::linear(cantilever(), push(NodeId{1}, Vector3::Zero(), {0.0, 2.0, 3.0}));
  const fea::Vector6 tip = s.placement(NodeId{1});
  CHECK_THAT(s.forces_at(BeamId{0}, 1.0).my,
             WithinRel(kElastic.young * kBar.iyy * tip(4) / kLength, 1e-10));
  CHECK_THAT(s.forces_at(BeamId{0}, 1.0).mz,
             WithinRel(kElastic.young * kBar.izz * tip(5) / kLength, 1e-10));
}

TEST_CASE("resultants jump at a point load and bend under a line load", "[fea][forces]") {
  fea::Loads loads;
  loads.points.push_back(
      {.beam = BeamId{0}, .at = 0.8, .force_g = {2.0, -4.0, 6.0}, .moment_g = {0.5, 0.3, -0.2}});
  // Grows from nothing at 1 to 6 per length at the tip: 3 in all, at 1 + 2/3.
  loads.lines.push_back(
      {.beam = BeamId{0}, .from = 1.0, .at_from_g = Vector3::Zero(), .at_to_g = {0.0, 0.0, 6.0}});
  const fea::Solution s = fea_test::linear(cantilever(), loads);
  check(s.forces_at(BeamId{0}, 0.0), {.n = 2.0,
                                      .vy = -4.0,
                                      .vz = 9.0,
                                      .t = 0.5,
                                      .my = -6.0 * 0.8 + 0.3 - 3.0 * (1.0 + 2.0 / 3.0),
                                      .mz = -4.0 * 0.8 - 0.2});
  // Just right of the point load nothing of it is left.
  check(s.forces_at(BeamId{0}, 0.8), {.vz = 3.0, .my = -3.0 * (0.2 + 2.0 / 3.0)});
  // At 1.5 the outer half is left: from 3 to 6 per length.
  check(s.forces_at(BeamId{0}, 1.5),
        {.vz = 2.25, .my = -(3.0 * 0.5 * 0.25 + 0.5 * 3.0 * 0.5 * (1.0 / 3.0))});
  check(s.forces_at(BeamId{0}, 2.0), {});
}

TEST_CASE("a load on a member equals the same load at a node there", "[fea][forces]") {
  fea::Model whole = cantilever();
  fea::Model split;
  const double at = 0.7;
  const Chain first = chain(split, Vector3::Zero(), {at, 0.0, 0.0}, 1, kBar, kElastic);
  const Chain second =
      chain(split, {at, 0.0, 0.0}, {kLength, 0.0, 0.0}, 1, kBar, kElastic, first.nodes[1]);
  fea_test::clamp(split, first.nodes[0]);
  const fea::Support prop{.node = {}, .held = {false, true, true, true, false, false}};
  fea_test::hold(whole, NodeId{1}, prop.held);
  fea_test::hold(split, second.nodes[1], prop.held);
  const Vector3 force(2.0, -4.0, 6.0);
  const Vector3 moment(0.5, 0.3, -0.2);
  fea::Loads on_member;
  on_member.points.push_back({.beam = BeamId{0}, .at = at, .force_g = force, .moment_g = moment});
  const fea::Solution s = fea_test::linear(whole, on_member);
  const fea::Solution t = fea_test::linear(split, push(first.nodes[1], force, moment));
  CHECK((s.placement(NodeId{1}) - t.placement(second.nodes[1])).norm() < 1e-15);
  CHECK((s.reaction(NodeId{0}) - t.reaction(NodeId{0})).norm() < 1e-11);
  check(s.forces_at(BeamId{0}, 0.2), t.forces_at(first.beams[0], 0.2));
  check(s.forces_at(BeamId{0}, 1.4), t.forces_at(second.beams[0], 1.4 - at));
}

TEST_CASE("second-order resultants match at the nodes and are given along the bent member",
          "[fea][forces][second-order]") {
  // Cantilever pushed down its length and aside. At the wall: statics in the deformed position.
  // The shear across a piece is what changes its moment.
  const double p = 800.0;
  const double h = 3.0;
  sections::AreaProps unshortened = kBar;
  unshortened.area = 1.0e7;
  fea::Model model = cantilever(6, unshortened);
  const NodeId tip{6};
  const fea::Solution s = fea::solve(fea::factor(model), push(tip, {-p, h, 0.0}));
  REQUIRE(s.status() == fea::SolveStatus::converged);
  const fea::Vector6 moved = s.placement(tip);
  const double lever = kLength + moved(0);
  CHECK_THAT(s.forces_at(BeamId{0}, 0.0).mz, WithinRel(h * lever + p * moved(1), 1e-6));
  CHECK_THAT(s.reaction(NodeId{0})(5), WithinRel(-(h * lever + p * moved(1)), 1e-6));
  const double piece = kLength / 6.0;
  for (int i = 0; i + 1 < 6; ++i) {
    CHECK_THAT(s.forces_at(BeamId{i}, piece).mz,
               WithinRel(s.forces_at(BeamId{i + 1}, 0.0).mz, 1e-4));
  }
  for (int i = 0; i < 6; ++i) {
    const Resultants start = s.forces_at(BeamId{i}, 0.0);
    const Resultants end = s.forces_at(BeamId{i}, piece);
    CHECK_THAT((start.mz - end.mz) / piece, WithinRel(start.vy, 1e-5));
    const double slope = (s.placement(NodeId{i + 1})(1) - s.placement(NodeId{i})(1)) / piece;
    CHECK_THAT(start.vy, WithinRel(h + p * slope, 1e-9));
    CHECK_THAT(s.end_forces(BeamId{i})(7), WithinRel(h, 1e-9));
  }
}

TEST_CASE("the second-order torque is the one that twists the member",
          "[fea][forces][second-order]") {
  // A flat bar bent both ways is twisted by its own bending moments: T = G J d(rx)/dx along it,
  // though nothing twists it in the undeformed position.
  const int n = 16;
  const fea::Solution s =
      fea::solve(fea::factor(cantilever(n)), push(NodeId{n}, {0.0, 40.0, 90.0}));
  REQUIRE(s.status() == fea::SolveStatus::converged);
  const double piece = kLength / n;
  for (int i = 0; i < n; ++i) {
    const double twist = s.placement(NodeId{i + 1})(3) - s.placement(NodeId{i})(3);
    const double torque = kElastic.shear * kBar.torsion * twist / piece;
    const double middle = 0.5 * (s.forces_at(BeamId{i}, 0.0).t + s.forces_at(BeamId{i}, piece).t);
    CHECK_THAT(middle, WithinAbs(torque, 0.001));  // of 0.156 at the wall
  }
}

TEST_CASE("members stand with their z axis up unless told otherwise", "[fea][axes]") {
  fea::Model model;
  const Chain askew = chain(model, Vector3::Zero(), {1.0, 1.0, 0.3}, 1, kBar, kElastic);
  const fea::Matrix3 axes = fea::member_axes(model, model[askew.beams[0]]);
  CHECK((axes * axes.transpose() - fea::Matrix3::Identity()).norm() < 1e-15);
  CHECK_THAT(axes.determinant(), WithinRel(1.0, 1e-14));
  CHECK(axes(2, 2) > 0.9);
  CHECK_THAT(axes(1, 2), WithinAbs(0.0, 1e-15));

  const Chain upright = chain(model, Vector3::Zero(), {1e-4, 0.0, 1.0}, 1, kBar, kElastic);
  CHECK_THAT(fea::member_axes(model, model[upright.beams[0]])(2, 0), WithinRel(1.0, 1e-6));

  model.beams[0].z_toward_g = Vector3::UnitX();
  CHECK(fea::member_axes(model, model.beams[0])(2, 0) > 0.0);
  CHECK_THAT(fea::member_axes(model, model.beams[0])
                 .row(0)
                 .dot(fea::member_axes(model, model.beams[0]).row(2)),
             WithinAbs(0.0, 1e-15));
}

namespace {

/// Largest bending moment at the stations of all beams.
double largest_moment(const fea::Solution& solution, const Chain& bar) {
  double largest = 0.0;
  std::vector<double> stations;
  for (const BeamId beam : bar.beams) {
    solution.stations(beam, stations);
    for (const double at : stations) {
      largest = std::max(largest, std::abs(solution.forces_at(beam, at).my));
    }
  }
  return largest;
}

}  // namespace

// A bar on pins, pressed, with moments about y at its ends: with k = sqrt(P / E I) the moment at x
// is (M_a sin k (L - x) + M_b sin k x) / sin k L. Timoshenko and Gere, Theory of Elastic Stability,
// 2nd ed., art. 1.6, from memory.
TEST_CASE("a pressed bar bends more between the ends of its beams than at them", "[fea][forces]") {
  const auto [n, kl, both, expected] =
      GENERATE(table<int, double, bool, double>({{1, 1.0, true, 1.0 / std::cos(0.5)},
                                                 {2, 2.0, true, 1.0 / std::cos(1.0)},
                                                 {4, 2.6, false, 1.0 / std::sin(2.6)},
                                                 {3, 2.6, true, 1.0 / std::cos(1.3)}}));
  const fea::Method method = GENERATE(fea::Method::second_order, fea::Method::large_displacement);
  // Along the bar, or its own shortening would count in large displacements.
  const sections::AreaProps kStiff = fea_test::section(3.0e6, 0.7, 0.7, 0.4);
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {kLength, 0.0, 0.0}, n, kStiff, kElastic);
  fea_test::keep_in_xz(model);
  fea_test::hold(model, bar.nodes.front(), {true, true, true, true, false, true});
  fea_test::hold(model, bar.nodes.back(), {false, true, true, true, false, true});
  const double pressing = kElastic.young * kStiff.iyy * kl * kl / (kLength * kLength);
  constexpr double kMoment = 1.0e-3;  // bends it next to nothing
  const fea::Solution solution = fea::solve(
      fea::factor(model),
      push(bar.nodes.front(), Vector3::Zero(), {0.0, kMoment, 0.0}) +
          push(bar.nodes.back(), {-pressing, 0.0, 0.0}, {0.0, both ? -kMoment : 0.0, 0.0}),
      {.method = method});
  REQUIRE(solution.status() == fea::SolveStatus::converged);
  INFO(n << " beams, k L = " << kl);
  CHECK(largest_moment(solution, bar) / kMoment == Approx(expected).epsilon(5.0e-3));
}

}  // namespace member_forces_test
