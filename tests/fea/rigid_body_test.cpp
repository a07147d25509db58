// Rigid bodies: closed forms derived by hand, and against rigid arms that are known to be right.

#include <cmath>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "fea/buckling.hpp"
#include "tests/fea/build_frames.hpp"

namespace rigid_body_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;

namespace {

const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.038, 0.005);

struct Table {
  fea::Model model;
  std::vector<NodeId> tops;
};

/// Two clamped legs of height 1, their tops 2 apart in one rigid body with a third node between.
Table two_legs() {
  Table out;
  for (const double x : {-1.0, 1.0}) {
    const Chain leg = chain(out.model, {x, 0.0, 0.0}, {x, 0.0, 1.0}, 6, kTube, kSteel);
    fea_test::clamp(out.model, leg.nodes.front());
    out.tops.push_back(leg.nodes.back());
  }
  out.tops.push_back(out.model.add(fea::Node{.at_g = {0.0, 0.0, 1.2}, .name = "middle"}));
  out.model.add(fea::RigidBody{.master = out.tops[2], .carried = {out.tops[0], out.tops[1]}});
  return out;
}

}  // namespace

TEST_CASE("a rigid table on two legs sways as its legs bend", "[fea][rigid]") {
  // Each leg: 12 E I / h^3 with its top held from turning; but the legs' length lets the table
  // turn: 2 E A / 2 * (span/2)^2 ... legs far apart make that negligible only for stiff E A, so the
  // exact 3 x 3 balance of the table is solved by hand here: u, w = 0, ry by symmetry of the legs.
  const Table table = two_legs();
  const double ei = kSteel.young * kTube.iyy;
  const double ea = kSteel.young * kTube.area;
  // Legs put on the table at z = 1: H = 12 ei u - 6 ei t (each), M = -6 ei u + 4 ei t (each), with
  // t the turn about y, u at z = 1; axially ea * 1^2 * t each. Push P at z = 1.2.
  const double k11 = 2.0 * 12.0 * ei;
  const double k12 = -2.0 * 6.0 * ei;
  const double k22 = 2.0 * 4.0 * ei + 2.0 * ea;
  const double p = 1000.0;
  const double m = 0.2 * p;
  const double det = k11 * k22 - k12 * k12;
  const double u = (p * k22 - k12 * m) / det;
  const double t = (k11 * m - k12 * p) / det;
  const fea::Solution s = fea_test::linear(table.model, push(table.tops[2], {p, 0.0, 0.0}));
  CHECK_THAT(s.placement(table.tops[0])(0), WithinRel(u, 1e-9));
  CHECK_THAT(s.placement(table.tops[2])(0), WithinRel(u + 0.2 * t, 1e-9));
  CHECK_THAT(s.placement(table.tops[1])(2), WithinRel(-t, 1e-6));
  for (const NodeId top : table.tops) CHECK_THAT(s.placement(top)(4), WithinRel(t, 1e-6));
  CHECK_THAT(s.reaction(NodeId{0})(0) + s.reaction(NodeId{7})(0), WithinRel(-p, 1e-9));
  CHECK(s.reaction(table.tops[0]).norm() == 0.0);
  CHECK(s.residual() < 1e-9);
}

TEST_CASE("a column under a rigid mast buckles at tan(k L) = 1 / (k a)", "[fea][rigid][buckling]") {
  // Clamped foot, flexible length L = 1, rigid length a above it, load on top. From E I y'' =
  // P (d - y): y = d (1 - cos k x), d = y(L) + a y'(L).
  fea::Model model;
  const Chain column = chain(model, Vector3::Zero(), {0.0, 0.0, 1.0}, 10, kTube, kSteel);
  fea_test::clamp(model, column.nodes.front());
  const double a = 0.4;
  const NodeId top = model.add(fea::Node{.at_g = {0.0, 0.0, 1.0 + a}});
  model.add(fea::RigidBody{.master = column.nodes.back(), .carried = {top}});
  double low = 0.1;
  double high = 1.5;
  for (int i = 0; i < 60; ++i) {
    const double k = 0.5 * (low + high);
    (std::tan(k) < 1.0 / (k * a) ? low : high) = k;
  }
  const double critical = low * low * kSteel.young * kTube.iyy;
  const fea::Loads loads = push(top, {0.0, 0.0, -1.0});
  const fea::BucklingResult r = fea::buckle(fea::factor(model), loads);
  REQUIRE(r.status == fea::BucklingStatus::found);
  CHECK_THAT(r.modes[0].factor, WithinRel(critical, 1e-5));
  // The same when the master is on top: nothing depends on which node carries the others.
  model.rigid.front() = {.master = top, .carried = {column.nodes.back()}};
  CHECK_THAT(fea::buckle(fea::factor(model), loads).modes[0].factor, WithinRel(critical, 1e-5));
  const fea::Solution s = fea::solve(fea::factor(model), push(top, {10.0, 0.0, -0.5 * critical}));
  REQUIRE(s.status() == fea::SolveStatus::converged);
  // y'' = -k^2 (y - d) - H (l - x) / EI at half the critical load, solved by hand.
  const double k = std::sqrt(0.5) * low;
  const double h_over_p = 10.0 / (0.5 * critical);
  // y = d + H/P (l - x) + A cos kx + B sin kx; y(0) = y'(0) = 0, y(1) + a y'(1) = d, l = 1 + a.
  const double l = 1.0 + a;
  const double b = h_over_p / k;
  // d = -A - H l / P;  0 = H a / P - a H / P + A (cos k - a k sin k) + B (sin k + a k cos k)
  const double aa = -b * (std::sin(k) + a * k * std::cos(k)) / (std::cos(k) - a * k * std::sin(k));
  // The column is pressed shorter by a ten-thousandth, which the formula leaves out.
  CHECK_THAT(s.placement(top)(0), WithinRel(-aa - h_over_p * l, 3e-4));
}

