// Loads that a case file gives, through the whole chain, against textbook values: fixed-end
// moments (AISC Manual, Table 3-23; Roark's Table 8.1; from memory) and statics.
#include <cmath>
#include <string>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "studies/case_list.hpp"
#include "studies/check.hpp"
#include "studies/set_model.hpp"
#include "tests/studies/read_case.hpp"

namespace given_loads_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Vector6;
using studies_tests::read_case;

namespace {

/// A beam of 2 m along x, both ends fixed, of a section known by its numbers: no shear give.
const std::string kBeam =
    "title: invented\n"
    "points:\n"
    "  a: [0, 0, 0 mm]\n"
    "  b: [2000, 0, 0 mm]\n"
    "sections:\n"
    "  bar: {shape: by_numbers, area: 1000 mm^2, iyy: 1e6 mm^4, izz: 5e5 mm^4, torsion: 1e6 mm^4,\n"
    "    modulus_y: 4e4 mm^3, modulus_z: 2e4 mm^3, modulus_t: 4e4 mm^3}\n"
    "members:\n"
    "  bar: {from: a, to: b, section: bar A36}\n"
    "supports:\n"
    "  left: {at: a}\n"
    "  right: {at: b}\n";

constexpr double kLength = 2.0;

struct Solved {
  parts::Assembly assembly;
  fea::Solution linear;

  [[nodiscard]] Vector6 reaction(const std::string& point) const {
    for (const parts::NamedNode& held : assembly.held) {
      if (held.name == point) return linear.reaction(held.node);
    }
    FAIL("nothing holds " + point);
    return {};
  }
  [[nodiscard]] Vector6 placement(const std::string& point) const {
    for (const parts::NamedNode& named : assembly.points) {
      if (named.name == point) return linear.placement(named.node);
    }
    FAIL("no point " + point);
    return {};
  }
};

/// A text with one piece replaced; the piece must be there.
std::string with(std::string text, const std::string& piece, const std::string& instead) {
  const std::size_t at = text.find(piece);
  REQUIRE(at != std::string::npos);
  return text.replace(at, piece.size(), instead);
}

/// The first load case of a case file, in first order.
Solved solved(const std::string& text) {
  const parts::Design design = read_case(text);
  const studies::SetModel model(design, parts::stiffness_sets(design).front());
  return {model.assembly(), model.solve(parts::design_cases(design).front(), 1.0).linear()};
}

sections::Material steel() {
  const parts::Design design = read_case(kBeam + "forces:\n  p: {at: b, force_x: 1 N}\n");
  return design.members.front().value.stick.material;
}

}  // namespace

TEST_CASE("fixed-end moments of loads along a member", "[studies][published]") {
  // Uniform: w L^2 / 12. From 0 to w at the far end: w L^2 / 30 and w L^2 / 20. Force at a from the
  // start: P a b^2 / L^2. Moment M there: M b (2 a - b) / L^2 (turning the same way).
  Solved s = solved(kBeam + "line_loads:\n  w: {on: bar, force_z: -3 N/mm}\n");
  CHECK_THAT(s.reaction("a")(2), WithinRel(3000.0, 1e-9));
  CHECK_THAT(std::abs(s.reaction("a")(4)), WithinRel(3000.0 * kLength * kLength / 12.0, 1e-9));
  s = solved(kBeam + "line_loads:\n  w: {on: bar, end_force_z: -3 N/mm}\n");
  CHECK_THAT(std::abs(s.reaction("a")(4)), WithinRel(3000.0 * kLength * kLength / 30.0, 1e-9));
  CHECK_THAT(std::abs(s.reaction("b")(4)), WithinRel(3000.0 * kLength * kLength / 20.0, 1e-9));
  s = solved(kBeam + "forces:\n  p: {on: bar, from_start: 700 mm, force_z: -1 kN}\n");
  CHECK_THAT(std::abs(s.reaction("a")(4)), WithinRel(1000.0 * 0.7 * 1.3 * 1.3 / 4.0, 1e-9));
  CHECK_THAT(std::abs(s.reaction("b")(4)), WithinRel(1000.0 * 0.7 * 0.7 * 1.3 / 4.0, 1e-9));
  s = solved(kBeam + "forces:\n  m: {on: bar, from_start: 700 mm, moment_y: 500 N m}\n");
  CHECK_THAT(std::abs(s.reaction("a")(4)),
             WithinRel(std::abs(500.0 * 1.3 * (2.0 * 0.7 - 1.3) / 4.0), 1e-9));
  // Part of the length: balance only.
  s = solved(kBeam + "line_loads:\n  w: {on: bar, from: 300 mm, to: 900 mm, force_y: 2 N/mm}\n");
  CHECK_THAT(s.reaction("a")(1) + s.reaction("b")(1), WithinRel(-1200.0, 1e-9));
}

