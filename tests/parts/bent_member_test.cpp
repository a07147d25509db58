// Bent and tapered members against closed forms. Sources: curved cantilever, Timoshenko, Strength
// of Materials Part I, and Roark's Table 9.2; tapered round cantilever, Gere and Goodno, Mechanics
// of Materials (Castigliano's theorem gives both; from memory).
#include <cmath>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "parts/taper.hpp"

namespace bent_member_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

parts::Design one_member(const parts::Member& member) {
  parts::Design d;
  d.points = {{"wall", {0.0, 0.0, 0.0}}, {"corner", {1.0, 0.0, 0.0}}, {"tip", {1.0, 0.0, 1.0}}};
  d.members = {{"bar", member}};
  d.supports = {{"wall", {.at = "wall", .held = {}}}};
  return d;
}

parts::Member bar_to(const std::string& to, const parts::Stick& stick) {
  parts::Member m;
  m.from = "wall";
  m.to = to;
  m.stick = stick;
  return m;
}

fea::Vector6 tip_of(const parts::Design& d, const parts::Assembly& assembly) {
  const fea::Solution s = fea::solve(fea::factor(assembly.model),
                                     parts::put(assembly, d, parts::design_cases(d).front()),
                                     {.method = fea::Method::linear});
  for (const parts::NamedNode& point : assembly.points) {
    if (point.name == d.forces.front().value.at) return s.placement(point.node);
  }
  return fea::Vector6::Constant(base::kUnset);
}

}  // namespace

TEST_CASE("a quarter circle gives as a curved cantilever does", "[parts][published]") {
  // Load P at the tip, along the tangent there (z) and square to it (x): (3 pi / 4 - 2) and
  // pi / 4 of P R^3 / (E I); the straights that are left are a ten-thousandth of R.
  parts::Member m = bar_to("tip", parts_test::tube(0.010, 0.0049));
  m.through = {"corner"};
  m.bend_radius = 0.9999;
  parts::Design d = one_member(m);
  const sections::AreaProps props = sections::area_props(m.stick.shape);
  const double unit = 100.0 / (205.0e9 * props.iyy);
  d.forces = {parts_test::force_at("tip", 100.0, 0.0, 0.0)};
  const parts::Assembly assembly = parts::assemble(d, {});
  CHECK_THAT(tip_of(d, assembly)(0), WithinRel(unit * base::kPi / 4.0, 3e-3));
  d.forces = {parts_test::force_at("tip", 0.0, 0.0, 100.0)};
  CHECK_THAT(tip_of(d, assembly)(2), WithinRel(unit * (0.75 * base::kPi - 2.0), 3e-3));
  CHECK_THAT(tip_of(d, assembly)(0), WithinRel(-0.5 * unit, 3e-3));
  CHECK(assembly.pieces.front().beams.size() > 18);
  CHECK(assembly.pieces.front().notes.front().find("negligible") != std::string::npos);
  CHECK_THAT(assembly.pieces.front().mass / (7850.0 * props.area),
             WithinRel(0.5 * base::kPi, 1e-3));
}

TEST_CASE("a sharp bend is one corner, a round one cuts it", "[parts]") {
  parts::Member m = bar_to("tip", parts_test::tube(0.040, 0.004));
  m.through = {"corner"};
  parts::Design d = one_member(m);
  d.forces = {parts_test::force_at("tip", 0.0, 0.0, 100.0)};
  const parts::Assembly sharp = parts::assemble(d, {});
  CHECK(sharp.pieces.front().beams.size() == 8);
  CHECK(sharp.pieces.front().bent);
  CHECK(sharp.pieces.front().notes.empty());
  d.members.front().value.bend_radius = 0.1;
  const parts::Assembly round = parts::assemble(d, {});
  CHECK(round.pieces.front().beams.size() == 8 + 18);
  CHECK(round.pieces.front().mass < sharp.pieces.front().mass);
  int curved = 0;
  for (const parts::PieceBeam& beam : round.pieces.front().beams) {
    if (beam.curved > 1.0) ++curved;
  }
  CHECK(curved == 18);
  d.members.front().value.bend_radius = 1.2;
  CHECK_THROWS_WITH(parts::assemble(d, {}),
                    Contains("members.bar.bend_radius") && Contains("does not fit"));
  d.members.front().value.bend_radius = 0.03;
  CHECK_THROWS_WITH(parts::assemble(d, {}), Contains("too sharp a bend"));
}

TEST_CASE("a tapered round cantilever", "[parts][published]") {
  // P at the thin end, diameter d there and r d at the wall: P L^3 / (3 E I r^3), I at the thin
  // end.
  parts::Stick thick{sections::RoundBar{.diameter = 0.020}, parts_test::steel()};
  parts::Member m = bar_to("corner", thick);
  m.section_at_end = {sections::RoundBar{.diameter = 0.010}, parts_test::steel()};
  parts::Design d = one_member(m);
  d.forces = {parts_test::force_at("corner", 0.0, 0.0, 10.0)};
  const double thin = base::kPi * std::pow(0.010, 4) / 64.0;
  const parts::Assembly assembly = parts::assemble(d, {});
  CHECK_THAT(tip_of(d, assembly)(2), WithinRel(10.0 / (3.0 * 205.0e9 * thin * 8.0), 6e-3));
  const parts::Piece& piece = assembly.pieces.front();
  CHECK(std::get<sections::RoundBar>(piece.beams.front().at_a).diameter == 0.020);
  CHECK_THAT(std::get<sections::RoundBar>(piece.beams.back().at_b).diameter,
             WithinRel(0.010, 1e-12));
  CHECK_THAT(piece.notes.front(), Contains("tapered") && Contains("0.5 %"));
}

TEST_CASE("a member's depth points where it is told", "[parts]") {
  const parts::Stick plate{sections::FlatBar{.depth = 0.06, .width = 0.01}, parts_test::steel()};
  const auto z_of = [&](const std::string& to, const parts::Toward& toward) {
    parts::Member m = bar_to(to, plate);
    m.z_toward = toward;
    parts::Design d = one_member(m);
    d.points.push_back({"above", {0.3, 0.0, 2.0}});
    d.points.push_back({"top", {0.0, 0.0, 1.0}});
    const parts::Assembly a = parts::assemble(d, {});
    return fea::Vector3(fea::member_axes(a.model, a.model.beams.front()).row(2).transpose());
  };
  using Kind = parts::Toward::Kind;
  CHECK((z_of("corner", {}) - fea::Vector3::UnitZ()).norm() < 1e-12);
  CHECK((z_of("top", {}) - fea::Vector3::UnitX()).norm() < 1e-12);  // upright: forward
  CHECK((z_of("top", {.kind = Kind::axis, .axis = parts::Axis::y}) - fea::Vector3::UnitY()).norm() <
        1e-12);
  CHECK((z_of("corner", {.kind = Kind::point, .point = "above"}) - fea::Vector3::UnitZ()).norm() <
        1e-12);
  CHECK((z_of("corner", {.kind = Kind::vector, .vector = {5.0, 3.0, 4.0}}) -
         fea::Vector3(0.0, 0.6, 0.8))
            .norm() < 1e-12);
  CHECK_THROWS_WITH(z_of("corner", {.kind = Kind::axis, .axis = parts::Axis::x}),
                    Contains("members.bar.z_toward: it lies along the member"));
  CHECK_THROWS_WITH(z_of("corner", {.kind = Kind::point, .point = "wall"}),
                    Contains("give a point away from it"));
}

}  // namespace bent_member_test