TEST_CASE("a rigid body equals rigid arms from one node", "[fea][rigid]") {
  // The same frame: three bars and a bush meet a hub by nodes of its rigid body, or by offsets.
  const std::vector<Vector3> ends = {{0.1, 0.2, 0.3}, {-0.2, 0.1, 0.25}, {0.15, -0.2, 0.2}};
  const std::vector<Vector3> feet = {{0.8, 0.9, -0.5}, {-0.9, 0.4, -0.4}, {0.5, -1.0, -0.6}};
  fea::Model arms;
  fea::Model body;
  const NodeId hub_a = arms.add(fea::Node{.at_g = Vector3::Zero()});
  const NodeId hub_b = body.add(fea::Node{.at_g = Vector3::Zero()});
  fea::RigidBody rigid{.master = hub_b, .carried = {}};
  for (std::size_t i = 0; i < 3; ++i) {
    const Chain a = chain(arms, ends[i], feet[i], 4, kTube, kSteel);
    arms.beams[4 * i].a = {.node = hub_a, .offset_g = ends[i]};
    fea_test::clamp(arms, a.nodes.front());  // no longer used by any beam
    fea_test::clamp(arms, a.nodes.back());
    const Chain b = chain(body, ends[i], feet[i], 4, kTube, kSteel);
    fea_test::clamp(body, b.nodes.back());
    rigid.carried.push_back(b.nodes.front());
  }
  const Vector3 mount(0.0, -0.1, 0.15);
  const NodeId carried_mount = body.add(fea::Node{.at_g = mount});
  rigid.carried.push_back(carried_mount);
  body.add(rigid);
  fea::Spring bush{.a = hub_a, .offset_a_g = mount};
  bush.stiffness.diagonal() << 2.0e5, 3.0e5, 4.0e5, 50.0, 60.0, 70.0;
  arms.add(bush);
  bush.a = carried_mount;
  bush.offset_a_g = Vector3::Zero();
  body.add(bush);

  fea::Loads on_arms;
  fea::Loads on_body;
  const Vector3 force(4000.0, -3000.0, -20000.0);
  on_arms.nodes.push_back(
      {.node = hub_a, .offset_g = ends[1], .force_g = force, .moment_g = {20.0, 30.0, -40.0}});
  on_body.nodes.push_back(
      {.node = rigid.carried[1], .force_g = force, .moment_g = {20.0, 30.0, -40.0}});
  for (const fea::Method method : {fea::Method::linear, fea::Method::second_order}) {
    const fea::Solution s = fea::solve(fea::factor(arms), on_arms, {.method = method});
    const fea::Solution t = fea::solve(fea::factor(body), on_body, {.method = method});
    REQUIRE(s.status() == fea::SolveStatus::converged);
    REQUIRE(t.status() == fea::SolveStatus::converged);
    CHECK((s.placement(hub_a) - t.placement(hub_b)).norm() < 1e-10);
    for (int b = 0; b < 12; ++b) {
      CHECK((s.end_forces({b}) - t.end_forces({b})).norm() < 1e-4);
    }
    // About the mount, not about the hub.
    const Vector6 at_hub = s.reaction(hub_a);
    const Vector6 at_mount = t.reaction(carried_mount);
    CHECK((at_hub.head<3>() - at_mount.head<3>()).norm() < 1e-5);
    CHECK((at_hub.tail<3>() - mount.cross(at_hub.head<3>().eval()) - at_mount.tail<3>()).norm() <
          1e-5);
    CHECK(t.reaction(hub_b).norm() == 0.0);
  }
  const fea::SolveOptions large{.method = fea::Method::large_displacement};
  const fea::Solution moved_arms = fea::solve(fea::factor(arms), on_arms * 8.0, large);
  const fea::Solution moved_body = fea::solve(fea::factor(body), on_body * 8.0, large);
  REQUIRE(moved_arms.status() == fea::SolveStatus::converged);
  REQUIRE(moved_body.status() == fea::SolveStatus::converged);
  CHECK((moved_arms.placement(hub_a) - moved_body.placement(hub_b)).norm() < 1e-9);
  for (int b = 0; b < 12; ++b) {
    CHECK((moved_arms.end_forces({b}) - moved_body.end_forces({b})).norm() < 1e-3);
  }
  CHECK((moved_arms.reaction(hub_a) - moved_body.reaction(carried_mount)).head<3>().norm() < 1e-4);
  const fea::BucklingResult s = fea::buckle(fea::factor(arms), on_arms);
  const fea::BucklingResult t = fea::buckle(fea::factor(body), on_body);
  REQUIRE(s.modes.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK_THAT(t.modes[i].factor, WithinRel(s.modes[i].factor, 1e-8));
  }
}

