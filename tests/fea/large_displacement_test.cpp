// Large displacement: what must hold whatever the frame is, gaps and preloads, and bent links.
// Properties, invented numbers; closed forms derived beside the test.

#include <cmath>
#include <functional>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "fea/newton.hpp"
#include "fea/rotation.hpp"
#include "tests/fea/mixed_frame.hpp"
#include "tests/fea/mixed_gaps.hpp"

namespace large_displacement_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Matrix3;
using fea::Method;
using fea::NodeId;
using fea::SolveStatus;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;
using fea_test::Loaded;
using fea_test::push;

namespace {

const fea::SolveOptions kLarge{.method = Method::large_displacement};
const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};

/// The mixed frame, pushed hard enough to move by a tenth of its size, in and out of its gaps.
Loaded pushed_hard() {
  Loaded frame = fea_test::mixed_frame();
  fea_test::add_gaps(frame.model);
  frame.loads = frame.loads * 8.0;
  return frame;
}

fea::Solution solve(const Loaded& frame, const fea::SolveOptions& options = kLarge) {
  fea::Solution s = fea::solve(fea::factor(frame.model), frame.loads, options);
  INFO(s.words());
  REQUIRE(s.status() == SolveStatus::converged);
  return s;
}

int n_nodes(const Loaded& frame) {
  return static_cast<int>(frame.model.nodes.size());
}

double largest(const fea::Solution& s, int nodes) {
  double size = 0.0;
  for (int i = 0; i < nodes; ++i) size = std::max(size, s.placement(NodeId{i}).norm());
  return size;
}

/// All placements, beam forces and gap forces are the same to `tolerance` of the largest.
void check_same(const Loaded& frame, const fea::Solution& s, const fea::Solution& t,
                double tolerance) {
  const double size = largest(s, n_nodes(frame));
  for (int i = 0; i < n_nodes(frame); ++i) {
    CHECK((s.placement(NodeId{i}) - t.placement(NodeId{i})).norm() <= tolerance * size);
  }
  for (int i = 0; i < static_cast<int>(frame.model.beams.size()); ++i) {
    const fea::Vector12 ends = s.end_forces(fea::BeamId{i});
    CHECK((ends - t.end_forces(fea::BeamId{i})).norm() <= tolerance * (ends.norm() + 1000.0));
  }
  for (int i = 0; i < static_cast<int>(frame.model.gaps.size()); ++i) {
    CHECK_THAT(s.gap_force({i}), WithinAbs(t.gap_force({i}), tolerance * 1.0e5));
  }
}

}  // namespace

TEST_CASE("large displacement: small loads have the linear answer", "[fea][large]") {
  Loaded frame = fea_test::mixed_frame();
  fea_test::add_gaps(frame.model);
  frame.loads = frame.loads * 1e-6;
  const fea::Solution s = solve(frame);
  const fea::Solution t = fea_test::linear(frame.model, frame.loads);
  double size = 0.0;
  for (int i = 0; i < static_cast<int>(frame.model.beams.size()); ++i) {
    size = std::max(size, t.end_forces({i}).norm());
  }
  for (int i = 0; i < n_nodes(frame); ++i) {
    const Vector6 expected = t.placement(NodeId{i});
    CHECK((s.placement(NodeId{i}) - expected).norm() <= 1e-6 * largest(t, n_nodes(frame)));
    CHECK((s.reaction(NodeId{i}) - t.reaction(NodeId{i})).norm() <=
          1e-6 * t.reaction(NodeId{0}).norm());
  }
  for (int i = 0; i < static_cast<int>(frame.model.beams.size()); ++i) {
    const fea::BeamId beam{i};
    CHECK((s.end_forces(beam) - t.end_forces(beam)).norm() < 1e-6 * size);
    const double x = 0.4 * fea::length(frame.model, frame.model[beam]);
    CHECK(std::abs(s.forces_at(beam, x).mz - t.forces_at(beam, x).mz) < 1e-6 * size);
    CHECK(std::abs(s.forces_at(beam, x).n - t.forces_at(beam, x).n) < 1e-6 * size);
    CHECK((s.end_placement(beam, 1) - t.end_placement(beam, 1)).norm() <
          1e-6 * largest(t, n_nodes(frame)));
  }
  for (int i = 0; i < 2; ++i) {
    const Vector6 force = t.spring_force(fea::SpringId{i});
    CHECK((s.spring_force(fea::SpringId{i}) - force).norm() < 1e-6 * force.norm());
  }
}

