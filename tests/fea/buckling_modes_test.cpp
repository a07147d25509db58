// The list of critical factors: complete, positive, and as a dense solver finds it.

#include <numeric>

#include <Eigen/Eigenvalues>
#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "fea/pencil.hpp"
#include "fea/stress_state.hpp"
#include "fea/tangent.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace buckling_modes_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::BucklingStatus;
using fea::NodeId;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;

namespace {

const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.038, 0.005);

/// A lattice of tubes on four feet with members of several pieces.
fea_test::Loaded tower(int pieces) {
  fea_test::Loaded out;
  std::vector<NodeId> below;
  std::vector<Vector3> at;
  for (int level = 0; level <= 2; ++level) {
    std::vector<NodeId> ring;
    for (int i = 0; i < 4; ++i) {
      const double wide = 0.5 - 0.1 * level;
      const Vector3 place((i == 0 || i == 3) ? wide : -wide, i < 2 ? wide : -0.9 * wide,
                          0.8 * level);
      ring.push_back(out.model.add(fea::Node{.at_g = place}));
      at.push_back(place);
    }
    const auto place = [&](NodeId id) { return out.model[id].at_g; };
    for (std::size_t i = 0; i < 4; ++i) {
      if (level == 0) {
        fea_test::clamp(out.model, ring[i]);
        continue;
      }
      chain(out.model, place(below[i]), place(ring[i]), pieces, kTube, kSteel, below[i], ring[i]);
      const std::size_t next = (i + 1) % 4;
      chain(out.model, place(ring[i]), place(ring[next]), pieces, kTube, kSteel, ring[i],
            ring[next]);
    }
    if (level == 2) {
      out.loads = push(ring[0], {100.0, 50.0, -4000.0}) + push(ring[1], {0.0, 0.0, -2000.0}) +
                  push(ring[2], {-300.0, 0.0, 1000.0}, {10.0, 80.0, -40.0});
    }
    below = ring;
  }
  return out;
}

/// All positive factors by a dense solver, ascending.
std::vector<double> dense_factors(const fea_test::Loaded& frame) {
  const fea::System system(frame.model);
  const fea::LoadCase load_case = fea::prepare(system, frame.loads);
  const Eigen::VectorXd u =
      system.from_scaled_motion(system.factor().solve(system.to_scaled_force(load_case.vector)));
  const fea::Sparse geometric = system.scaled_sum(
      fea::geometric_stiffness(system, load_case, fea::stress_state(system, load_case, u)));
  const Eigen::MatrixXd k = Eigen::MatrixXd(system.scaled()).selfadjointView<Eigen::Lower>();
  const Eigen::MatrixXd kg = Eigen::MatrixXd(geometric).selfadjointView<Eigen::Lower>();
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> solver(
      -kg, k, Eigen::EigenvaluesOnly | Eigen::Ax_lBx);
  std::vector<double> out;
  for (Eigen::Index i = k.rows() - 1; i >= 0 && solver.eigenvalues()(i) > 1e-9; --i) {
    out.push_back(1.0 / solver.eigenvalues()(i));
  }
  return out;
}

double sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

void check_against_dense(const fea_test::Loaded& frame, int n_modes, double tolerance) {
  const std::vector<double> expected = dense_factors(frame);
  const fea::Factored factored = fea::factor(frame.model);
  const fea::BucklingResult result =
      fea::buckle(factored, frame.loads, {.n_modes = n_modes, .tolerance = tolerance});
  REQUIRE(result.status == BucklingStatus::found);
  REQUIRE(result.modes.size() == static_cast<std::size_t>(n_modes));
  for (std::size_t i = 0; i < result.modes.size(); ++i) {
    const fea::BucklingMode& mode = result.modes[i];
    CHECK_THAT(mode.factor, WithinRel(expected[i], tolerance));
    CHECK_THAT(sum(mode.beam_energy) + sum(mode.joint_energy) + sum(mode.spring_energy),
               WithinRel(1.0, 1e-12));
    CHECK_THAT(mode.shape.maxCoeff(), WithinAbs(1.0, 1e-12));
    CHECK(mode.shape.minCoeff() >= -1.0);
  }
}

