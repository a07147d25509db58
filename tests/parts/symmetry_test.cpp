#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/bracket_weld.hpp"
#include "parts/put_loads.hpp"

namespace symmetry_test {
using Catch::Matchers::WithinRel;

TEST_CASE("loads and reactions balance", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->rise = 0.1;
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->rail_stiffness = 1.0e5;
  d.brace.emplace();
  d.brace->stick = parts_test::tube(0.032, 0.003);
  d.brace->length = 0.85;
  d.brace->slope = 0.2;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const parts::Assembly a = parts::assemble(d, {});
  const fea::Solution s =
      fea::solve(fea::factor(a.model), parts::put(a, d, parts::design_cases(d).front()));
  fea::Vector3 sum(0.0, 15.0e3, 0.0);
  for (const parts::NamedNode& held : a.held) sum += s.reaction(held.node).head<3>();
  CHECK(sum.norm() < 1e-9 * 15.0e3);
}

TEST_CASE("a bracket on the other rail is the mirror image", "[parts]") {
  parts::Bracket b = parts_test::hand_check_bracket();
  b.welded_to = {.bottom = true, .inner_side = true, .outer_side = false};
  const checks::WeldGroup left = parts::root_weld(b, {{0.0, 0.5, 0.6}, -1.0});
  const checks::WeldGroup right = parts::root_weld(b, {{0.0, -0.5, 0.6}, 1.0});
  const fea::Vector3 a = checks::weld_properties(left.lines).centroid;
  const fea::Vector3 c = checks::weld_properties(right.lines).centroid;
  CHECK_THAT(a.y(), WithinRel(-c.y(), 1e-12));
  CHECK_THAT(a.z(), WithinRel(c.z(), 1e-12));
}

TEST_CASE("a tapered bracket's tip give is within 0.5 % of its integral", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->depth_at_bolt = 0.04;
  d.bracket->rail_stiffness = 1.0e12;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const parts::Assembly a = parts::assemble(d, {});
  const fea::Solution s =
      fea::solve(fea::factor(a.model), parts::put(a, d, parts::design_cases(d).front()),
                 {.method = fea::Method::linear});
  double give = 0.0;  // integral of s^2 / (E I(s)) + 1 / (kappa G A(s))
  const int n = 20000;
  for (int i = 0; i < n; ++i) {
    const double x = 0.25 * (i + 0.5) / n;
    const sections::AreaProps p = sections::area_props(sections::TwinPlate{
        .depth = 0.04 + (0.1 - 0.04) * x / 0.25, .thickness = 0.006, .gap = 0.05});
    give += (x * x / (205.0e9 * p.iyy) + 1.0 / (parts_test::steel().shear_modulus() * p.shear_z)) *
            0.25 / n;
  }
  CHECK_THAT(std::abs(s.placement(*a.bracket_bolt)[1]), WithinRel(15.0e3 * give, 5e-3));
}

}  // namespace symmetry_test
