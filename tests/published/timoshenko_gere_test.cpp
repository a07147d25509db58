// Critical loads of Timoshenko and Gere's columns and frames. Most are coefficients m of
// P = m E I / L^2; members have eight pieces, good for a hundredth of a percent (two thousandths
// with both ends fixed).

#include <array>
#include <vector>

#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace timoshenko_gere_test {
using Catch::Matchers::WithinAbs;
using fea::NodeId;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using fea_test::section;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

const Source kFrames{"Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., art. 2.4",
                     Basis::from_memory};

constexpr int kPieces = 8;

// Unit length and unit E I in the plane of the frames (xz); stiff along and across it.
const fea::Elastic kUnit{.young = 1.0, .shear = 0.4};
const sections::AreaProps kBar = section(1.0e5, 1.0, 50.0, 50.0);

double lowest(const fea::Model& model, const fea::Loads& loads) {
  const fea::BucklingResult result = fea::buckle(fea::factor(model), loads);
  REQUIRE(result.status == fea::BucklingStatus::found);
  return result.modes.front().factor;
}

using Held = std::array<bool, 6>;
constexpr Held kFree = {false, true, false, true, false, true};  // in the plane xz
constexpr Held kPin = {true, true, true, true, false, true};
constexpr Held kSlide = {true, true, false, true, false, true};  // along z only, may turn
constexpr Held kGuide = {true, true, false, true, true, true};   // along z only
constexpr Held kFixed = {true, true, true, true, true, true};

/// An upright column with unit load on top.
double column(const Held& foot, const Held& top) {
  fea::Model model;
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, kPieces, kBar, kUnit);
  fea_test::keep_in_xz(model);
  fea_test::hold(model, post.nodes.front(), foot);
  fea_test::hold(model, post.nodes.back(), top);
  return lowest(model, push(post.nodes.back(), {0.0, 0.0, -1.0}));
}

/// A portal of unit columns and beam with a unit load on each column.
double portal(const Held& foot, const Held& corner) {
  fea::Model model;
  const Chain left = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, kPieces, kBar, kUnit);
  const Chain top =
      chain(model, {0.0, 0.0, 1.0}, {1.0, 0.0, 1.0}, kPieces, kBar, kUnit, left.nodes.back());
  const Chain right =
      chain(model, {1.0, 0.0, 1.0}, {1.0, 0.0, 0.0}, kPieces, kBar, kUnit, top.nodes.back());
  fea_test::keep_in_xz(model);
  fea_test::hold(model, left.nodes.front(), foot);
  fea_test::hold(model, right.nodes.back(), foot);
  fea_test::hold(model, top.nodes.front(), corner);
  return lowest(
      model, push(top.nodes.front(), {0.0, 0.0, -1.0}) + push(top.nodes.back(), {0.0, 0.0, -1.0}));
}

}  // namespace

TEST_CASE("Euler's four columns", "[fea][buckling]") {
  const Source source{"Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., art. 2.1-2.2",
                      Basis::from_memory};
  verify(source, "m, pinned at both ends", "9.870", column(kPin, kSlide), within(2e-4));
  verify(source, "m, fixed and free", "2.467", column(kFixed, kFree), within(3e-4));
  verify(source, "m, fixed and pinned", "20.19", column(kFixed, kSlide), within(5e-4));
  verify(source, "m, fixed at both ends", "39.48", column(kFixed, kGuide), within(2e-3));
}

TEST_CASE("portals that sway and that do not", "[fea][buckling]") {
  verify(kFrames, "m, portal with pinned feet, side sway", "1.82", portal(kPin, kFree));
  verify(kFrames, "m, portal with fixed feet, side sway", "7.38", portal(kFixed, kFree));
  const Held no_sway = {true, true, false, true, false, true};
  verify(kFrames, "m, portal with fixed feet, sway prevented (less sure)", "25.2",
         portal(kFixed, no_sway));
}

TEST_CASE("closed square frame with two sides compressed", "[fea][buckling]") {
  // tan u = -u, u = kL / 2 = 2.029. The corners are kept from swaying.
  fea::Model model;
  const std::vector<Vector3> corner = {Vector3(0.0, 0.0, 0.0), Vector3(0.0, 0.0, 1.0),
                                       Vector3(1.0, 0.0, 1.0), Vector3(1.0, 0.0, 0.0)};
  std::vector<NodeId> node;
  for (const Vector3& at : corner) node.push_back(model.add(fea::Node{.at_g = at}));
  for (std::size_t i = 0; i < 4; ++i) {
    const std::size_t j = (i + 1) % 4;
    chain(model, corner[i], corner[j], kPieces, kBar, kUnit, node[i], node[j]);
  }
  fea_test::keep_in_xz(model);
  fea_test::hold(model, node[0], {true, true, true, true, false, true});
  fea_test::hold(model, node[1], {true, true, false, true, false, true});
  fea_test::hold(model, node[3], {false, true, true, true, false, true});
  const fea::Loads loads = push(node[1], {0.0, 0.0, -1.0}) + push(node[2], {0.0, 0.0, -1.0});
  verify(kFrames, "m, closed square frame, two sides compressed", "16.47", lowest(model, loads),
         within(5e-4));
}

