// Critical loads against published results. "from memory": the numbers were recalled from the
// named source and recomputed, not read in it. Most are coefficients m of P = m E I / L^2; members
// have eight pieces, good for a hundredth of a percent (two thousandths with both ends fixed).

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "tests/fea/build_frames.hpp"

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::NodeId;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using fea_test::section;

namespace {

constexpr double kPi = 3.14159265358979323846;
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

TEST_CASE("Euler's four columns", "[fea][published][buckling]") {
  // Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., art. 2.1-2.2 (from memory).
  CHECK_THAT(column(kPin, kSlide), WithinRel(9.8696, 2e-4));
  CHECK_THAT(column(kFixed, kFree), WithinRel(2.4674, 2e-4));
  CHECK_THAT(column(kFixed, kSlide), WithinRel(20.191, 5e-4));
  CHECK_THAT(column(kFixed, kGuide), WithinRel(39.478, 2e-3));
}

TEST_CASE("pin-ended tube column", "[fea][published][buckling]") {
  // Hibbeler, Mechanics of Materials (SI), example 13.1: radii 75 and 70 mm, 7.2 m, 200 GPa;
  // 228.2 kN, 100.2 MPa (read).
  const sections::AreaProps tube = fea_test::tube(0.150, 0.005);
  const fea::Elastic steel{.young = 200.0e9, .shear = 77.0e9};
  fea::Model model;
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 7.2}, kPieces, tube, steel);
  fea_test::hold(model, post.nodes.front(), {true, true, true, false, false, true});
  fea_test::hold(model, post.nodes.back(), {true, true, false, false, false, false});
  const fea::BucklingResult result =
      fea::buckle(fea::factor(model), push(post.nodes.back(), {0.0, 0.0, -1000.0}));
  REQUIRE(result.modes.size() == 3);
  CHECK_THAT(result.modes[0].factor, WithinRel(228.2, 3e-4));
  CHECK_THAT(1000.0 * result.modes[0].factor / tube.area, WithinRel(100.2e6, 5e-4));
  // Round: twice, and the next four times as high.
  CHECK_THAT(result.modes[1].factor, WithinRel(result.modes[0].factor, 1e-8));
  CHECK_THAT(result.modes[2].factor, WithinRel(4.0 * 228.2, 1e-3));
}

TEST_CASE("portals that sway and that do not", "[fea][published][buckling]") {
  // Timoshenko and Gere, art. 2.4 (from memory): m = 1.82 with pinned feet, 7.38 with fixed ones;
  // 25.2 with fixed feet and sway prevented (from memory, less sure).
  CHECK_THAT(portal(kPin, kFree), WithinRel(1.8213, 5e-4));
  CHECK_THAT(portal(kFixed, kFree), WithinRel(7.3792, 5e-4));
  const Held no_sway = {true, true, false, true, false, true};
  CHECK_THAT(portal(kFixed, no_sway), WithinRel(25.182, 1e-3));
}

TEST_CASE("closed square frame with two sides compressed", "[fea][published][buckling]") {
  // Timoshenko and Gere, art. 2.4: tan u = -u, u = kL / 2 = 2.029, m = 16.47 (from memory). The
  // corners are kept from swaying.
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
  CHECK_THAT(lowest(model, loads), WithinRel(16.463, 5e-4));
}

TEST_CASE("cantilever column on a rotational spring", "[fea][published][buckling]") {
  // x tan x = c L / EI, P = x^2 EI / L^2: 0.8603 for c L / EI = 1 (Timoshenko and Gere, art. 2.3;
  // root from Carslaw and Jaeger, Appendix IV, table I; from memory). The spring once as a
  // joint of the beam's end, once as a spring between nodes, once to the ground.
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
  CHECK_THAT(lowest(by_joint, push(one.nodes.back(), {0.0, 0.0, -1.0})), WithinRel(0.74017, 1e-4));

  fea::Model to_ground;
  const Chain two = make(to_ground);
  fea_test::hold(to_ground, two.nodes.front(), kPin);
  turning.a = two.nodes.front();
  to_ground.add(turning);
  CHECK_THAT(lowest(to_ground, push(two.nodes.back(), {0.0, 0.0, -1.0})), WithinRel(0.74017, 1e-4));

  fea::Model between;
  const Chain three = make(between);
  const NodeId base = between.add(fea::Node{.at_g = Vector3::Zero()});
  fea_test::clamp(between, base);
  turning.a = three.nodes.front();
  turning.b = base;
  turning.stiffness(0, 0) = turning.stiffness(2, 2) = 1.0e8;
  between.add(turning);
  CHECK_THAT(lowest(between, push(three.nodes.back(), {0.0, 0.0, -1.0})), WithinRel(0.74017, 1e-4));
}

TEST_CASE("pinned column held aside by a spring on top", "[fea][published][buckling]") {
  // The bar turns as a rigid one at P = k L, below Euler's load (in the manner of Timoshenko and
  // Gere, art. 2.2-2.6; from memory): 5 N/mm, 1000 mm, EI = 1e9 N mm^2 -> 5000 N.
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
  CHECK_THAT(result.modes[0].factor, WithinRel(5000.0, 1e-4));
  CHECK_THAT(result.modes[0].spring_energy[0], WithinAbs(1.0, 1e-6));
  CHECK_THAT(result.modes[1].factor, WithinRel(9869.6, 2e-4));
}