TEST_CASE("large displacement: the answer does not depend on the steps", "[fea][large]") {
  const Loaded frame = pushed_hard();
  const fea::Solution s = solve(frame);
  CHECK(s.residual() < 1e-9);
  // A case that is worth its name: far moved, some gaps closed and some open.
  CHECK(largest(s, n_nodes(frame)) > 0.2);
  int n_closed = 0;
  for (int i = 0; i < 4; ++i) n_closed += s.gap_force({i}) > 0.0 ? 1 : 0;
  CHECK(n_closed > 0);
  for (const double step : {0.3, 0.07}) {
    fea::SolveOptions options = kLarge;
    options.largest_step = step;
    check_same(frame, s, solve(frame, options), 1e-8);
  }
}

TEST_CASE("large displacement: load up and down leads back to the start", "[fea][large]") {
  const Loaded frame = pushed_hard();
  Loaded opposite = frame;
  opposite.loads = frame.loads * -0.5;
  Loaded little = frame;
  little.loads = frame.loads * 1e-3;
  const fea::Solution direct = solve(little);
  // Up, across to the other side, and back.
  fea::SolveOptions options = kLarge;
  options.start = solve(frame).state();
  options.start = solve(opposite, options).state();
  const fea::Solution back = solve(little, options);
  for (int i = 0; i < n_nodes(frame); ++i) {
    CHECK((back.placement(NodeId{i}) - direct.placement(NodeId{i})).norm() <
          1e-8 * largest(solve(frame), n_nodes(frame)));
  }
  // From there the full load has the answer it has from rest.
  options.start = back.state();
  check_same(frame, solve(frame), solve(frame, options), 1e-8);
}

TEST_CASE("large displacement: work along a closed path is nil", "[fea][large]") {
  // Two dead loads at one node, put on and taken off in another order: the work is the area of the
  // loop in displacement, which a law without potential would not close.
  Loaded frame = fea_test::mixed_frame();
  fea_test::add_gaps(frame.model);
  const fea::Factored factored = fea::factor(frame.model);
  const auto loads = [](double a, double b) {
    return push(NodeId{8}, Vector3(0.0, 0.0, 4000.0) * a) +
           push(NodeId{4}, Vector3(2500.0, -1500.0, 0.0) * b);
  };
  const std::vector<std::array<double, 2>> corners = {
      {0.0, 0.0}, {1.0, 0.0}, {1.0, 1.0}, {0.0, 1.0}, {0.0, 0.0}};
  constexpr int kPieces = 10;
  double work = 0.0;
  double turnover = 0.0;
  fea::SolveOptions options = kLarge;
  options.start = fea::solve(factored, loads(0.0, 0.0), kLarge).state();
  for (std::size_t side = 0; side + 1 < corners.size(); ++side) {
    for (int i = 0; i < kPieces; ++i) {
      const auto at = [&](int k, int which) {
        const auto w = static_cast<std::size_t>(which);
        return corners[side][w] +
               (corners[side + 1][w] - corners[side][w]) * static_cast<double>(k) / kPieces;
      };
      const fea::MovedState before = *options.start;
      const fea::Solution s = fea::solve(factored, loads(at(i + 1, 0), at(i + 1, 1)), options);
      REQUIRE(s.status() == SolveStatus::converged);
      options.start = s.state();
      const double a = 0.5 * (at(i, 0) + at(i + 1, 0));
      const double b = 0.5 * (at(i, 1) + at(i + 1, 1));
      const double part =
          4000.0 * a * (s.placement(NodeId{8}).z() - before.nodes[8].displacement_g.z()) +
          Vector3(2500.0, -1500.0, 0.0)
                  .dot(s.placement(NodeId{4}).head<3>() - before.nodes[4].displacement_g) *
              b;
      work += part;
      turnover += std::abs(part);
    }
  }
  CHECK(turnover > 10.0);
  // The trapezoid rule leaves the rest; with half as many pieces it is four times as much.
  CHECK(std::abs(work) < 2e-4 * turnover);
  CHECK(largest(fea::solve(factored, loads(0.0, 0.0), options), n_nodes(frame)) < 1e-9);
}

