// Hand checks of the lateral link and its bracket: closed-form statics, common practice, no source
// (each number follows from the formula beside it).
#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "checks/weld.hpp"
#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "sections/stress.hpp"

using Catch::Matchers::WithinRel;

namespace {

struct Solved {
  parts::Assembly assembly;
  fea::Solution solution;
};

Solved solve(const parts::Design& design, fea::Method method = fea::Method::linear,
             const parts::StiffnessSet& set = {}) {
  parts::Assembly assembly = parts::assemble(design, set);
  const parts::DesignCase load_case = parts::design_cases(design).front();
  fea::Solution solution = fea::solve(fea::factor(assembly.model),
                                      parts::put(assembly, design, load_case), {.method = method});
  REQUIRE(solution.status() == fea::SolveStatus::converged);
  return {std::move(assembly), std::move(solution)};
}

/// Axial force in the first beam of a part.
double axial(const Solved& s, const std::string& part) {
  for (const parts::Piece& piece : s.assembly.pieces) {
    if (piece.part == part) return s.solution.forces_at(piece.beams.front().beam, 0.0).n;
  }
  FAIL("no part " << part);
  return 0.0;
}

checks::Finding root_weld(const Solved& s) {
  const fea::Vector6 held = s.solution.reaction(s.assembly.root->node);
  return checks::weld(
      {.group = s.assembly.root->group,
       .wrench = {.force = -held.head<3>(), .moment = -held.tail<3>(), .at = s.assembly.root->at_g},
       .required = 1.0});
}

}  // namespace

TEST_CASE("a sloped link carries F / cos(slope) and pushes F tan(slope) upward", "[parts]") {
  struct Row {
    double degrees, axial_kn, vertical_kn;
  };
  // P = F / cos, V = F tan for F = 15 kN.
  for (const Row row : {Row{5, 15.057, 1.312}, Row{10, 15.231, 2.645}, Row{15, 15.529, 4.019},
                        Row{20, 15.963, 5.460}, Row{25, 16.551, 6.995}}) {
    parts::Design d;
    d.lateral_link = parts_test::level_link();
    d.lateral_link->rise = 0.9 * std::sin(row.degrees * base::kDegree);
    d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
    const Solved s = solve(d);
    CHECK_THAT(axial(s, "lateral_link"), WithinRel(-1000.0 * row.axial_kn, 5e-5));
    const fea::Vector6 held = s.solution.reaction(*s.assembly.link_axle_end);
    CHECK_THAT(held[2], WithinRel(1000.0 * row.vertical_kn, 3e-4));
  }
}

TEST_CASE("a plain bracket's root moment is force times drop, its weld stress by hand", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->rail_stiffness = 200.0e3;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const Solved s = solve(d);
  CHECK_THAT(std::abs(s.solution.reaction(s.assembly.root->node)[3]), WithinRel(3750.0, 1e-9));
  // Bending 132.6, direct 8.8, resultant 132.9 MPa on the throat.
  CHECK_THAT(root_weld(s).demand, WithinRel(132.9e6, 5e-4));
  // Root stress of two plates 6 x 100 mm: M c / I = 187.5 MPa.
  const parts::Piece& plates = s.assembly.pieces.front();
  const parts::PieceBeam& top = plates.beams.back();
  const double length = fea::length(s.assembly.model, s.assembly.model[top.beam]);
  const sections::PointStress stress =
      sections::worst_point(top.at_b, s.solution.forces_at(top.beam, length));
  CHECK_THAT(std::abs(stress.bending), WithinRel(187.5e6, 1e-6));
}

TEST_CASE("a brace at the bolt leaves the bracket 1 / (1 + k_brace / k_bracket)", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  // The bracket's tip rate is 3 kN/mm with the rail's give: the root spring that makes it so.
  const double bending = 0.25 * 0.25 * 0.25 / (3.0 * 205.0e9 * 1.0e-6);
  const sections::AreaProps plates =
      sections::area_props(sections::TwinPlate{.depth = 0.1, .thickness = 0.006, .gap = 0.05});
  const double shear = 0.25 / (parts_test::steel().shear_modulus() * plates.shear_z);
  d.bracket->rail_stiffness = 0.25 * 0.25 / (1.0 / 3.0e6 - bending - shear);
  d.brace.emplace();
  d.brace->stick = parts_test::tube(0.032, 0.003);
  d.brace->length = 0.85;
  d.brace->slope = 15.0 * base::kDegree;
  d.brace->far_end = parts::BraceEnd::bolted;
  // 10 kN/mm level is 10 / cos^2 along the brace.
  d.brace->end_mount = 10.0e6 / std::pow(std::cos(d.brace->slope), 2);
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const Solved s = solve(d);
  // EA/L 65.9 kN/mm, level 61.5, in series with 10: 8.60; share 0.7414.
  CHECK_THAT(std::abs(s.solution.reaction(s.assembly.root->node)[3]), WithinRel(970.0, 2e-3));
  CHECK_THAT(std::abs(axial(s, "brace")), WithinRel(11.51e3, 2e-3));
  CHECK_THAT(std::abs(s.solution.reaction(s.assembly.root->node)[2]), WithinRel(2.98e3, 2e-3));
  // With the brace's own vertical kick in the weld: 36.1 MPa.
  CHECK_THAT(root_weld(s).demand, WithinRel(36.1e6, 4e-3));
}

TEST_CASE("a bent link's stress is the exact second-order one of the V shape", "[parts]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  // A bow of 0.9 mm (length / 1000) is added: 60 mm in all.
  d.lateral_link->bend.off_straight = 0.0591;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.231e3, 0.0)};
  const auto worst = [&](fea::Method method) {
    // The chord stays 0.9 m long, so the force along it is the push itself.
    const Solved s = solve(d, method);
    double stress = 0.0;
    for (const parts::PieceBeam& beam : s.assembly.pieces.front().beams) {
      stress = std::max(
          stress, sections::worst_point(beam.at_a, s.solution.forces_at(beam.beam, 0.0)).von_mises);
    }
    return stress;
  };
  // P/A + P e / Z = 29.4 + 240.5 in the undeformed shape.
  CHECK_THAT(worst(fea::Method::linear), WithinRel(269.9e6, 2e-3));
  // Exact second order of the V shape with pinned ends, M = P e tan(u)/u at the apex, u = L/2
  // sqrt(P / EI): 288.1 MPa.
  CHECK_THAT(worst(fea::Method::second_order), WithinRel(288.1e6, 2e-3));
}
