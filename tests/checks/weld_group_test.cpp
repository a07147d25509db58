#include "checks/weld_group.hpp"

#include <cmath>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using checks::WeldLine;
using Eigen::Vector3d;

// Published values are in the units of their source: inches and pounds, or millimeters and newtons.
namespace {

const double kRoot2 = std::sqrt(2.0);

WeldLine line(double x1, double y1, double x2, double y2, double leg) {
  return {{x1, y1, 0.0}, {x2, y2, 0.0}, leg};
}

/// Web 190 and flanges 56, legs 6: the flanges run from the web toward +x.
std::vector<WeldLine> shigley_channel() {
  return {line(56, 0, 0, 0, 6), line(0, 0, 0, 190, 6), line(0, 190, 56, 190, 6)};
}

std::vector<WeldLine> box(double b, double d, double leg) {
  return {line(-b / 2, -d / 2, b / 2, -d / 2, leg), line(b / 2, -d / 2, b / 2, d / 2, leg),
          line(b / 2, d / 2, -b / 2, d / 2, leg), line(-b / 2, d / 2, -b / 2, -d / 2, leg)};
}

}  // namespace

// Shigley, Mechanical Engineering Design, 9th ed., Example 9-1 (from memory), 3 figures.
TEST_CASE("Shigley's channel-shaped weld group carries 25 kN as in Example 9-1", "[checks][weld]") {
  const checks::WeldGroup group{shigley_channel(), 482.6};
  const auto p = checks::weld_properties(group.lines);
  CHECK_THAT(p.area, WithinRel(1280.0, 2e-3));
  CHECK_THAT(p.centroid.x(), WithinRel(10.4, 3e-3));
  CHECK_THAT(p.inertia(2, 2), WithinRel(7.07e6, 1e-3));
  const checks::Wrench wrench{{0, -25e3, 0}, Vector3d::Zero(), {-100, 95, 0}};
  const auto worst = checks::worst_throat_stress(group, wrench);
  REQUIRE(worst);
  CHECK_THAT(worst->resultant, WithinRel(43.9, 2e-3));  // corner at the web
  CHECK_THAT(worst->point.x(), WithinAbs(0.0, 1e-9));
  // The free tip: direct 19.5 and the moment over J by hand, printed 37.0 (one step was rounded).
  const Vector3d r = Vector3d(56, 190, 0) - p.centroid;
  CHECK_THAT(r.norm(), WithinRel(105.0, 5e-3));
  const double moment = 25e3 * (100 + p.centroid.x());
  CHECK_THAT(moment, WithinRel(2.76e6, 1e-3));
  const double tip = std::hypot(-moment / p.inertia(2, 2) * r.y(),
                                -25e3 / p.area + moment / p.inertia(2, 2) * r.x());
  CHECK_THAT(tip, WithinRel(37.0, 5e-3));
}

// Shigley, 9th ed., Example 9-4 (from memory): 3/8 in legs, 2 in on each side of the bar, 500 lbf
// at 6 in. The bending and direct shear are printed apart; their resultant is 8510 psi.
TEST_CASE("Shigley's welded cantilever bends its welds as in Example 9-4", "[checks][weld]") {
  const checks::WeldGroup group{{line(-0.5, -1, -0.5, 1, 0.375), line(0.5, -1, 0.5, 1, 0.375)},
                                62e3};
  const auto p = checks::weld_properties(group.lines);
  CHECK_THAT(p.area, WithinRel(1.06, 2e-3));
  CHECK_THAT(p.inertia(0, 0), WithinRel(0.353, 2e-3));
  const auto worst =
      checks::worst_throat_stress(group, {{0, -500, 0}, Vector3d::Zero(), {0, 0, 6}});
  REQUIRE(worst);
  CHECK_THAT(std::abs(worst->stress.y()), WithinRel(472.0, 3e-3));
  CHECK_THAT(std::abs(worst->stress.z()), WithinRel(8500.0, 3e-3));
  CHECK_THAT(worst->resultant, WithinRel(8510.0, 3e-3));
}

// Shigley, 8th ed. solutions manual, Problem 9-5 (read): b = d = 2 in, 5/16 in, arm 7 in.
TEST_CASE("two parallel fillets allow the load of Shigley's Problem 9-5", "[checks][weld]") {
  const checks::WeldGroup group{{line(-1, -1, -1, 1, 0.3125), line(1, -1, 1, 1, 0.3125)}, 70.0};
  const auto p = checks::weld_properties(group.lines);
  CHECK_THAT(p.inertia(2, 2), WithinRel(1.18, 3e-3));
  CHECK_THAT(p.inertia(2, 2) / (0.3125 / kRoot2), WithinRel(5.333, 1e-4));
  const auto worst = checks::worst_throat_stress(group, {{0, -1, 0}, Vector3d::Zero(), {7, 0, 0}});
  REQUIRE(worst);
  CHECK_THAT(worst->resultant, WithinRel(9.22, 3e-3));  // kpsi a kip
  CHECK_THAT(20.0 / worst->resultant, WithinRel(2.17, 3e-3));
}