/// Round column, pinned about both axes: every factor is double.
fea::Model round_column(int n) {
  fea::Model model;
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, n, kTube, kSteel);
  fea_test::hold(model, post.nodes.front(), {true, true, true, false, false, true});
  fea_test::hold(model, post.nodes.back(), {true, true, false, false, false, false});
  return model;
}

}  // namespace

TEST_CASE("critical factors agree with a dense solver", "[fea][buckling]") {
  check_against_dense(fea_test::mixed_frame(), 3, 1e-8);  // small: dense inside as well
  for (const double tolerance : {1e-6, 1e-8}) {
    check_against_dense(tower(2), 3, tolerance);
    check_against_dense(tower(3), 8, tolerance);
  }
}

TEST_CASE("the modes to start from have no say in the factors", "[fea][buckling]") {
  fea_test::Loaded frame = tower(3);
  const std::vector<double> expected = dense_factors(frame);
  fea_test::Loaded turned = frame;
  turned.loads = turned.loads * -1.0;
  const std::vector<double> expected_reversed = dense_factors(turned);
  const fea::Factored factored = fea::factor(frame.model);
  const auto check_from = [&](const fea::BucklingResult& start, int n_reversed) {
    const fea::BucklingResult r = fea::buckle(
        factored, frame.loads, {.n_modes = 3, .n_reversed = n_reversed, .start = &start});
    REQUIRE(r.status == BucklingStatus::found);
    REQUIRE(r.modes.size() == 3);
    REQUIRE(r.reversed.size() == static_cast<std::size_t>(n_reversed));
    for (std::size_t i = 0; i < 3; ++i) {
      CHECK_THAT(r.modes[i].factor, WithinRel(expected[i], 1e-6));
    }
    for (std::size_t i = 0; i < r.reversed.size(); ++i) {
      CHECK_THAT(r.reversed[i].factor, WithinRel(-expected_reversed[i], 1e-6));
    }
  };
  const fea::BucklingResult own =
      fea::buckle(factored, frame.loads, {.n_modes = 6, .n_reversed = 2});
  SECTION("its own") {
    check_from(own, 1);
  }
  SECTION("of a frame that differs in some sections and under another load") {
    fea_test::Loaded other = frame;
    for (std::size_t i = 0; i < other.model.beams.size(); i += 3) {
      other.model.beams[i].section = fea_test::tube(0.045, 0.003);
    }
    other.loads = other.loads + push(NodeId{5}, {700.0, -300.0, -900.0});
    check_from(fea::buckle(fea::factor(other.model), other.loads, {.n_modes = 3, .n_reversed = 2}),
               2);
  }
  SECTION("the next higher ones, square to those looked for") {
    fea::BucklingResult higher = own;
    higher.modes.erase(higher.modes.begin(), higher.modes.begin() + 3);
    check_from(higher, 1);
  }
  SECTION("fewer than are looked for, of other unknowns, or nothing") {
    fea::BucklingResult few = own;
    few.modes.resize(2);
    check_from(few, 1);
    check_from(fea::buckle(fea::factor(tower(2).model), tower(2).loads, {.n_reversed = 1}), 1);
    fea::BucklingResult nothing = own;
    for (fea::BucklingMode& mode : nothing.modes) mode.motion.setZero();
    check_from(nothing, 0);
  }
}