TEST_CASE("large displacement: a lever turns as far as its spring lets it", "[fea][rigid][large]") {
  // A rigid lever of length a on a pin, held by a torsion spring k; a weight W at its far end and a
  // stop under it: k t + K (a sin t - c) a cos t = W a cos t, by hand. It has gone a (cos t - 1)
  // back and a sin t down.
  const double a = 0.8;
  const double k = 500.0;
  const double weight = 900.0;
  fea::Model model;
  const NodeId pin = model.add(fea::Node{.at_g = Vector3::Zero()});
  const NodeId tip = model.add(fea::Node{.at_g = {a, 0.0, 0.0}});
  fea_test::hold(model, pin, {true, true, true, true, false, true});
  model.add(fea::RigidBody{.master = pin, .carried = {tip}});
  fea::Spring spring{.a = pin};
  spring.stiffness(4, 4) = k;
  model.add(spring);
  for (const double stop : {0.0, 2000.0}) {
    const double clearance = 0.3;
    fea::Model now = model;
    if (stop > 0.0) {
      now.add(fea::Gap{.a = {.at_g = {a, 0.0, -1.0}},
                       .b = {.node = tip, .at_g = {a, 0.0, 0.0}},
                       .axis_g = Vector3(0.0, 0.0, 1.0),
                       .contact = fea::Gap::Contact::when_shorter,
                       .stiffness = stop,
                       .clearance = clearance});
    }
    const auto left = [&](double t) {
      const double pushed = std::max(0.0, a * std::sin(t) - clearance);
      return k * t - (weight - stop * pushed) * a * std::cos(t);
    };
    double low = 0.0;
    double high = 1.5;
    for (int i = 0; i < 60; ++i) (left(0.5 * (low + high)) < 0.0 ? low : high) = 0.5 * (low + high);
    const fea::Solution s = fea::solve(fea::factor(now), push(tip, {0.0, 0.0, -weight}),
                                       {.method = fea::Method::large_displacement});
    INFO(stop << ": " << s.words());
    REQUIRE(s.status() == fea::SolveStatus::converged);
    CHECK_THAT(s.placement(tip)(4), WithinRel(low, 1e-9));
    CHECK_THAT(s.placement(tip)(0), WithinRel(a * (std::cos(low) - 1.0), 1e-9));
    CHECK_THAT(s.placement(tip)(2), WithinRel(-a * std::sin(low), 1e-9));
    CHECK_THAT(s.reaction(pin)(4), WithinRel(-k * low, 1e-9));
  }
}

TEST_CASE("large displacement: own weight", "[fea][large]") {
  // A shelf that hangs by a thousandth of its length has the linear answer, w L^4 / (8 E I), but
  // for its shear.
  fea::Model model;
  const Chain shelf = chain(model, {0.0, 0.0, 0.0}, {1.0, 0.0, 0.0}, 4, kTube, kSteel);
  fea_test::clamp(model, shelf.nodes.front());
  for (fea::Beam& beam : model.beams) beam.density = 7850.0;
  fea::Loads loads;
  loads.gravity_g = {0.0, 0.0, -9.80665};
  const fea::Factored factored = fea::factor(model);
  const double linear =
      fea::solve(factored, loads, {.method = fea::Method::linear}).placement(shelf.nodes.back())(2);
  const double weight = 7850.0 * 9.80665 * kTube.area;
  CHECK_THAT(linear, WithinRel(-weight / (8.0 * kSteel.young * kTube.iyy), 0.01));
  const fea::Solution s = fea::solve(factored, loads, {.method = fea::Method::large_displacement});
  REQUIRE(s.status() == fea::SolveStatus::converged);
  CHECK_THAT(s.placement(shelf.nodes.back())(2), WithinRel(linear, 1e-5));
}