TEST_CASE("large displacement: a frame turned as a whole, or mirrored, has the same answer",
          "[fea][large]") {
  const Loaded frame = pushed_hard();
  const fea::Solution s = solve(frame);
  const Matrix3 turn = fea::rotation_of({0.5, -1.3, 0.8});
  Matrix3 mirror = turn;
  mirror.col(1) *= -1.0;
  for (const Matrix3& move : {turn, mirror}) {
    const Vector3 shift(0.3, -0.2, 0.7);
    const double hand = move.determinant();
    Loaded image = fea_test::moved(frame, move, shift);
    for (fea::Gap& gap : image.model.gaps) {
      for (fea::GapEnd* end : {&gap.a, &gap.b}) end->at_g = (move * end->at_g + shift).eval();
      if (gap.axis_g) gap.axis_g = Vector3(move * *gap.axis_g);
    }
    const fea::Solution t = solve(image);
    for (int i = 0; i < n_nodes(frame); ++i) {
      Vector6 expected;
      expected << move * s.placement({i}).head<3>(), hand * move * s.placement({i}).tail<3>();
      CHECK((t.placement({i}) - expected).norm() < 1e-8 * largest(s, n_nodes(frame)));
    }
    for (int i = 0; i < static_cast<int>(frame.model.beams.size()); ++i) {
      const double x =
          0.3 * fea::length(frame.model, frame.model.beams[static_cast<std::size_t>(i)]);
      const sections::Resultants p = s.forces_at({i}, x);
      const sections::Resultants q = t.forces_at({i}, x);
      const double size = s.end_forces({i}).norm() + 1.0;
      CHECK_THAT(q.n, WithinAbs(p.n, 1e-7 * size));
      CHECK_THAT(q.my, WithinAbs(p.my, 1e-7 * size));
      CHECK_THAT(q.mz, WithinAbs(hand * p.mz, 1e-7 * size));
      CHECK_THAT(q.t, WithinAbs(hand * p.t, 1e-7 * size));
    }
    for (int i = 0; i < 4; ++i) {
      CHECK_THAT(t.gap_force({i}), WithinAbs(s.gap_force({i}), 1e-3));
    }
  }
}