TEST_CASE("a round column's pairs are found from one of each", "[fea][buckling]") {
  const fea::Factored factored = fea::factor(round_column(40));
  const fea::Loads loads = push(NodeId{40}, {0.0, 0.0, -1000.0});
  const fea::BucklingResult all = fea::buckle(factored, loads, {.n_modes = 6});
  fea::BucklingResult start;
  start.modes = {all.modes[0], all.modes[2], all.modes[4], all.modes[4]};
  const fea::BucklingResult again = fea::buckle(factored, loads, {.n_modes = 4, .start = &start});
  REQUIRE(again.modes.size() == 4);
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK_THAT(again.modes[i].factor, WithinRel(all.modes[i].factor, 1e-6));
  }
}

TEST_CASE("a frame that nothing buckles is not said to, whatever the start", "[fea][buckling]") {
  const fea::Factored factored = fea::factor(round_column(30));
  const fea::BucklingResult pressed =
      fea::buckle(factored, push(NodeId{30}, {0.0, 0.0, -1000.0}), {.n_modes = 3});
  const fea::BucklingResult pulled =
      fea::buckle(factored, push(NodeId{30}, {0.0, 0.0, 1000.0}),
                  {.n_modes = 3, .n_reversed = 0, .start = &pressed});
  CHECK(pulled.status == BucklingStatus::no_compression);
}

TEST_CASE("reversing the loads finds the other side of the list", "[fea][buckling]") {
  fea_test::Loaded frame = tower(2);
  frame.loads = frame.loads * -1.0;
  check_against_dense(frame, 3, 1e-6);
}

TEST_CASE("doubling the loads halves the factors", "[fea][buckling]") {
  const fea_test::Loaded frame = tower(2);
  const fea::Factored factored = fea::factor(frame.model);
  const fea::BucklingResult once = fea::buckle(factored, frame.loads);
  const fea::BucklingResult twice = fea::buckle(factored, frame.loads * 2.0);
  REQUIRE(twice.modes.size() == once.modes.size());
  for (std::size_t i = 0; i < once.modes.size(); ++i) {
    CHECK_THAT(twice.modes[i].factor, WithinRel(0.5 * once.modes[i].factor, 1e-8));
  }
}

TEST_CASE("repeated factors of a round column are all listed", "[fea][buckling]") {
  for (const int n : {6, 40}) {
    const fea::Model model = round_column(n);
    const NodeId top{n};
    for (const int n_modes : {1, 2, 3, 6}) {
      const fea::BucklingResult r =
          fea::buckle(fea::factor(model), push(top, {0.0, 0.0, -1000.0}), {.n_modes = n_modes});
      REQUIRE(r.status == BucklingStatus::found);
      REQUIRE(r.modes.size() == static_cast<std::size_t>(n_modes));
      const double euler =
          9.8696044011 * kSteel.young * kTube.iyy / 1000.0;  // of 1 m, in units of the load
      for (std::size_t i = 0; i < r.modes.size(); ++i) {
        const std::size_t pair = i / 2;
        const auto half_waves = static_cast<double>(pair + 1);
        CHECK_THAT(r.modes[i].factor, WithinRel(half_waves * half_waves * euler, 1e-2));
      }
    }
  }
}

TEST_CASE("every one of many equal columns is listed", "[fea][buckling]") {
  // Five round columns side by side: the lowest factor ten times over.
  fea::Model model;
  fea::Loads loads;
  for (int i = 0; i < 5; ++i) {
    const Vector3 foot(0.3 * i, 0.1 * i, 0.0);
    const Chain post = chain(model, foot, foot + Vector3::UnitZ(), 8, kTube, kSteel);
    fea_test::hold(model, post.nodes.front(), {true, true, true, false, false, true});
    fea_test::hold(model, post.nodes.back(), {true, true, false, false, false, false});
    loads = loads + push(post.nodes.back(), {0.0, 0.0, -1000.0});
  }
  const fea::BucklingResult r = fea::buckle(fea::factor(model), loads, {.n_modes = 11});
  REQUIRE(r.status == BucklingStatus::found);
  REQUIRE(r.modes.size() == 11);
  const double euler = 9.8696044011 * kSteel.young * kTube.iyy / 1000.0;
  for (std::size_t i = 0; i < 11; ++i) {
    CHECK_THAT(r.modes[i].factor, WithinRel(i < 10 ? euler : 4.0 * euler, 5e-3));
  }
}