TEST_CASE("symmetric stepped column", "[fea][published][buckling]") {
  // Timoshenko and Gere, art. 2.14, table of m in P = m E I2 / L^2; hinged ends, middle part a
  // has I2, the ends I1 (from memory; three figures printed, recomputed to five).
  struct Row {
    double i1_over_i2, a_over_l, m;
  };
  const std::vector<Row> rows = {{0.1, 0.2, 1.4675}, {0.1, 0.4, 2.4006}, {0.1, 0.6, 4.4978},
                                 {0.1, 0.8, 8.588},  {0.4, 0.2, 5.0884}, {0.4, 0.4, 6.6774},
                                 {0.4, 0.6, 8.5098}, {0.4, 0.8, 9.6742}, {0.8, 0.2, 8.5512},
                                 {0.8, 0.4, 9.1767}, {0.8, 0.6, 9.6315}, {0.8, 0.8, 9.8376}};
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
    CHECK_THAT(lowest(model, push(top.nodes.back(), {0.0, 0.0, -1.0})), WithinRel(row.m, 5e-4));
  }
}

TEST_CASE("column under its own weight", "[fea][published][buckling]") {
  // Timoshenko and Gere, art. 2.12: (q L)cr = 7.837 EI / L^2 (from memory).
  fea::Model model;
  const int n = 40;  // each piece has its mean axial force
  const Chain post = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, n, kBar, kUnit);
  fea_test::keep_in_xz(model);
  fea_test::clamp(model, post.nodes.front());
  fea::Loads loads;
  for (const fea::BeamId id : post.beams) {
    loads.lines.push_back({.beam = id, .at_from_g = {0.0, 0.0, -1.0}, .at_to_g = {0.0, 0.0, -1.0}});
  }
  CHECK_THAT(lowest(model, loads), WithinRel(7.8373, 5e-4));
}

namespace {

// The right-angle frame: legs of 240, a strip 30 deep and 0.6 thick in the plane of the frame.
const fea::Elastic kAlloy{.young = 71240.0, .shear = 71240.0 / 2.62};
constexpr double kLeg = 240.0;
const sections::AreaProps kStrip =
    section(18.0, 30.0 * 0.6 * 0.6 * 0.6 / 12.0, 0.6 * 30.0 * 30.0 * 30.0 / 12.0,
            30.0 * 0.6 * 0.6 * 0.6 / 3.0);

}  // namespace

TEST_CASE("right-angle frame pushed at its free end", "[fea][published][buckling]") {
  // Argyris and others, Comput. Methods Appl. Mech. Eng. 17/18 (1979); Simo and Vu-Quoc (1986):
  // +1.088 and -0.680 N (from memory). Without the joint moments' terms it is 0.55 and -0.42.
  fea::Model model;
  const Chain first = chain(model, Vector3::Zero(), {kLeg, 0.0, 0.0}, 8, kStrip, kAlloy);
  const Chain second =
      chain(model, {kLeg, 0.0, 0.0}, {kLeg, -kLeg, 0.0}, 8, kStrip, kAlloy, first.nodes.back());
  fea_test::clamp(model, first.nodes.front());
  const fea::Factored factored = fea::factor(model);
  const auto factor_of = [&](double push_x) {
    const fea::BucklingResult r =
        fea::buckle(factored, push(second.nodes.back(), {push_x, 0.0, 0.0}));
    REQUIRE(r.status == fea::BucklingStatus::found);
    return r.modes.front().factor;
  };
  CHECK_THAT(factor_of(1.0), WithinRel(1.088, 2e-3));
  CHECK_THAT(factor_of(-1.0), WithinRel(0.6807, 2e-3));
}

TEST_CASE("right-angle frame bent by moments at its ends", "[fea][published][buckling]") {
  // Same source: +-622.2 N mm; closed form pi sqrt(EI GJ) / L (from memory). The ends turn about
  // the normal of the plane alone; one of them slides toward the other.
  fea::Model model;
  const double half = kLeg / std::sqrt(2.0);
  const Chain first = chain(model, Vector3::Zero(), {half, half, 0.0}, 16, kStrip, kAlloy);
  const Chain second = chain(model, {half, half, 0.0}, {2.0 * half, 0.0, 0.0}, 16, kStrip, kAlloy,
                             first.nodes.back());
  fea_test::hold(model, first.nodes.front(), {true, true, true, true, true, false});
  fea_test::hold(model, second.nodes.back(), {false, true, true, true, true, false});
  const double closed =
      kPi * std::sqrt(kAlloy.young * kStrip.iyy * kAlloy.shear * kStrip.torsion) / kLeg;
  CHECK_THAT(closed, WithinRel(622.2, 1e-4));
  for (const double sign : {1.0, -1.0}) {
    const fea::Loads loads = push(first.nodes.front(), Vector3::Zero(), {0.0, 0.0, sign}) +
                             push(second.nodes.back(), Vector3::Zero(), {0.0, 0.0, -sign});
    CHECK_THAT(lowest(model, loads), WithinRel(closed, 3e-3));
  }
}