TEST_CASE("large displacement: forces balance in the place reached", "[fea][large]") {
  // Every node: what its beams' ends, springs, gaps and supports put on it, with its loads, force
  // and moment about the place where it now is. From the results alone.
  Loaded frame = pushed_hard();
  frame.model.springs[1].preload << 300.0, -100.0, 500.0, 5.0, -8.0, 3.0;
  const fea::Solution s = solve(frame);
  std::vector<Vector6> sums(frame.model.nodes.size(), Vector6::Zero());
  const auto place = [&](NodeId id) {
    return Vector3(frame.model[id].at_g + s.placement(id).head<3>());
  };
  const auto turned = [&](NodeId id, const Vector3& arm) {
    return Vector3(fea::rotation_of(s.placement(id).tail<3>()) * arm);
  };
  const auto put = [&](NodeId id, const Vector3& at, const Vector3& force, const Vector3& moment) {
    Vector6& sum = sums[static_cast<std::size_t>(id.index)];
    sum.head<3>() += force;
    sum.tail<3>() += moment + (at - place(id)).cross(force);
  };
  double size = 0.0;
  for (int i = 0; i < static_cast<int>(frame.model.beams.size()); ++i) {
    const fea::Beam& beam = frame.model[fea::BeamId{i}];
    const Matrix3 to_global = s.axes({i}).transpose();
    const fea::Vector12 ends = s.end_forces({i});
    size = std::max(size, ends.cwiseAbs().maxCoeff());
    const std::array<Vector3, 2> at = {
        fea::end_a_g(frame.model, beam) + s.end_placement({i}, 0).head<3>(),
        fea::end_b_g(frame.model, beam) + s.end_placement({i}, 1).head<3>()};
    put(beam.a.node, at[0], -to_global * ends.segment<3>(0), -to_global * ends.segment<3>(3));
    put(beam.b.node, at[1], -to_global * ends.segment<3>(6), -to_global * ends.segment<3>(9));
    // The beam itself, with the loads that are on it.
    if (i == 4 || i == 2) continue;
    CHECK((to_global * (ends.segment<3>(0) + ends.segment<3>(6))).norm() < 1e-8 * size);
    const Vector3 moment = to_global * (ends.segment<3>(3) + ends.segment<3>(9)) +
                           (at[1] - at[0]).cross(to_global * ends.segment<3>(6));
    CHECK(moment.norm() < 1e-8 * size);
  }
  for (const fea::NodeLoad& load : frame.loads.nodes) {
    put(load.node, place(load.node) + turned(load.node, load.offset_g), load.force_g,
        load.moment_g);
  }
  const fea::Spring& bush = frame.model.springs[0];
  const Matrix3 axes = fea::rotation_of(s.placement(bush.a).tail<3>()) * bush.axes_g;
  const Vector3 point = place(*bush.b) + turned(*bush.b, bush.offset_b_g);
  const Vector3 force = axes * s.spring_force({0}).head<3>();
  const Vector3 moment = axes * s.spring_force({0}).tail<3>();
  put(*bush.b, point, force, moment);
  put(bush.a, point, -force, -moment);
  for (int i = 0; i < static_cast<int>(frame.model.gaps.size()); ++i) {
    const fea::Gap& gap = frame.model[fea::GapId{i}];
    if (!gap.a.node || !gap.b.node) continue;
    const auto at = [&](const fea::GapEnd& end) {
      return Vector3(place(*end.node) + turned(*end.node, end.at_g - frame.model[*end.node].at_g));
    };
    const Vector3 line = gap.axis_g ? turned(*gap.a.node, gap.axis_g->normalized())
                                    : Vector3((at(gap.b) - at(gap.a)).normalized());
    const double sign = gap.contact == fea::Gap::Contact::when_longer ? -1.0 : 1.0;
    const Vector3 on_b = sign * s.gap_force({i}) * line;
    put(*gap.b.node, at(gap.b), on_b, Vector3::Zero());
    put(*gap.a.node, at(gap.b), -on_b, Vector3::Zero());
  }
  for (int i = 0; i < n_nodes(frame); ++i) {
    const Vector6 reaction = s.reaction({i});
    put({i}, place({i}), reaction.head<3>(), reaction.tail<3>());
    CHECK(sums[static_cast<std::size_t>(i)].norm() < 1e-8 * size);
  }
}

TEST_CASE("large displacement: convergence is quadratic", "[fea][large]") {
  // Once small, each residual is below a multiple of the square of the one before.
  for (const bool moments : {false, true}) {
    Loaded frame = fea_test::mixed_frame();
    frame.model.springs[0].stiffness(4, 4) = 300.0;  // the hub turns far on it
    if (!moments) {
      frame.loads.nodes[0].moment_g.setZero();
      frame.loads.points[0].moment_g.setZero();
    }
    const auto system = fea::factor(frame.model).share();
    const fea::MovedFrame moved(std::make_shared<const fea::MovedModel>(system), frame.loads);
    CHECK(moved.has_dead_moment() == moments);
    fea::Equilibrium problem{
        .frame = moved, .held = Eigen::VectorXd::Zero(system->n_unknowns()), .most_turn = 1.0};
    fea::MovedFactor tangent(moved);
    fea::MovedState state = fea::MovedState::at_rest(*system);
    for (const double factor : {0.3, 0.6}) {
      const fea::NewtonResult step = fea::newton(problem, tangent, state, factor, {});
      REQUIRE(step.end == fea::NewtonEnd::converged);
      state = step.state;
    }
    problem.tolerance = 1e-12;
    const std::vector<double> r = fea::newton(problem, tangent, state, 1.0, {}).residuals;
    REQUIRE(r.size() >= 4);
    int n_seen = 0;
    for (std::size_t i = 1; i + 1 < r.size(); ++i) {
      if (r[i] > 1e-4 || r[i] < 1e-7) continue;
      CHECK(r[i + 1] < 1000.0 * r[i] * r[i] + 1e-12);
      ++n_seen;
    }
    CHECK(n_seen >= 1);
    CHECK(r.size() <= 8);
  }
}

