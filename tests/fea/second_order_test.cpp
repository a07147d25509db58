// When the second-order method answers, and when it says that it has none.

#include <cmath>

#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace second_order_test {
using Catch::Matchers::WithinRel;
using fea::Method;
using fea::NodeId;
using fea::SolveStatus;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;

namespace {

const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.038, 0.005);

fea::Model post(const sections::AreaProps& tube = kTube) {
  fea::Model model;
  const Chain chain_up = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, 8, tube, kSteel);
  fea_test::clamp(model, chain_up.nodes.front());
  return model;
}

constexpr NodeId kTop{8};

}  // namespace

TEST_CASE("below the critical load there is an answer, above it none", "[fea][second-order]") {
  sections::AreaProps unshortened = kTube;  // the closed form leaves out axial shortening
  unshortened.area *= 1.0e4;
  const fea::Factored factored = fea::factor(post(unshortened));
  const fea::Loads down = push(kTop, {0.0, 0.0, -1.0});
  const double critical = fea::buckle(factored, down).modes.front().factor;
  const fea::Loads aside = push(kTop, {1.0, 0.5, 0.0});
  for (const double part : {0.3, 0.9, 0.99}) {
    const fea::Solution s = fea::solve(factored, down * (part * critical) + aside);
    REQUIRE(s.status() == SolveStatus::converged);
    const fea::Solution t = fea::solve(factored, aside, {.method = Method::linear});
    // Amplifier of a tip load, 3 (tan u - u) / u^3 with u = (pi / 2) sqrt(P / Pcr) (derived).
    const double u = 1.5707963268 * std::sqrt(part);
    CHECK_THAT(s.placement(kTop)(0) / t.placement(kTop)(0),
               WithinRel(3.0 * (std::tan(u) - u) / (u * u * u), 2e-3));
  }
  for (const double part : {1.001, 3.0, 30.0}) {
    const fea::Solution s = fea::solve(factored, down * (part * critical) + aside);
    CHECK(s.status() == SolveStatus::unstable);
    CHECK(std::isnan(s.placement(kTop)(0)));
    CHECK(std::isnan(s.residual()));
    CHECK(std::isnan(s.forces_at(fea::BeamId{0}, 0.0).my));
    CHECK(std::isnan(s.end_forces(fea::BeamId{0})(0)));
    CHECK(std::isnan(s.reaction(NodeId{0})(0)));
  }
}

TEST_CASE("tension stiffens", "[fea][second-order]") {
  const fea::Factored factored = fea::factor(post());
  const fea::Loads loads = push(kTop, {100.0, 0.0, 20000.0});
  const fea::Solution s = fea::solve(factored, loads);
  REQUIRE(s.status() == SolveStatus::converged);
  CHECK(s.placement(kTop)(0) <
        0.8 * fea::solve(factored, loads, {.method = Method::linear}).placement(kTop)(0));
}

TEST_CASE("forces that have not settled are not given", "[fea][second-order]") {
  const fea_test::Loaded frame = fea_test::mixed_frame();
  const fea::Factored factored = fea::factor(frame.model);
  const fea::Solution s = fea::solve(factored, frame.loads, {.max_iterations = 1});
  CHECK(s.status() == SolveStatus::not_converged);
  CHECK(std::isnan(s.placement(NodeId{1})(0)));
  CHECK(fea::solve(factored, frame.loads).status() == SolveStatus::converged);
}

TEST_CASE("without axial force, second order adds nothing", "[fea][second-order]") {
  // A tip load across turns with the slope: what is left is of the order of that slope squared.
  const fea::Factored factored = fea::factor(post());
  for (const fea::Loads& loads :
       {fea::Loads{}, push(kTop, {1.0, 2.0, 0.0}), push(kTop, Vector3::Zero(), {0.0, 0.0, 5.0})}) {
    const Vector6 s = fea::solve(factored, loads).placement(kTop);
    const Vector6 t = fea::solve(factored, loads, {.method = Method::linear}).placement(kTop);
    CHECK((s - t).norm() <= 1e-7 * t.norm());
  }
}

TEST_CASE("a small load has the linear answer", "[fea][second-order]") {
  const fea_test::Loaded frame = fea_test::mixed_frame();
  const fea::Factored factored = fea::factor(frame.model);
  const fea::Loads small = frame.loads * 1e-6;
  for (const int node : {1, 4, 6}) {
    const Vector6 s = fea::solve(factored, small).placement(NodeId{node});
    const Vector6 t =
        fea::solve(factored, small, {.method = Method::linear}).placement(NodeId{node});
    CHECK((s - t).norm() < 1e-5 * t.norm());
  }
}

TEST_CASE("very stiff parts beside soft ones do not keep forces from settling",
          "[fea][second-order]") {
  // Their forces carry the rounding of large displacements.
  fea::Model piece = post();
  const fea::Elastic stiff{.young = 1e6 * kSteel.young, .shear = 1e6 * kSteel.shear};
  chain(piece, {0.0, 0.0, 1.0}, {0.2, 0.0, 1.0}, 1, kTube, stiff, kTop);

  fea::Model clasp = post();
  fea::Spring spring{.a = kTop, .offset_a_g = {0.2, 0.0, 0.0}};
  spring.b = clasp.add(fea::Node{.at_g = {0.2, 0.0, 1.0}});
  spring.stiffness.diagonal() << 1.0e14, 1.0e14, 1.0e14, 1.0e11, 1.0e11, 1.0e11;
  clasp.add(spring);

  for (const fea::Model& model : {piece, clasp}) {
    const fea::Solution s = fea::solve(fea::factor(model), push(NodeId{9}, {0.0, 800.0, -6000.0}));
    CHECK(s.status() == SolveStatus::converged);
    CHECK(s.residual() < 1e-6);
  }
}

TEST_CASE("no answer is given beyond small rotations", "[fea][second-order]") {
  fea_test::Loaded frame = fea_test::mixed_frame();
  const auto status = [&](Method method) {
    return fea::solve(fea::factor(frame.model), frame.loads, {.method = method}).status();
  };
  CHECK(status(Method::second_order) == SolveStatus::converged);
  frame.model.springs[0].stiffness(4, 4) = 300.0;  // the hub turns 0.75 rad on it
  CHECK(status(Method::second_order) == SolveStatus::not_converged);
  CHECK(status(Method::large_displacement) == SolveStatus::converged);
}

TEST_CASE("a frame with everything held has no motion and still has its forces",
          "[fea][second-order]") {
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, 1, kTube, kSteel);
  fea_test::clamp(model, bar.nodes[0]);
  fea_test::clamp(model, bar.nodes[1]);
  fea::Loads loads;
  loads.points.push_back({.beam = bar.beams[0], .at = 0.5, .force_g = {0.0, 0.0, -80.0}});
  const fea::Factored factored = fea::factor(model);
  const fea::Solution s = fea::solve(factored, loads);
  REQUIRE(s.status() == SolveStatus::converged);
  CHECK_THAT(s.forces_at(bar.beams[0], 0.0).my, WithinRel(10.0, 1e-12));
  CHECK_THAT(s.reaction(bar.nodes[1])(2), WithinRel(40.0, 1e-12));
  CHECK(fea::buckle(factored, loads).status == fea::BucklingStatus::no_compression);
}

}  // namespace second_order_test
