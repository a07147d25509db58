// How well the equations are conditioned: the estimate against the number itself, the words for
// what spoils it, and the size of large factors. No outside source.

#include "fea/condition.hpp"

#include <Eigen/LU>
#include <catch2/catch.hpp>

#include "fea/system.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace condition_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;
using fea::NodeId;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;

namespace {

const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.038, 0.005);

/// A tube between two ball joints, one of which resists spin by `spin`.
fea::Model spinning(double spin) {
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {0.9, 0.0, 0.0}, 1, kTube, kSteel);
  model.beams[0].name = "tube";
  fea_test::hold(model, bar.nodes.front(), {true, true, true, false, true, true});
  fea_test::clamp(model, bar.nodes.back());
  model.beams[0].b.joint = fea_test::ball();
  model.beams[0].a.joint =
      fea_test::joint({fea::kRigid, fea::kRigid, fea::kRigid, fea::kRigid, 0.0, 0.0});
  fea::Spring hold{.a = bar.nodes.front(), .name = "friction"};
  hold.stiffness(3, 3) = spin;
  model.add(hold);
  return model;
}

/// Two long rails with rungs, held at both rails every `held` rungs; 12 unknowns a rung.
fea::Model ladder(int rungs, int held) {
  fea::Model model;
  std::array<NodeId, 2> last;
  for (int i = 0; i < rungs; ++i) {
    std::array<NodeId, 2> now;
    for (std::size_t side = 0; side < 2; ++side) {
      now[side] = model.add(fea::Node{.at_g = {0.3 * i, side == 0 ? -0.2 : 0.2, 0.0}});
      if (i % held == 0) fea_test::hold(model, now[side], {true, true, true, false, false, false});
      if (i > 0) {
        model.add(fea::Beam{.a = {.node = last[side]},
                            .b = {.node = now[side]},
                            .section = kTube,
                            .elastic = kSteel});
      }
    }
    model.add(fea::Beam{
        .a = {.node = now[0]}, .b = {.node = now[1]}, .section = kTube, .elastic = kSteel});
    last = now;
  }
  return model;
}

}  // namespace

TEST_CASE("the condition estimate is near the condition number", "[fea][condition]") {
  for (const fea::Model& model : {fea_test::mixed_frame().model, spinning(2.0), ladder(12, 11)}) {
    const fea::Factored factored = fea::factor(model);
    const Eigen::MatrixXd lower(factored.system().scaled());
    const Eigen::MatrixXd k = lower.selfadjointView<Eigen::Lower>();
    const Eigen::MatrixXd inverse = k.inverse();
    const double exact =
        k.cwiseAbs().colwise().sum().maxCoeff() * inverse.cwiseAbs().colwise().sum().maxCoeff();
    const double estimate = fea::condition(factored).number;
    CHECK(estimate <= exact * (1.0 + 1e-6));
    CHECK(estimate >= exact / 3.0);
  }
}

TEST_CASE("what is nearly loose is named, and what alone holds it", "[fea][condition]") {
  CHECK(fea::condition(fea::factor(spinning(2.0))).cause.empty());
  const fea::Condition poor = fea::condition(fea::factor(spinning(1.0e-7)));
  CHECK(poor.number > fea::kIllConditioned);
  CHECK_THAT(poor.cause, Contains("can nearly turn about x") &&
                             Contains("spring `friction` resists it most") &&
                             Contains("times softer than beam `tube`"));
}

TEST_CASE("a piece much stiffer than the rest is named", "[fea][condition]") {
  // A piece ten million times stiffer at the end of a slender whip.
  fea::Model model;
  const Chain whip = chain(model, Vector3::Zero(), {2.0, 0.0, 0.0}, 2, kTube, kSteel);
  for (fea::Beam& beam : model.beams) beam.name = "whip";
  fea_test::clamp(model, whip.nodes.front());
  const fea::Elastic stiff{.young = 1.0e7 * kSteel.young, .shear = 1.0e7 * kSteel.shear};
  chain(model, {2.0, 0.0, 0.0}, {2.4, 0.0, 0.0}, 1, kTube, stiff, whip.nodes.back());
  model.beams.back().name = "block";
  const fea::Condition poor = fea::condition(fea::factor(model));
  CHECK(poor.number > fea::kIllConditioned);
  CHECK_THAT(poor.cause, Contains("times softer than beam `block`"));
}

TEST_CASE("a frame of a hundred thousand unknowns is solved", "[fea][large]") {
  const fea::Model model = ladder(8400, 10);
  const fea::Factored factored = fea::factor(model);
  const fea::FactorSize size = fea::factor_size(factored);
  CHECK(size.unknowns > 95000);
  CHECK(size.nonzeros > size.unknowns);
  CHECK(size.nonzeros < 40 * size.unknowns);
  CHECK(size.bytes_per_nonzero() > 8.0);
  CHECK(size.bytes_per_nonzero() < 16.0);
  const NodeId middle{8405};
  for (const fea::Method method : {fea::Method::linear, fea::Method::second_order}) {
    const fea::Solution s =
        fea::solve(factored, push(middle, {0.0, 100.0, -500.0}), {.method = method});
    REQUIRE(s.status() == fea::SolveStatus::converged);
    CHECK(s.residual() < 1e-8);
  }
  CHECK(fea::condition(factored).number < fea::kIllConditioned);
}

}  // namespace condition_test