TEST_CASE("large displacement: a frame with everything held has its forces", "[fea][large]") {
  fea::Model model;
  const Chain bar =
      chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, 1, fea_test::tube(0.038, 0.005), kSteel);
  fea_test::clamp(model, bar.nodes[0]);
  fea_test::clamp(model, bar.nodes[1]);
  fea::Loads loads;
  loads.points.push_back({.beam = bar.beams[0], .at = 0.5, .force_g = {0.0, 0.0, -80.0}});
  const fea::Solution s = fea::solve(fea::factor(model), loads, kLarge);
  REQUIRE(s.status() == SolveStatus::converged);
  CHECK_THAT(s.forces_at(bar.beams[0], 0.0).my, WithinRel(10.0, 1e-12));
  CHECK_THAT(s.reaction(bar.nodes[1])(2), WithinRel(40.0, 1e-12));
}

TEST_CASE("large displacement: a strap that never tightens changes nothing", "[fea][large]") {
  Loaded plain = fea_test::mixed_frame();
  plain.loads = plain.loads * 5.0;
  Loaded strapped = plain;
  strapped.model.add(fea::Gap{.a = {.at_g = {0.7, -0.4, 0.9}},
                              .b = {.node = NodeId{8}, .at_g = {0.9, -0.4, 0.5}},
                              .stiffness = 1.0e8,
                              .clearance = 1.0});
  const fea::Solution s = solve(plain);
  const fea::Solution t = solve(strapped);
  for (int i = 0; i < n_nodes(plain); ++i) {
    CHECK((s.placement({i}) - t.placement({i})).norm() == 0.0);
  }
  CHECK(t.gap_force({0}) == 0.0);
}

namespace {

/// A weight on a vertical spring of 1000 N/m, free to go up and down, with a strap and a stop.
struct Ride {
  fea::Model model;
  NodeId weight;
  fea::GapId strap;
  fea::GapId stop;
};

Ride ride(double rate = 1000.0) {
  Ride out;
  out.weight = out.model.add(fea::Node{.at_g = {0.0, 0.0, 1.0}, .name = "weight"});
  fea_test::hold(out.model, out.weight, {true, true, false, true, true, true});
  fea::Spring coil{.a = out.weight};
  coil.stiffness(2, 2) = rate;
  out.model.add(coil);
  const fea::GapEnd end{.node = out.weight, .at_g = {0.0, 0.0, 1.0}};
  out.strap = out.model.add(
      fea::Gap{.a = {.at_g = {0.0, 0.0, 2.0}}, .b = end, .stiffness = 9000.0, .clearance = 0.1});
  out.stop = out.model.add(fea::Gap{.a = {.at_g = {0.0, 0.0, 2.0}},
                                    .b = end,
                                    .axis_g = Vector3(0.0, 0.0, -1.0),
                                    .contact = fea::Gap::Contact::when_shorter,
                                    .stiffness = 19000.0,
                                    .clearance = 0.2});
  return out;
}

}  // namespace

