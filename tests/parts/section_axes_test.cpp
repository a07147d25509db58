#include <cmath>

#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "checks/column_strength.hpp"
#include "fea/buckling.hpp"
#include "parts/piece_forces.hpp"
#include "parts/put_loads.hpp"

namespace section_axes_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kLength = 2.0;

const sections::Channel kChannel{.depth = 0.1, .width = 0.05, .web = 0.005, .flange = 0.006};
const sections::Angle kAngle{.depth = 0.05, .width = 0.05, .wall = 0.005};

parts::Named<parts::PlainSupport> support(const std::string& at, std::array<bool, 6> held) {
  parts::PlainSupport s;
  s.at = at;
  s.held.freedoms = held;
  return {at, s};
}

/// A member along x from a wall.
parts::Design cantilever(const sections::Shape& shape) {
  parts::Design d;
  d.points = {{"root", {0.0, 0.0, 0.0}}, {"tip", {kLength, 0.0, 0.0}}};
  parts::Member m;
  m.from = "root";
  m.to = "tip";
  m.stick = {shape, parts_test::steel()};
  d.members = {{"arm", m}};
  d.supports = {support("root", {true, true, true, true, true, true})};
  return d;
}

struct Solved {
  parts::Assembly assembly;
  fea::Solution solution;
};

Solved solved(const parts::Design& d) {
  parts::Assembly a = parts::assemble(d, {});
  fea::Solution s =
      fea::solve(fea::factor(a.model), parts::put(a, d, parts::design_cases(d).front()),
                 {.method = fea::Method::linear});
  return {std::move(a), std::move(s)};
}

fea::Vector6 tip_of(const Solved& s) {
  for (const parts::NamedNode& p : s.assembly.points) {
    if (p.name == "tip") return s.solution.placement(p.node);
  }
  FAIL("no tip");
  return {};
}

}  // namespace

// Hand statics: a load through the centroid is off the shear center by e, which makes a torque P e.
TEST_CASE("a channel bends about its axis and twists about its shear center", "[parts]") {
  parts::Design d = cantilever(kChannel);
  d.forces = {parts_test::force_at("tip", 0.0, 0.0, 1000.0)};
  const sections::AreaProps p = sections::area_props(kChannel);
  const double e = -p.shear_center_y;
  REQUIRE(e > 0.02);
  const double young = parts_test::steel().elastic;
  const double shear = parts_test::steel().shear_modulus();
  const double twist = 1000.0 * e * kLength / (shear * p.torsion);
  const double bend = 1000.0 * std::pow(kLength, 3) / (3.0 * young * p.iyy) +
                      1000.0 * kLength / (shear * p.shear_z);
  const Solved s = solved(d);
  CHECK_THAT(tip_of(s)[3], WithinRel(twist, 1e-4));
  CHECK_THAT(tip_of(s)[2], WithinRel(bend + e * twist, 1e-4));
  const sections::Resultants root =
      parts::forces_at(s.assembly.pieces.front().beams.front(), s.solution, 0.0);
  CHECK_THAT(root.t, WithinRel(1000.0 * e, 1e-4));
  CHECK_THAT(std::abs(root.my), WithinRel(1000.0 * kLength, 1e-4));
  CHECK_THAT(root.vz, WithinRel(1000.0, 1e-4));
  CHECK_THAT(root.n, WithinAbs(0.0, 1e-3));
}

TEST_CASE("a pull through the centroid of a channel bends nothing", "[parts]") {
  parts::Design d = cantilever(kChannel);
  d.forces = {parts_test::force_at("tip", 50.0e3, 0.0, 0.0)};
  const Solved s = solved(d);
  const sections::AreaProps p = sections::area_props(kChannel);
  const double stretch = 50.0e3 * kLength / (parts_test::steel().elastic * p.area);
  CHECK_THAT(tip_of(s)[0], WithinRel(stretch, 1e-4));
  CHECK(tip_of(s).segment<2>(1).norm() < 1e-3 * stretch);
  const sections::Resultants middle =
      parts::forces_at(s.assembly.pieces.front().beams.back(), s.solution, 0.0);
  CHECK_THAT(middle.n, WithinRel(50.0e3, 1e-4));
  CHECK(std::abs(middle.mz) < 1.0);
}