TEST_CASE("the stress under a load between a member's ends is found", "[studies][published]") {
  // Two supports, a force off the middle of one of the member's own beams: M = P a b / L.
  const std::string on_two = with(with(kBeam, "left: {at: a}", "left: {at: a, held: x y z rx rz}"),
                                  "right: {at: b}", "right: {at: b, held: x y z rx rz}");
  const studies::Answer answer = studies::check(
      read_case(on_two + "forces:\n  p: {on: bar, from_start: 700 mm, force_z: -1 kN}\n"));
  for (const checks::Finding& finding : answer.findings) {
    if (finding.check != "yield") continue;
    CHECK(finding.demand >= 1000.0 * 0.7 * 1.3 / 2.0 / 4.0e-5 * (1.0 - 1e-6));
    CHECK(finding.demand < 1000.0 * 0.7 * 1.3 / 2.0 / 4.0e-5 * 1.05);
    CHECK_THAT(finding.first_order, WithinRel(finding.demand, 1e-3));
    CHECK_THAT(finding.where, Contains("% along"));
  }
}

TEST_CASE("heat, wrong fit, sinking supports and own weight", "[studies][published]") {
  const double e = steel().elastic;
  Solved s = solved(kBeam + "strains:\n  sun: {on: bar, warmer: 40 K}\n");
  CHECK_THAT(s.reaction("a")(0), WithinRel(e * 1.0e-3 * 12.0e-6 * 40.0, 1e-9));
  s = solved(kBeam + "strains:\n  sun: {on: bar, warmer: 72 degF}\n");
  CHECK_THAT(s.reaction("a")(0), WithinRel(e * 1.0e-3 * 12.0e-6 * 40.0, 1e-9));
  s = solved(kBeam + "strains:\n  tight: {on: bar, too_long: 1 mm}\n");
  CHECK_THAT(s.reaction("a")(0), WithinRel(e * 1.0e-3 * 0.5e-3, 1e-9));
  // Depth 2 I / S = 50 mm: M = E I alpha dT / h.
  s = solved(kBeam + "strains:\n  sun: {on: bar, warmer_on_top: 30 K, expansion: 1e-5 /K}\n");
  CHECK_THAT(std::abs(s.reaction("a")(4)), WithinRel(e * 1.0e-6 * 1.0e-5 * 30.0 / 0.05, 1e-9));
  s = solved(kBeam + "settlements:\n  sinks: {at: b, along_z: -5 mm}\n");
  CHECK_THAT(s.reaction("b")(2), WithinRel(-12.0 * e * 1.0e-6 * 0.005 / 8.0, 1e-9));
  CHECK_THAT(s.placement("b")(2), WithinRel(-0.005, 1e-12));
  s = solved(kBeam + "settlements:\n  turns: {at: b, about_y: 1 deg}\n");
  CHECK_THAT(s.reaction("b")(4), WithinRel(4.0 * e * 1.0e-6 * base::kDegree / kLength, 1e-9));
  s = solved(kBeam + "self_weight:\n  own: {along_z: -2}\n");
  const double density = steel().density;
  CHECK_THAT(s.reaction("a")(2), WithinRel(density * 1.0e-3 * 9.80665 * kLength, 1e-9));
}