TEST_CASE("large displacement: stop and strap take over where they are met", "[fea][large]") {
  // 1000 N/m to the gap, then 10000 or 20000 N/m: by hand.
  Ride r = ride();
  const fea::Factored factored = fea::factor(r.model);
  const auto at = [&](double up) {
    const fea::Solution s = fea::solve(factored, push(r.weight, {0.0, 0.0, up}), kLarge);
    REQUIRE(s.status() == SolveStatus::converged);
    return s;
  };
  CHECK_THAT(at(150.0).placement(r.weight).z(), WithinRel(0.15, 1e-10));
  const fea::Solution bump = at(600.0);
  CHECK_THAT(bump.placement(r.weight).z(), WithinRel(0.2 + 400.0 / 20000.0, 1e-10));
  CHECK_THAT(bump.gap_force(r.stop), WithinRel(400.0 * 0.95, 1e-9));
  CHECK(bump.gap_force(r.strap) == 0.0);
  CHECK_THAT(bump.reaction(r.weight).z(), WithinRel(-600.0, 1e-10));
  const fea::Solution droop = at(-350.0);
  CHECK_THAT(droop.placement(r.weight).z(), WithinRel(-0.1 - 250.0 / 10000.0, 1e-10));
  CHECK_THAT(droop.gap_force(r.strap), WithinRel(225.0, 1e-9));
  // A load that ends exactly where the stop is met.
  CHECK_THAT(at(200.0).placement(r.weight).z(), WithinRel(0.2, 1e-10));
  CHECK_THAT(at(200.0).gap_force(r.stop), WithinAbs(0.0, 1e-6));
}

TEST_CASE("large displacement: a preloaded spring holds the static load in its place",
          "[fea][large]") {
  Ride r = ride();
  r.model.springs[0].preload(2) = -500.0;  // pushes the weight up, the ground down
  const fea::Factored factored = fea::factor(r.model);
  const auto at = [&](double up) {
    return fea::solve(factored, push(r.weight, {0.0, 0.0, up}), kLarge);
  };
  CHECK_THAT(at(-500.0).placement(r.weight).z(), WithinAbs(0.0, 1e-12));
  CHECK_THAT(at(-500.0).spring_force({0})(2), WithinRel(-500.0, 1e-12));
  CHECK_THAT(at(-450.0).placement(r.weight).z(), WithinRel(0.05, 1e-10));
  // Without the static load the preload drives it into the stop.
  CHECK_THAT(at(0.0).placement(r.weight).z(), WithinRel(0.2 + 300.0 / 20000.0, 1e-10));
  // From bump to droop: the same as from the reference place.
  fea::SolveOptions options = kLarge;
  options.start = at(0.0).state();
  const fea::Solution droop = fea::solve(factored, push(r.weight, {0.0, 0.0, -1000.0}), options);
  CHECK_THAT(droop.placement(r.weight).z(), WithinRel(-0.1 - 400.0 / 10000.0, 1e-10));
}

TEST_CASE("large displacement: no equilibrium is refused in words", "[fea][large]") {
  // A weight on an arm that a soft spring holds level: past 90 degrees nothing holds it. With a
  // stop under it there is an answer.
  fea::Model model;
  const NodeId pivot = model.add(fea::Node{.at_g = Vector3::Zero(), .name = "pivot"});
  const NodeId tip = model.add(fea::Node{.at_g = {0.0, 0.0, 0.5}, .name = "tip"});
  fea_test::hold(model, pivot, {true, true, true, true, false, true});
  model.add(fea::Beam{.a = {.node = pivot},
                      .b = {.node = tip},
                      .section = fea_test::tube(0.038, 0.005),
                      .elastic = kSteel});
  fea::Spring side{.a = tip};
  side.stiffness(0, 0) = 1000.0;  // along x only: as the arm tips its lever goes
  model.add(side);
  const fea::Loads loads = push(tip, {50.0, 0.0, -480.0});
  const fea::Solution s = fea::solve(fea::factor(model), loads, kLarge);
  CHECK(s.status() == SolveStatus::not_converged);
  CHECK_THAT(s.words(),
             Catch::Contains("no equilibrium was found beyond ") &&
                 Catch::Contains("point `tip` moves on along (0.91, 0.00, -0.42) without end"));
  CHECK(std::isnan(s.placement(tip).x()));
  CHECK(std::isnan(s.end_forces({0})(0)));
  CHECK(std::isnan(s.residual()));

  model.add(fea::Gap{.a = {.at_g = {0.3, 0.0, 0.5}},
                     .b = {.node = tip, .at_g = {0.0, 0.0, 0.5}},
                     .axis_g = Vector3::UnitX(),
                     .contact = fea::Gap::Contact::when_longer,
                     .stiffness = 1.0e6,
                     .clearance = 0.1});
  const fea::Solution held = fea::solve(fea::factor(model), loads, kLarge);
  REQUIRE(held.status() == SolveStatus::converged);
  CHECK_THAT(held.placement(tip).x(), WithinAbs(0.1, 2e-3));
}