TEST_CASE("a support at a carried node holds the body there", "[fea][rigid]") {
  // A lever on a pin: pushed down at one end, held up by a spring at the other.
  fea::Model model;
  const NodeId left = model.add(fea::Node{.at_g = {-1.0, 0.0, 0.0}});
  const NodeId pin = model.add(fea::Node{.at_g = {0.0, 0.0, 0.0}});
  const NodeId right = model.add(fea::Node{.at_g = {3.0, 0.0, 0.0}});
  model.add(fea::RigidBody{.master = left, .carried = {pin, right}, .name = "lever"});
  fea_test::hold(model, pin, {true, true, true, true, false, true});
  fea::Spring up{.a = right};
  up.stiffness(2, 2) = 500.0;
  model.add(up);
  const fea::Solution s = fea_test::linear(model, push(left, {0.0, 0.0, -30.0}));
  // Moment 30 about the pin against 500 * 9 t.
  const double t = 30.0 / (500.0 * 9.0);
  CHECK_THAT(s.placement(left)(2), WithinRel(-t, 1e-12));
  CHECK_THAT(s.placement(right)(2), WithinRel(3.0 * t, 1e-12));
  CHECK_THAT(s.reaction(right)(2), WithinRel(-10.0, 1e-12));
  CHECK_THAT(s.reaction(pin)(2), WithinRel(40.0, 1e-12));
  CHECK_THAT(s.reaction(pin)(4), WithinAbs(0.0, 1e-12));
  // A heavier push on a lever that stands up topples it: P l = k h^2, exact in second order.
  model.nodes[0].at_g = {0.0, 0.0, 2.0};
  const fea::BucklingResult r = fea::buckle(fea::factor(model), push(left, {0.0, 0.0, -1.0}));
  REQUIRE(r.modes.size() == 1);
  CHECK_THAT(r.modes[0].factor, WithinRel(500.0 * 9.0 / 2.0, 1e-12));
}

TEST_CASE("a moved support takes its whole body along", "[fea][rigid][settlement]") {
  fea::Model model;
  const NodeId foot = model.add(fea::Node{.at_g = {0.0, 0.0, 0.0}});
  const NodeId far = model.add(fea::Node{.at_g = {2.0, 0.0, 0.0}});
  model.add(fea::RigidBody{.master = far, .carried = {foot}});
  const Chain bar = chain(model, {2.0, 0.0, 0.0}, {3.0, 0.0, 0.0}, 2, kTube, kSteel, far);
  fea_test::clamp(model, foot);
  fea::Loads loads;
  Vector6 turn = Vector6::Zero();
  turn(4) = 0.01;
  loads.moves.push_back({.node = foot, .by_g = turn});
  const fea::Solution s = fea_test::linear(model, loads);
  CHECK_THAT(s.placement(far)(2), WithinRel(-0.02, 1e-12));
  CHECK_THAT(s.placement(bar.nodes.back())(2), WithinRel(-0.03, 1e-9));
  CHECK(s.reaction(foot).norm() < 1e-6);
}

TEST_CASE("a rigid body that nothing holds is found", "[fea][rigid][mechanism]") {
  fea::Model model;
  const NodeId a = model.add(fea::Node{.at_g = {0.0, 0.0, 0.0}, .name = "hub"});
  const NodeId b = model.add(fea::Node{.at_g = {2.0, 0.0, 0.0}, .name = "wheel"});
  model.add(fea::RigidBody{.master = a, .carried = {b}});
  fea_test::hold(model, a, {true, true, true, true, true, false});
  const std::optional<fea::Mechanism> loose = fea::find_mechanism(model);
  REQUIRE(loose);
  CHECK(loose->words == "point `wheel` can move along y");
}

TEST_CASE("a rigid body is refused where it cannot be exact", "[fea][rigid]") {
  fea::Model model;
  const NodeId a = model.add(fea::Node{.at_g = {0.0, 0.0, 0.0}, .name = "left"});
  const NodeId b = model.add(fea::Node{.at_g = {2.0, 0.0, 0.0}, .name = "right"});
  model.add(fea::RigidBody{.master = a, .carried = {b}, .name = "axle"});
  fea_test::clamp(model, a);
  fea_test::hold(model, b, {false, false, true, false, false, false});
  CHECK_THROWS_WITH(fea::factor(model), Contains("rigid body `axle`") &&
                                            Contains("held at point `left` and at point `right`"));
  model.supports.pop_back();
  model.add(fea::RigidBody{.master = b, .carried = {a}, .name = "again"});
  CHECK_THROWS_WITH(fea::factor(model), Contains("point `right` is in a rigid body already"));
}

}  // namespace rigid_body_test