TEST_CASE("cantilever column on a rotational spring", "[fea][buckling]") {
  // The spring once as a joint of the beam's end, once as a spring between nodes, once to the
  // ground.
  const Source source{
      "Timoshenko and Gere, art. 2.3, x tan x = cL/EI, root from Carslaw and "
      "Jaeger, Conduction of Heat in Solids, appendix IV, table I",
      Basis::from_memory};
  const auto make = [](fea::Model& model) {
    const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, kPieces, kBar, kUnit);
    fea_test::keep_in_xz(model);
    return post;
  };
  fea::Spring turning{.a = {}};
  turning.stiffness(4, 4) = 1.0;

  fea::Model by_joint;
  const Chain one = make(by_joint);
  fea_test::clamp(by_joint, one.nodes.front());
  by_joint.beams.front().a.joint =
      fea_test::joint({fea::kRigid, fea::kRigid, fea::kRigid, fea::kRigid, 1.0, fea::kRigid});
  verify(source, "m, cL/EI = 1, elastic joint", "0.7402",
         lowest(by_joint, push(one.nodes.back(), {0.0, 0.0, -1.0})), within(1.5e-4));

  fea::Model to_ground;
  const Chain two = make(to_ground);
  fea_test::hold(to_ground, two.nodes.front(), kPin);
  turning.a = two.nodes.front();
  to_ground.add(turning);
  verify(source, "m, cL/EI = 1, spring to the ground", "0.7402",
         lowest(to_ground, push(two.nodes.back(), {0.0, 0.0, -1.0})), within(1.5e-4));

  fea::Model between;
  const Chain three = make(between);
  const NodeId base = between.add(fea::Node{.at_g = Vector3::Zero()});
  fea_test::clamp(between, base);
  turning.a = three.nodes.front();
  turning.b = base;
  turning.stiffness(0, 0) = turning.stiffness(2, 2) = 1.0e8;
  between.add(turning);
  verify(source, "m, cL/EI = 1, spring between nodes", "0.7402",
         lowest(between, push(three.nodes.back(), {0.0, 0.0, -1.0})), within(1.5e-4));
}

TEST_CASE("pinned column held aside by a spring on top", "[fea][buckling]") {
  // The bar turns as a rigid one at P = k L, below Euler's load. mm, N.
  const Source source{
      "Timoshenko and Gere, in the manner of art. 2.2-2.6, pinned column with a "
      "spring of 5 N/mm on top, 1000 mm, EI 1e9 N mm2",
      Basis::formula_from_memory};
  const fea::Elastic elastic{.young = 1.0e9, .shear = 0.4e9};
  fea::Model model;
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1000.0}, kPieces,
                           section(1.0, 1.0, 50.0, 50.0), elastic);
  fea_test::keep_in_xz(model);
  fea_test::hold(model, post.nodes.front(), kPin);
  fea::Spring aside{.a = post.nodes.back()};
  aside.stiffness(0, 0) = 5.0;
  model.add(aside);
  const fea::BucklingResult result =
      fea::buckle(fea::factor(model), push(post.nodes.back(), {0.0, 0.0, -1.0}));
  REQUIRE(result.modes.size() >= 2);
  verify(source, "load at which it turns on its spring", "5000 N", result.modes[0].factor,
         within(1e-4));
  verify(source, "load at which it bends", "9870 N", result.modes[1].factor, within(3e-4));
  CHECK_THAT(result.modes[0].spring_energy[0], WithinAbs(1.0, 1e-6));
}