TEST_CASE("large displacement: an unstable equilibrium is said, not given", "[fea][large]") {
  // A straight column beyond its critical load stays straight only in thought. pi^2 E I / (2 L)^2.
  fea::Model model;
  const sections::AreaProps tube = fea_test::tube(0.038, 0.005);
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, 4, tube, kSteel);
  fea_test::clamp(model, post.nodes.front());
  const double critical = 9.8696044 * kSteel.young * tube.iyy / 4.0;
  const fea::Factored factored = fea::factor(model);
  const auto at = [&](double part) {
    return fea::solve(factored, push(post.nodes.back(), {0.0, 0.0, -part * critical}), kLarge);
  };
  CHECK(at(0.995).status() == SolveStatus::converged);
  const fea::Solution beyond = at(1.005);
  CHECK(beyond.status() == SolveStatus::unstable);
  CHECK_THAT(beyond.words(), Catch::Contains("is not stable"));
  CHECK(std::isnan(beyond.placement(post.nodes.back()).z()));
}

TEST_CASE("large displacement: two pieces give a column's critical load within half a percent",
          "[fea][large]") {
  // Pin-ended: pi^2 E I / L^2; the axial strain at that load is taken off by a large area.
  sections::AreaProps tube = fea_test::tube(0.038, 0.005);
  tube.area *= 1e4;
  tube.polar *= 1e4;
  const double critical = 9.8696044 * kSteel.young * tube.iyy;
  for (const int n : {3, 4, 8}) {
    fea::Model model;
    const Chain column = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, n, tube, kSteel);
    fea_test::hold(model, column.nodes.front(), {true, true, true, false, false, true});
    fea_test::hold(model, column.nodes.back(), {true, true, false, false, false, false});
    const auto status = [&](double part) {
      return fea::solve(fea::factor(model), push(column.nodes.back(), {0.0, 0.0, -part * critical}),
                        kLarge)
          .status();
    };
    CHECK(status(0.995) == SolveStatus::converged);
    CHECK(status(1.005) == SolveStatus::unstable);
  }
}

namespace {

/// A V of tube 38.1 x 6.35 mm between ball joints 0.9 m apart, its apex 50 mm aside; next to
/// nothing keeps it from spinning about the line between the joints.
struct BentLink {
  fea::Model model;
  NodeId apex;
  NodeId end;
};

BentLink bent_link(double offset, int per_leg = 4) {
  BentLink out;
  const sections::AreaProps tube = fea_test::tube(0.0381, 0.00635);
  const double spin = 1e-3 * kSteel.shear * tube.torsion / 0.9;
  const Chain first = chain(out.model, Vector3::Zero(), {0.45, offset, 0.0}, per_leg, tube, kSteel);
  const Chain second = chain(out.model, {0.45, offset, 0.0}, {0.9, 0.0, 0.0}, per_leg, tube, kSteel,
                             first.nodes.back());
  out.apex = first.nodes.back();
  out.end = second.nodes.back();
  out.model.beams.front().a.joint =
      fea_test::joint({fea::kRigid, fea::kRigid, fea::kRigid, spin, 0.0, 0.0});
  out.model.beams.back().b.joint = fea_test::ball();
  fea_test::clamp(out.model, first.nodes.front());
  fea_test::hold(out.model, out.end, {false, true, true, true, true, true});
  return out;
}

}  // namespace