TEST_CASE("what a member's end lets go is in its own axes", "[studies]") {
  // Along a diagonal: free about its own y makes a propped beam of it, P a b (L + a) / (2 L^2).
  const std::string text = with(with(kBeam, "b: [2000, 0, 0 mm]", "b: [1200, 1600, 0 mm]"),
                                "section: bar A36", "section: bar A36, to_free: ry");
  const Solved s = solved(text + "forces:\n  p: {on: bar, from_start: 1 m, force_z: -1 kN}\n");
  const Vector6 at_b = s.reaction("b");
  CHECK_THAT(at_b.tail<3>().norm(), WithinAbs(0.0, 1e-7));
  CHECK_THAT(s.reaction("a").tail<3>().norm(), WithinRel(3.0 / 16.0 * 1000.0 * kLength, 1e-9));
}

TEST_CASE("a rigid piece and a spring in axes of its own", "[studies]") {
  // A beam's tip carries a hub and, 0.5 m aside, a wheel: pushed down there, the beam is twisted.
  const std::string with_wheel =
      with(with(kBeam, "  right: {at: b}\n", ""), "  b: [", "  wheel: [2000, 500, 0 mm]\n  b: [") +
      "rigid:\n  hub: {points: [b, wheel]}\n"
      "forces:\n  p: {at: wheel, force_z: -100 N}\n";
  Solved s = solved(with_wheel);
  CHECK_THAT(s.reaction("a")(3), WithinRel(50.0, 1e-9));
  const Vector6 at_b = s.placement("b");
  CHECK_THAT(s.placement("wheel")(2), WithinRel(at_b(2) + 0.5 * at_b(3), 1e-9));
  // A soft spring along (1, 1, 0) alone, to the ground: it pushes that way and no other.
  s = solved(with_wheel + "springs:\n  stay: {from: wheel, along_x: 1 N/mm, x_toward: '1 1 0'}\n");
  const Vector6 moved = s.placement("wheel");
  const double along = (moved(0) + moved(1)) / std::sqrt(2.0);
  CHECK_THAT(s.linear.spring_force({0})(0), WithinRel(1000.0 * along, 1e-6));
  CHECK_THAT(s.linear.spring_force({0})(1), WithinAbs(0.0, 1e-12));
}

TEST_CASE("a load beyond a member's end is refused", "[studies]") {
  CHECK_THROWS_WITH(solved(kBeam + "forces:\n  p: {on: bar, from_start: 2.1 m, force_z: -1 kN}\n"),
                    Contains("forces.p.from_start") && Contains("beyond the member"));
  CHECK_THROWS_WITH(solved(kBeam + "line_loads:\n  p: {on: bar, to: 3 m, force_z: -1 N/mm}\n"),
                    Contains("line_loads.p.to") && Contains("beyond the member"));
}

TEST_CASE("condition, residual, first order and reversed factors are in the answer", "[studies]") {
  const studies::Answer answer =
      studies::check(read_case(kBeam + "strains:\n  sun: {on: bar, warmer: -40 K}\n"));
  REQUIRE(answer.solved.size() == 1);
  const studies::SolvedCase& solved = answer.solved.front();
  CHECK(solved.condition >= 1.0);
  CHECK(solved.condition < fea::kIllConditioned);
  CHECK(solved.condition_cause.empty());
  CHECK(solved.factor.unknowns == 18);
  CHECK(solved.factor.bytes_per_nonzero() > 8.0);
  CHECK(solved.residual < 1e-9);
  CHECK(solved.first_order.size() == solved.displacements.size());
  // Cooled between walls it is pulled: nothing buckles, but warmed instead it would, at 4 pi^2 E I
  // / L^2 over the force (Euler, both ends fixed; four elements are 1 % stiff).
  CHECK(solved.cannot_buckle);
  REQUIRE(solved.reversed.size() == 1);
  CHECK_THAT(
      solved.reversed.front(),
      WithinRel(-4.0 * base::kPi * base::kPi * 5.0e-7 / 4.0 / (1.0e-3 * 12.0e-6 * 40.0), 2e-2));
}

