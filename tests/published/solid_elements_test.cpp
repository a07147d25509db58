// Beams beside solids: second-order hexahedra by the general finite-element library GetFEM. The
// solid's number stands as the published one; the difference is what the beam leaves out.

#include <array>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "parts/side_force.hpp"
#include "parts/taper.hpp"
#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/parts/build_design.hpp"
#include "tests/published/solid_body.hpp"
#include "tests/published/verification.hpp"

namespace solid_elements_test {
using Eigen::Vector3d;
using published::Basis;
using published::SolidBody;
using published::Source;
using published::verify;
using published::within;

namespace {

constexpr double kYoung = 205.0e9;
constexpr double kPoisson = 0.3;
constexpr double MPa = base::kMegapascal;

/// As a published value is written.
std::string printed(double value, const char* unit) {
  std::ostringstream out;
  out << std::setprecision(4) << std::showpoint << value << ' ' << unit;
  return out.str();
}

struct Answer {
  double deflection;  // [m]
  double stress;      // [Pa]
  double shear;       // [Pa]
  int unknowns;
};

// --- (a) a round tube cantilever of 8 diameters

constexpr double kOutside = 0.050;
constexpr double kWall = 0.005;
constexpr double kLength = 8.0 * kOutside;  // wall to force
constexpr double kTipForce = 2.0e3;

/// The tube along z, clamped at z = 0. The force acts across it 8 diameters away, spread over half
/// a diameter to both sides of that.
/// @param n  cells through the wall; 8 n around, 16 n up to the force
Answer solid_tube(int n) {
  const int along = 16 * n;
  const auto place = [&](const Vector3d& g) {
    const double r = 0.5 * kOutside - kWall + kWall * g.x() / n;
    const double turn = 2.0 * base::kPi * g.y() / (8 * n);
    return Vector3d(r * std::cos(turn), r * std::sin(turn), kLength * g.z() / along);
  };
  SolidBody body({.cells = {n, 8 * n, along + n},
                  .place = place,
                  .filled = [](const Vector3d&) { return true; }},
                 kYoung, kPoisson);
  body.solve([](const Vector3d& at) { return std::abs(at.z()) < 1e-9; },
             [&](const Vector3d& cell) { return cell.z() > along - n; }, {0.0, kTipForce, 0.0});
  const auto [top, two_diameters, middle] = std::array{2.0 * n, 4.0 * n, 8.0 * n};
  double shear = 0.0;  // mean through the wall at the neutral axis, by Simpson's rule
  for (const auto& [at, weight] : {std::pair{0.0, 1.0}, {0.5, 4.0}, {1.0, 1.0}}) {
    shear += weight / 6.0 * std::abs(body.stress({at * n, 0.0, middle})(1, 2));
  }
  return {body.mean_displacement().y(), std::abs(body.stress({1.0 * n, top, two_diameters})(2, 2)),
          shear, body.n_unknowns()};
}

Answer beam_tube() {
  const sections::RoundTube shape{.outside = kOutside, .wall = kWall};
  const sections::AreaProps props = sections::area_props(shape, kPoisson);
  fea::Model model;
  const auto beam = fea_test::chain(model, fea::Vector3::Zero(), {0.0, 0.0, kLength}, 1, props,
                                    {.young = kYoung, .shear = kYoung / (2.0 * (1.0 + kPoisson))});
  fea_test::clamp(model, beam.nodes.front());
  const fea::Solution s =
      fea_test::linear(model, fea_test::push(beam.nodes.back(), {0.0, kTipForce, 0.0}));
  const auto cut = s.forces_at(beam.beams.front(), 2.0 * kOutside);
  return {s.placement(beam.nodes.back())(1),
          sections::worst_point(shape, {.my = cut.my, .mz = cut.mz}).von_mises,
          sections::worst_point(shape, {.vy = cut.vy, .vz = cut.vz}).shear, 6};
}

// --- (b) a twin-plate tapered bracket

const Vector3d kSide(0.0, 10.0e3, 0.0);  // across the truck, in the plane of the plates  [N]
const Vector3d kAhead(2.0e3, 0.0, 0.0);  // along the truck, across the plates  [N]
// Where stress is taken, as a share of the drop from the bolt: two depths from rail and bolt, and
// one depth from the rail.
constexpr double kMidDrop = 0.5;
constexpr double kNearRail = 0.75;
constexpr double kSleeve = 0.020;  // half the height of the sleeve around the bolt

parts::Design bracket_design(double fx, double fy) {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->drop = 0.36;
  d.bracket->plates.thickness = 0.008;
  d.bracket->depth_at_rail = 0.090;
  d.bracket->depth_at_bolt = 0.050;
  d.bracket->gap = 0.050;
  d.bracket->rail_stiffness = 1.0e12;  // clamped, as the solid
  d.forces = {parts_test::force_at("frame bolt", fx, fy, 0.0)};
  return d;
}

/// Two plates and the sleeve between them at the bolt, clamped at the rail. x along the truck.
/// @param n  8 n cells along the drop, 4 across the depth, one through a plate
Answer solid_bracket(const Vector3d& force, double level, int n) {
  const int depth_cells = 4;
  const int drop_cells = 8 * n;
  const parts::Bracket b = *bracket_design(1.0, 0.0).bracket;
  const double t = b.plates.thickness;
  const auto height = [&](double w) {  // the first two cells are beside the sleeve
    return w < 2.0 ? kSleeve * (w - 1.0) : kSleeve + (b.drop - kSleeve) * (w - 2.0) / drop_cells;
  };
  const auto place = [&](const Vector3d& g) {
    const double x = g.x() < 1.0   ? -0.5 * b.gap - t * (1.0 - g.x())
                     : g.x() > 3.0 ? 0.5 * b.gap + t * (g.x() - 3.0)
                                   : 0.5 * b.gap * (g.x() - 2.0);
    const double z = height(g.z());
    const double depth = b.depth_at_bolt + (b.depth_at_rail - b.depth_at_bolt) * z / b.drop;
    return Vector3d(x, depth * (g.y() / depth_cells - 0.5), z);
  };
  const auto sleeve = [&](const Vector3d& cell) {
    return cell.x() > 1.0 && cell.x() < 3.0 && cell.z() < 2.0 &&
           std::abs(cell.y() / depth_cells - 0.5) < 0.25;
  };
  SolidBody body(
      {.cells = {4, depth_cells, 2 + drop_cells},
       .place = place,
       .filled =
           [&](const Vector3d& cell) { return cell.x() < 1.0 || cell.x() > 3.0 || sleeve(cell); }},
      kYoung, kPoisson);
  body.solve([&](const Vector3d& at) { return std::abs(at.z() - b.drop) < 1e-9; }, sleeve, force);
  const double w = 2.0 + (level * b.drop - kSleeve) / (b.drop - kSleeve) * drop_cells;
  const bool ahead = force.x() != 0.0;
  // The outer face at mid depth where the plates bend across, the edge where they bend in plane.
  const Vector3d at = ahead ? Vector3d(0.0, 0.5 * depth_cells, w) : Vector3d(0.5, 0.0, w);
  const Vector3d moved = body.mean_displacement();
  return {ahead ? moved.x() : moved.y(), std::abs(body.stress(at)(2, 2)), 0.0, body.n_unknowns()};
}

/// The tool's own beams.
Answer beam_bracket(const Vector3d& force, double level) {
  const parts::Design d = bracket_design(force.x(), force.y());
  const parts::Assembly assembly = parts::assemble(d, {});
  const parts::DesignCase load_case = parts::design_cases(d).front();
  const fea::Solution s =
      fea::solve(fea::factor(assembly.model), parts::put(assembly, d, load_case),
                 {.method = fea::Method::linear});
  REQUIRE(s.status() == fea::SolveStatus::converged);
  const parts::Piece& plates = assembly.pieces.front();
  REQUIRE(plates.beams.size() == 1);
  const parts::PieceBeam& beam = plates.beams.front();
  const auto cut = s.forces_at(beam.beam, level * s.length(beam.beam));
  const double stress = sections::worst_point(parts::between(beam.at_a, beam.at_b, level),
                                              {.n = cut.n, .my = cut.my, .mz = cut.mz})
                            .von_mises;
  const fea::Vector6 moved = s.placement(*assembly.bracket_bolt);
  return {force.x() != 0.0 ? moved(0) : moved(1), stress, 0.0, 0};
}

}  // namespace

TEST_CASE("a round tube of 8 diameters bends as solid elements do", "[fea][solid]") {
  const Source source{
      "GetFEM 5.4.2, 27-node hexahedra: round tube 50 x 5 mm, clamped, 2 kN 400 mm "
      "from the wall",
      Basis::general_finite_elements};
  const Answer solid = solid_tube(2);
  const Answer beam = beam_tube();
  verify(source, "deflection at the force", printed(1e3 * solid.deflection, "mm"),
         1e3 * beam.deflection, within(0.02));
  verify(source, "bending stress two diameters from the wall", printed(solid.stress / MPa, "MPa"),
         beam.stress / MPa, within(0.02));
  verify(source, "shear stress at mid length, mean through the wall",
         printed(solid.shear / MPa, "MPa"), beam.shear / MPa, within(0.02));
}

TEST_CASE("a twin-plate tapered bracket differs from solid elements by a stated amount",
          "[parts][solid]") {
  const Source source{
      "GetFEM 5.4.2, 27-node hexahedra: twin-plate bracket, plates 8 mm, 90 to 50 mm "
      "deep, 50 mm apart, drop 360 mm, clamped at the rail, sleeve at the bolt",
      Basis::general_finite_elements};
  const Answer solid = solid_bracket(kSide, kMidDrop, 4);
  const Answer beam = beam_bracket(kSide, kMidDrop);
  verify(source, "10 kN in the plates' plane: deflection of the bolt",
         printed(1e3 * solid.deflection, "mm"), 1e3 * beam.deflection, within(0.05));
  verify(source, "10 kN in the plates' plane: stress at mid drop",
         printed(solid.stress / MPa, "MPa"), beam.stress / MPa, within(0.05));
  const Answer solid_ahead = solid_bracket(kAhead, kNearRail, 4);
  const Answer beam_ahead = beam_bracket(kAhead, kNearRail);
  verify(source, "2 kN across the plates: deflection of the bolt",
         printed(1e3 * solid_ahead.deflection, "mm"), 1e3 * beam_ahead.deflection, within(3.2));
  verify(source, "2 kN across the plates: stress one depth from the rail",
         printed(solid_ahead.stress / MPa, "MPa"), beam_ahead.stress / MPa, within(1.7));
  parts::SideForce side;
  side.straight_at = 0.36 * (1.0 / std::log(1.8) - 1.0 / 0.8);
  side.spacing = 0.058;
  const auto cut = parts::with_side_force({}, side, kNearRail * 0.36, kAhead.x());
  const double depth = 0.050 + kNearRail * 0.040;
  const double portal =
      sections::worst_point(sections::TwinPlate{.depth = depth, .thickness = 0.008, .gap = 0.050},
                            {.n = cut.n, .mz = cut.mz})
          .von_mises;
  verify(source, "2 kN across the plates, sleeve drawn tight: stress one depth from the rail",
         printed(solid_ahead.stress / MPa, "MPa"), portal / MPa, within(0.1));
  CHECK(portal > solid_ahead.stress);
  // Beams that bend alone are the softer and the more stressed ones.
  CHECK(beam_ahead.deflection > solid_ahead.deflection);
  CHECK(beam_ahead.stress > solid_ahead.stress);
}

// Not run with the others: its lines stand in README.md.
TEST_CASE("solid elements converge", "[.][convergence]") {
  const auto line = [](const char* what, const Answer& a) {
    std::cout << "| " << what << " | " << a.unknowns << " | " << std::setprecision(5)
              << 1e3 * a.deflection << " mm | " << a.stress / MPa << " MPa |" << std::endl;
  };
  for (const int n : {1, 2, 3}) line("tube", solid_tube(n));
  for (const int n : {1, 2, 4}) line("bracket, in plane", solid_bracket(kSide, kMidDrop, n));
  for (const int n : {1, 2, 4}) line("bracket, across", solid_bracket(kAhead, kNearRail, n));
}

}  // namespace solid_elements_test