TEST_CASE("large displacement: a bent link that spins freely stands until its bending gives way",
          "[fea][large]") {
  // Two-thirds of its own Euler load and more: the deflection grows as tan(u) / u,
  // u = pi / 2 sqrt(P / Pe) (small slopes, derived), and nothing is unstable: spinning about the
  // line between the joints changes no energy. A method that puts the moved forces on the unmoved
  // shape gives up at half of it.
  const double euler = 9.8696044 * kSteel.young * fea_test::tube(0.0381, 0.00635).iyy / (0.9 * 0.9);
  CHECK_THAT(euler, WithinRel(205.0e3, 0.02));
  const BentLink link = bent_link(0.05);
  const fea::Factored factored = fea::factor(link.model);
  double before = 0.0;
  for (const double part : {0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9}) {
    const fea::Solution s = fea::solve(factored, push(link.end, {-part * euler, 0.0, 0.0}), kLarge);
    INFO(part << ": " << s.words());
    REQUIRE(s.status() == SolveStatus::converged);
    const double aside = s.placement(link.apex).y();
    CHECK(aside > before);
    CHECK(std::abs(s.placement(link.apex).z()) < 1e-9);
    before = aside;
    const double u = 1.5707963268 * std::sqrt(part);
    if (part < 0.65) CHECK_THAT(0.05 + aside, WithinRel(0.05 * std::tan(u) / u, 0.05));
  }
  // Pulled, it straightens.
  CHECK(fea::solve(factored, push(link.end, {0.5 * euler, 0.0, 0.0}), kLarge)
            .placement(link.apex)
            .y() < 0.0);
  // Spun by a quarter turn it is the same link.
  fea::Model spun = link.model;
  for (fea::Node& node : spun.nodes) node.at_g = Vector3(node.at_g.x(), 0.0, node.at_g.y());
  const fea::Loads half = push(link.end, {-0.5 * euler, 0.0, 0.0});
  CHECK_THAT(fea::solve(fea::factor(spun), half, kLarge).placement(link.apex).z(),
             WithinRel(fea::solve(factored, half, kLarge).placement(link.apex).y(), 1e-8));
}

TEST_CASE("large displacement: two pieces a leg give a bent link within half a percent",
          "[fea][large]") {
  const double euler = 9.8696044 * kSteel.young * fea_test::tube(0.0381, 0.00635).iyy / (0.9 * 0.9);
  const auto aside = [&](int per_leg) {
    const BentLink link = bent_link(0.05, per_leg);
    const fea::Solution s =
        fea::solve(fea::factor(link.model), push(link.end, {-0.6 * euler, 0.0, 0.0}), kLarge);
    REQUIRE(s.status() == SolveStatus::converged);
    CHECK(s.local_rotation() < 0.3);
    return s.placement(link.apex).y();
  };
  CHECK_THAT(aside(2), WithinRel(aside(16), 5e-3));
}

TEST_CASE("large displacement: a gap that cannot be is refused", "[fea][large]") {
  const auto with = [](const std::function<void(fea::Gap&)>& spoil) {
    Ride r = ride();
    spoil(r.model.gaps[0]);
    return fea::factor(r.model);
  };
  CHECK_THROWS_WITH(with([](fea::Gap& g) { g.stiffness = 0.0; }),
                    Catch::Contains("gap 0") && Catch::Contains("stiffness"));
  CHECK_THROWS_WITH(with([](fea::Gap& g) { g.clearance = -0.1; }), Catch::Contains("clearance"));
  CHECK_THROWS_WITH(with([](fea::Gap& g) { g.b = g.a; }), Catch::Contains("ground"));
  CHECK_THROWS_WITH(with([](fea::Gap& g) { g.a.at_g = g.b.at_g; }), Catch::Contains("axis"));
  CHECK_THROWS_WITH(with([](fea::Gap& g) { g.axis_g = Vector3(0.0, 0.0, 0.0); }),
                    Catch::Contains("direction"));
}

}  // namespace large_displacement_test