TEST_CASE("a model that is nearly loose is called so, with the cause", "[studies]") {
  const std::string text = with(with(kBeam, "left: {at: a}", "left: {at: a, held: x y z rx rz}"),
                                "right: {at: b}", "right: {at: b, held: y rx rz}");
  const studies::Answer answer =
      studies::check(read_case(text + "springs:\n  whisker: {from: b, along_z: 1e-5 N/mm}\n"
                                      "forces:\n  p: {at: b, force_x: 1 N}\n"));
  bool said = false;
  for (const parts::Assumption& a : answer.assumed) {
    if (a.value.find("ill-conditioned") == std::string::npos) continue;
    said = true;
    CHECK_THAT(a.value, Contains("spring `whisker`"));
  }
  CHECK(said);
}

TEST_CASE("second order is used and said where it matters", "[studies]") {
  // A cantilever of 2 m under three tenths of its Euler load with a side push.
  const double euler = base::kPi * base::kPi * steel().elastic * 5.0e-7 / 16.0;
  const studies::Answer answer = studies::check(
      read_case(with(kBeam, "  right: {at: b}\n", "") + "forces:\n  p: {at: b, force_x: -" +
                std::to_string(0.3 * euler) + " N, force_y: 300 N}\n"));
  bool said = false;
  for (const checks::Finding& finding : answer.findings) {
    if (finding.check != "yield") continue;
    CHECK(finding.first_order < 0.97 * finding.demand);
    for (const std::string& note : finding.notes) {
      if (note.find("more than first order does; second order is used") != std::string::npos) {
        said = true;
      }
    }
  }
  CHECK(said);
}

TEST_CASE("what acts and what holds are in balance for every kind of given load", "[studies]") {
  // Statics: everything that acts on the frame is held (common practice, no source).
  const std::string text =
      with(with(kBeam, "  right: {at: b}\n", ""), "  b: [", "  wheel: [2000, 500, 0 mm]\n  b: [") +
      "rigid:\n  hub: {points: [b, wheel]}\n"
      "springs:\n  stay: {from: wheel, along_x: 900 N/mm, along_z: 500 N/mm, x_toward: '1 1 0'}\n"
      "forces:\n  p: {on: bar, from_start: 700 mm, force_y: 1 kN, moment_z: 30 N m}\n"
      "line_loads:\n  w: {on: bar, from: 300 mm, force_z: -1 N/mm, end_force_z: -4 N/mm}\n"
      "strains:\n  sun: {on: bar, warmer: 40 K, warmer_on_top: 5 K}\n"
      "settlements:\n  sinks: {at: a, along_z: -5 mm}\n"
      "self_weight:\n  own: {along_x: 0.5}\n";
  const studies::Answer answer = studies::check(read_case(text));
  REQUIRE(answer.balances.size() == 1);
  const studies::Balance& balance = answer.balances.front();
  CHECK(balance.open < 1e-9);
  REQUIRE(balance.acts.size() == 3);
  const auto row = [&](const std::string& what) {
    for (const studies::BalanceRow& r : balance.acts) {
      if (r.what == what) return r;
    }
    FAIL("nothing acts as " + what);
    return studies::BalanceRow{};
  };
  // A trapezoid of 1 to 4 N/mm over 1.7 m: 4250 N, 1.02 m along it.
  CHECK_THAT(row("line load on bar").force[2], WithinRel(-4250.0, 1e-9));
  CHECK_THAT(row("line load on bar").moment[1], WithinRel(4250.0 * 1.32, 1e-9));
  CHECK_THAT(row("force on bar").moment[2], WithinRel(730.0, 1e-9));
  CHECK_THAT(row("own weight").force[2],
             WithinRel(-steel().density * 1.0e-3 * 9.80665 * kLength, 1e-9));
}

TEST_CASE("cases of given loads are listed with what acts in them", "[studies]") {
  const studies::CaseList list = studies::case_list(
      read_case(kBeam + "self_weight:\n  own: {load_case: parked}\n"
                        "forces:\n  p: {on: bar, from_start: 1 m, force_z: -1 kN}\n"));
  REQUIRE(list.kinds.size() == 2);
  CHECK(list.kinds[0].cases.front().pushes.front().what == "on bar");
  CHECK(list.kinds[1].name == "parked");
  CHECK(list.kinds[1].cases.front().others == std::vector<std::string>{"own weight"});
}

}  // namespace given_loads_test