TEST_CASE("symmetric stepped column", "[fea][buckling]") {
  // P = m E I2 / L^2; hinged ends, middle part a has I2, the ends I1.
  const Source source{
      "Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., art. 2.14, table "
      "of m",
      Basis::from_memory};
  struct Row {
    double i1_over_i2, a_over_l;
    const char *quantity, *m;
  };
  const std::vector<Row> rows = {{0.1, 0.2, "m, I1/I2 = 0.1, a/L = 0.2", "1.47"},
                                 {0.1, 0.4, "m, I1/I2 = 0.1, a/L = 0.4", "2.40"},
                                 {0.1, 0.6, "m, I1/I2 = 0.1, a/L = 0.6", "4.50"},
                                 {0.1, 0.8, "m, I1/I2 = 0.1, a/L = 0.8", "8.59"},
                                 {0.4, 0.2, "m, I1/I2 = 0.4, a/L = 0.2", "5.09"},
                                 {0.4, 0.4, "m, I1/I2 = 0.4, a/L = 0.4", "6.68"},
                                 {0.4, 0.6, "m, I1/I2 = 0.4, a/L = 0.6", "8.51"},
                                 {0.4, 0.8, "m, I1/I2 = 0.4, a/L = 0.8", "9.67"},
                                 {0.8, 0.2, "m, I1/I2 = 0.8, a/L = 0.2", "8.55"},
                                 {0.8, 0.4, "m, I1/I2 = 0.8, a/L = 0.4", "9.18"},
                                 {0.8, 0.6, "m, I1/I2 = 0.8, a/L = 0.6", "9.63"},
                                 {0.8, 0.8, "m, I1/I2 = 0.8, a/L = 0.8", "9.84"}};
  for (const Row& row : rows) {
    sections::AreaProps thin = kBar;
    thin.iyy = row.i1_over_i2;
    const double low = 0.5 * (1.0 - row.a_over_l);
    fea::Model model;
    const Chain foot = chain(model, Vector3::Zero(), {0.0, 0.0, low}, 4, thin, kUnit);
    const Chain middle = chain(model, {0.0, 0.0, low}, {0.0, 0.0, 1.0 - low}, kPieces, kBar, kUnit,
                               foot.nodes.back());
    const Chain top =
        chain(model, {0.0, 0.0, 1.0 - low}, {0.0, 0.0, 1.0}, 4, thin, kUnit, middle.nodes.back());
    fea_test::keep_in_xz(model);
    fea_test::hold(model, foot.nodes.front(), kPin);
    fea_test::hold(model, top.nodes.back(), kSlide);
    verify(source, row.quantity, row.m, lowest(model, push(top.nodes.back(), {0.0, 0.0, -1.0})));
  }
}

TEST_CASE("column under its own weight", "[fea][buckling]") {
  const Source source{"Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., art. 2.12",
                      Basis::from_memory};
  fea::Model model;
  const int n = 40;  // each piece has its mean axial force
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, n, kBar, kUnit);
  fea_test::keep_in_xz(model);
  fea_test::clamp(model, post.nodes.front());
  fea::Loads loads;
  for (const fea::BeamId id : post.beams) {
    loads.lines.push_back({.beam = id, .at_from_g = {0.0, 0.0, -1.0}, .at_to_g = {0.0, 0.0, -1.0}});
  }
  verify(source, "m of qL, cantilever under its own weight", "7.837", lowest(model, loads),
         within(5e-4));
}

TEST_CASE("uniform load on a strut at half its Euler load", "[fea][second-order]") {
  const Source source{
      "Timoshenko and Gere, Theory of Elastic Stability, art. 1.4, uniform load on "
      "a pinned strut, P / Pe = 0.5",
      Basis::formula_from_memory};
  const auto middle = [](double axial) {
    fea::Model model;
    const Chain beam = chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, kPieces, kBar, kUnit);
    fea_test::keep_in_xz(model);
    fea_test::hold(model, beam.nodes.front(), kPin);
    fea_test::hold(model, beam.nodes.back(), {false, true, true, true, false, true});
    fea::Loads loads = push(beam.nodes.back(), {-axial, 0.0, 0.0});
    const Vector3 w(0.0, 0.0, -1.0e-4);
    for (const fea::BeamId id : beam.beams) {
      loads.lines.push_back({.beam = id, .at_from_g = w, .at_to_g = w});
    }
    const fea::Solution s = fea::solve(fea::factor(model), loads);
    REQUIRE(s.status() == fea::SolveStatus::converged);
    return std::array<double, 2>{s.placement(beam.nodes[kPieces / 2])(2),
                                 s.forces_at(beam.beams[kPieces / 2], 0.0).my};
  };
  const auto linear = middle(0.0);
  const auto half = middle(0.5 * base::kPi * base::kPi);
  verify(source, "deflection over the linear one", "2.0036", half[0] / linear[0], within(2e-4));
  verify(source, "moment over the linear one", "2.0299", half[1] / linear[1], within(2e-4));
}

}  // namespace timoshenko_gere_test