// Shigley, 9th ed., Table 9-2 (read): b 3, d 5, leg 1/4 in; unit second moments by its formulas.
TEST_CASE("weld groups have the unit second moments of Shigley's Table 9-2", "[checks][weld]") {
  const double throat = 0.25 / kRoot2;
  const auto unit = [&](const std::vector<WeldLine>& lines) {
    return checks::weld_properties(lines).inertia(0, 0) / throat;
  };
  CHECK_THAT(unit({line(0, 0, 0, 5, 0.25)}), WithinRel(10.42, 5e-4));
  CHECK_THAT(unit({line(0, 0, 0, 5, 0.25), line(3, 0, 3, 5, 0.25)}), WithinRel(20.83, 5e-4));
  CHECK_THAT(unit({line(0, 0, 3, 0, 0.25), line(0, 5, 3, 5, 0.25)}), WithinRel(37.5, 5e-4));
  CHECK_THAT(unit(box(3, 5, 0.25)), WithinRel(58.33, 5e-4));
  CHECK_THAT(checks::weld_properties(box(3, 5, 0.25)).area, WithinRel(2.828, 5e-4));
}

// Unit torsion values of weld lines, Design of Modern Steel Railway Bridges, Table 9.1 (box read;
// C read but for its last term, from memory), evaluated by hand at b 60, d 100.
TEST_CASE("channel and box weld groups have the unit torsion values of the tables",
          "[checks][weld]") {
  const std::vector<WeldLine> channel = {line(60, 0, 0, 0, kRoot2), line(0, 0, 0, 100, kRoot2),
                                         line(0, 100, 60, 100, kRoot2)};
  CHECK_THAT(checks::weld_properties(channel).inertia(2, 2), WithinRel(4.684e5, 5e-4));
  CHECK_THAT(checks::weld_properties(box(60, 100, kRoot2)).inertia(2, 2), WithinRel(6.827e5, 5e-4));
}

// Blodgett, Design of Welded Structures, sec. 7.4 (method from memory, evaluated by hand): tube of
// 1.5 in, M 8000 and T 6000 lb in, V 900 lb: 4527, 1698 and 191 lb/in; at the fiber of largest
// bending T and V run the same way: sqrt(4527^2 + (1698 + 191)^2) = 4905.
TEST_CASE("the fillet round a tube is Blodgett's weld line", "[checks][weld]") {
  const Vector3d along(0, 0, 1);
  const auto ring = [&](const checks::Wrench& w) {
    const checks::WeldGroup group{checks::ring_weld(Vector3d::Zero(), along, 0.75, kRoot2), 70e3};
    return checks::worst_throat_stress(group, w)->resultant;
  };
  // The chords lie inside the circle: high by up to 0.2 %, never low.
  const auto is = [](double published) { return WithinRel(published * 1.001, 1.1e-3); };
  CHECK_THAT(ring({.moment = {8000, 0, 0}}), is(4527.0));
  CHECK_THAT(ring({.moment = {0, 0, 6000}}), is(1698.0));
  CHECK_THAT(ring({.force = {900, 0, 0}}), is(191.0));
  CHECK_THAT(ring({.force = {900, 0, 0}, .moment = {8000, 0, 6000}}), is(4905.0));
}

// Hand calculation from the published method (weld as a line): bracket of two plates 100 wide,
// welded on both sides with a leg of 6; 15 kN at 250 below the root, in mm and N.
TEST_CASE("a bracket's root weld carries its bending and a brace relieves it", "[checks][weld]") {
  const checks::WeldGroup group{{line(-31, -50, -31, 50, 6), line(-25, -50, -25, 50, 6),
                                 line(25, -50, 25, 50, 6), line(31, -50, 31, 50, 6)},
                                482.6};
  const auto plain =
      checks::worst_throat_stress(group, {{0, 15e3, 0}, Vector3d::Zero(), {0, 0, -250}});
  REQUIRE(plain);
  CHECK_THAT(std::abs(plain->stress.z()), WithinRel(132.6, 5e-4));
  CHECK_THAT(std::abs(plain->stress.y()), WithinRel(8.8, 5e-3));
  CHECK_THAT(plain->resultant, WithinRel(132.9, 5e-4));
  // With a brace 0.970 kN m remain; its vertical kick of 2.98 kN adds to the bending.
  const double left = 0.970e6 / 250.0;
  const auto braced =
      checks::worst_throat_stress(group, {{0, left, 0}, Vector3d::Zero(), {0, 0, -250}});
  CHECK_THAT(braced->resultant, WithinRel(34.4, 1e-3));
  const auto kicked =
      checks::worst_throat_stress(group, {{0, left, 2980}, Vector3d::Zero(), {0, 0, -250}});
  CHECK_THAT(kicked->resultant, WithinRel(36.1, 1e-3));
}

