#include "checks/weld_group.hpp"

#include <cmath>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

namespace weld_group_test {
using Catch::Matchers::WithinRel;
using checks::WeldLine;
using Eigen::Vector3d;

namespace {

const double kRoot2 = std::sqrt(2.0);

WeldLine line(double x1, double y1, double x2, double y2, double leg) {
  return {{x1, y1, 0.0}, {x2, y2, 0.0}, leg};
}

/// Web 190 and flanges 56, legs 6: the flanges run from the web toward +x.
std::vector<WeldLine> shigley_channel() {
  return {line(56, 0, 0, 0, 6), line(0, 0, 0, 190, 6), line(0, 190, 56, 190, 6)};
}

}  // namespace

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

}  // namespace weld_group_test