// Textbook unsymmetric bending: the part of the curvature across the load is -Iyz / Izz of the part
// along it (axes as drawn, through the centroid).
TEST_CASE("an angle gives way sideways as its product of inertia says", "[parts]") {
  parts::Design d = cantilever(kAngle);
  d.forces = {parts_test::force_at("tip", 0.0, 0.0, 100.0)};
  const sections::AreaProps p = sections::area_props(kAngle);
  const double determinant = p.drawn_iyy * p.drawn_izz - p.drawn_iyz * p.drawn_iyz;
  const double scale =
      100.0 * std::pow(kLength, 3) / (3.0 * parts_test::steel().elastic * determinant);
  const Solved s = solved(d);
  const fea::Vector6 tip = tip_of(s);
  // The twist about the heel moves the centroid too.
  const double heel_y = 0.0025 - p.centroid_y;
  const double heel_z = 0.0025 - p.centroid_z;
  CHECK_THAT(tip[2] + tip[3] * heel_y, WithinRel(scale * p.drawn_izz, 2e-3));
  CHECK_THAT(tip[1] - tip[3] * heel_z, WithinRel(-scale * p.drawn_iyz, 2e-3));
  const double twist =
      -100.0 * heel_y * kLength / (parts_test::steel().shear_modulus() * p.torsion);
  CHECK_THAT(tip[3], WithinRel(twist, 1e-3));
}

// AISC 360-22 E4 without warping (from memory): a pinned channel whose ends cannot twist.
TEST_CASE("a pressed channel buckles by bending and twisting together", "[parts]") {
  constexpr double kShort = 1.0;
  parts::Design d = cantilever(kChannel);
  d.points[1].value = {kShort, 0.0, 0.0};
  d.supports = {support("root", {true, true, true, true, false, false}),
                support("tip", {false, true, true, true, false, false})};
  d.forces = {parts_test::force_at("tip", -1000.0, 0.0, 0.0)};
  const parts::Assembly a = parts::assemble(d, {});
  const fea::BucklingResult modes = fea::buckle(
      fea::factor(a.model), parts::put(a, d, parts::design_cases(d).front()), {.n_modes = 1});
  REQUIRE(modes.status == fea::BucklingStatus::found);
  const sections::AreaProps p = sections::area_props(kChannel);
  const double young = parts_test::steel().elastic;
  const double y = p.shear_center_y;
  const double ro2 = p.polar / p.area + y * y;
  const auto euler = [&](double i) { return checks::euler_load(young, i, kShort) / p.area; };
  const double stress = checks::flexural_torsional_e4(
      {.about_y = euler(p.iyy),
       .about_z = euler(p.izz),
       .torsional = parts_test::steel().shear_modulus() * p.torsion / (p.area * ro2),
       .offset_y = y / std::sqrt(ro2),
       .offset_z = 0.0});
  REQUIRE(stress < 0.6 * euler(p.izz));
  CHECK_THAT(modes.modes.front().factor, WithinRel(stress * p.area / 1000.0, 0.01));
}

TEST_CASE("a symmetric section stays one beam", "[parts]") {
  parts::Design d = cantilever(sections::BoxedChannel{0.1, 0.05, 0.005, 0.005, 0.005});
  d.members.front().value.stick = parts_test::tube(0.05, 0.004);
  const parts::Assembly a = parts::assemble(d, {});
  CHECK(a.model.beams.size() == a.pieces.front().beams.size());
  CHECK_FALSE(a.pieces.front().beams.front().axial);
}

TEST_CASE("minimum sizes make a thinner tube of the same case", "[parts]") {
  parts::Design d = cantilever(sections::RoundTube{0.0381, 0.00305});
  d.members.front().value.stick.material = sections::find_material("DOM1020_SR").value();
  const double nominal = parts::assemble(d, {}).pieces.front().mass;
  d.sizes = sections::Sizes::minimum;
  const double least = parts::assemble(d, {}).pieces.front().mass;
  CHECK(least < nominal);
  CHECK_THAT(least / nominal, WithinRel(0.970, 5e-3));
}

}  // namespace section_axes_test