// Hand evaluations of the same method: a box of 80 x 120 in three dimensions, in mm and N.
TEST_CASE("a box of fillets carries a force in space", "[checks][weld]") {
  const checks::WeldGroup group{box(80, 120, 6), 482.6};
  const auto worst =
      checks::worst_throat_stress(group, {{4e3, -10e3, 3e3}, Vector3d::Zero(), {60, 50, 150}});
  REQUIRE(worst);
  CHECK_THAT(worst->resultant, WithinRel(38.76, 5e-4));
  CHECK((worst->point - Vector3d(-40, 60, 0)).norm() < 1e-9);
  const Vector3d per_length = worst->stress * 6.0 / kRoot2;
  CHECK_THAT(per_length.x(), WithinRel(46.00, 5e-4));
  CHECK_THAT(per_length.y(), WithinRel(-1.000, 5e-3));
  CHECK_THAT(per_length.z(), WithinRel(157.9, 5e-4));
}

// Hand evaluation: L of 60 x 100, Mx 1.000e6 N mm: 487.5 N/mm, where M y / Ix would give 388.2.
TEST_CASE("an L-shaped group bends about its skew axes", "[checks][weld]") {
  const checks::WeldGroup group{{line(0, 0, 60, 0, kRoot2), line(0, 0, 0, 100, kRoot2)}, 482.6};
  const auto p = checks::weld_properties(group.lines);
  CHECK_FALSE(p.given_axes);
  CHECK((p.centroid - Vector3d(11.25, 31.25, 0)).norm() < 1e-9);
  const auto worst = checks::worst_throat_stress(group, {.moment = {1e6, 0, 0}});
  CHECK_THAT(worst->resultant, WithinRel(487.5, 5e-4));
}

TEST_CASE("turning a group with its load leaves the worst stress alone", "[checks][weld]") {
  const checks::WeldGroup group{shigley_channel(), 482.6};
  const checks::Wrench wrench{{3e3, -25e3, 7e3}, {2e5, 1e5, -3e5}, {-100, 95, 40}};
  const double before = checks::worst_throat_stress(group, wrench)->resultant;
  const Eigen::Matrix3d turn =
      Eigen::AngleAxisd(0.7, Vector3d(1, 2, 3).normalized()).toRotationMatrix();
  const Vector3d shift(500, -200, 90);
  checks::WeldGroup turned = group;
  for (WeldLine& l : turned.lines) {
    l.from = turn * l.from + shift;
    l.to = turn * l.to + shift;
  }
  const checks::Wrench moved{turn * wrench.force, turn * wrench.moment, turn * wrench.at + shift};
  CHECK_THAT(checks::worst_throat_stress(turned, moved)->resultant, WithinRel(before, 1e-9));
}

TEST_CASE("the stress over the throats balances the load", "[checks][weld]") {
  // Equilibrium by Simpson's rule, which is exact for a moment of a linear stress along a line.
  std::vector<WeldLine> lines = shigley_channel();
  lines[1].leg = 9;
  lines[2].to.z() = 35;
  const checks::Wrench w{{3e3, -25e3, 7e3}, {2e5, 1e5, -3e5}, {-100, 95, 40}};
  const auto p = checks::weld_properties(lines);
  const Vector3d moment_g = w.moment + (w.at - p.centroid).cross(w.force);
  const Vector3d turn = p.inertia.inverse() * moment_g;
  Vector3d force = Vector3d::Zero();
  Vector3d moment = Vector3d::Zero();
  double largest = 0.0;
  for (const WeldLine& l : lines) {
    for (const auto& [s, weight] : {std::pair{0.0, 1.0}, {0.5, 4.0}, {1.0, 1.0}}) {
      const Vector3d r = l.from + s * (l.to - l.from) - p.centroid;
      const Vector3d stress = w.force / p.area + turn.cross(r);
      const Vector3d share = stress * l.throat() * l.length() * weight / 6.0;
      force += share;
      moment += r.cross(share);
      largest = std::max(largest, stress.norm());
    }
  }
  CHECK((force - w.force).norm() < 1e-8 * w.force.norm());
  CHECK((moment - moment_g).norm() < 1e-8 * moment_g.norm());
  CHECK_THAT(checks::worst_throat_stress({lines, 482.6}, w)->resultant, WithinRel(largest, 1e-9));
}

TEST_CASE("one straight line carries no moment about itself", "[checks][weld]") {
  const checks::WeldGroup skew{{{Vector3d(0, 0, 0), Vector3d(30, 40, 0), 5.0}}, 482.6};
  CHECK_FALSE(checks::worst_throat_stress(skew, {.moment = {3e4, 4e4, 0}}));
  CHECK_FALSE(checks::worst_throat_stress(skew, {{0, 0, 2e3}, Vector3d::Zero(), {40, -30, 0}}));
  // Across itself it does: 6 M / (throat L^2).
  const auto bent = checks::worst_throat_stress(skew, {.moment = {0, 0, 3e4}});
  REQUIRE(bent);
  CHECK_THAT(bent->resultant, WithinRel(6 * 3e4 / (5.0 / kRoot2 * 2500), 1e-9));
  const auto pulled =
      checks::worst_throat_stress(skew, {{100, 0, 0}, Vector3d::Zero(), {15, 20, 0}});
  CHECK_THAT(pulled->resultant, WithinRel(100.0 / (5.0 / kRoot2 * 50), 1e-9));
}