TEST_CASE("tension or no load buckles nothing", "[fea][buckling]") {
  for (const int n : {4, 30}) {
    const fea::Factored factored = fea::factor(round_column(n));
    const fea::BucklingResult pulled = fea::buckle(factored, push(NodeId{n}, {0.0, 0.0, 1000.0}));
    CHECK(pulled.status == BucklingStatus::no_compression);
    CHECK(pulled.modes.empty());
    CHECK(fea::buckle(factored, {}).status == BucklingStatus::no_compression);
  }
}

TEST_CASE("the rounding of a large rigid motion buckles nothing", "[fea][buckling]") {
  // A frame pushed at the very node that stands on soft springs: nothing else carries load.
  fea::Model model;
  const Chain arm = chain(model, {0.1, 0.2, 0.3}, {0.7, -0.4, 1.0}, 12, kTube, kSteel);
  fea::Spring soft{.a = arm.nodes.front()};
  soft.stiffness.diagonal() << 1.0e3, 2.0e3, 3.0e3, 500.0, 500.0, 500.0;
  model.add(soft);
  const fea::Loads loads = push(arm.nodes.front(), {300.0, -200.0, -400.0}, {20.0, 10.0, 5.0});
  CHECK(fea::buckle(fea::factor(model), loads).status == BucklingStatus::no_compression);
}

TEST_CASE("a tie much stronger than the strut beside it does not hide its factor",
          "[fea][buckling]") {
  // Two columns apart from each other; one pulled by a million times what the other is pressed by.
  for (const int n : {4, 20}) {
    fea::Model model = round_column(n);
    const Chain tie = chain(model, {1.0, 0.0, 0.0}, {1.0, 0.0, 1.0}, n, kTube, kSteel);
    fea_test::hold(model, tie.nodes.front(), {true, true, true, false, false, true});
    fea_test::hold(model, tie.nodes.back(), {true, true, false, false, false, false});
    const fea::BucklingResult r =
        fea::buckle(fea::factor(model),
                    push(NodeId{n}, {0.0, 0.0, -1.0}) + push(tie.nodes.back(), {0.0, 0.0, 1.0e6}));
    REQUIRE(r.status == BucklingStatus::found);
    CHECK_THAT(r.modes[0].factor, WithinRel(9.8696 * kSteel.young * kTube.iyy, 1e-3));
    CHECK_THAT(sum({r.modes[0].beam_energy.begin(), r.modes[0].beam_energy.begin() + n}),
               WithinAbs(1.0, 1e-6));
  }
}

TEST_CASE("the count of negative pivots is the count of factors passed", "[fea][buckling]") {
  const fea_test::Loaded frame = tower(2);
  const std::vector<double> factors = dense_factors(frame);
  const fea::System system(frame.model);
  const fea::LoadCase load_case = fea::prepare(system, frame.loads);
  const Eigen::VectorXd u =
      system.from_scaled_motion(system.factor().solve(system.to_scaled_force(load_case.vector)));
  Eigen::VectorXd geometric;
  fea::scaled_geometric_stiffness(system, load_case, fea::stress_state(system, load_case, u),
                                  geometric);
  fea::Tangent tangent(system);
  fea::Buckling buckling(fea::factor(frame.model));
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(buckling.n_below(frame.loads, 0.999 * factors[i]) == static_cast<int>(i));
    CHECK(buckling.n_below(frame.loads, 1.001 * factors[i]) == static_cast<int>(i) + 1);
    CHECK(tangent.n_negative(geometric, 0.999 * factors[i]) == static_cast<int>(i));
    CHECK(tangent.n_negative(geometric, 1.001 * factors[i]) == static_cast<int>(i) + 1);
  }
}

}  // namespace buckling_modes_test
