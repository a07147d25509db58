// Beams beside solids: second-order hexahedra by the general finite-element library GetFEM. The
// solid's number stands as the published one; the difference is what the beam leaves out.

#include <cmath>
#include <iomanip>
#include <iostream>
#include <string>

#include <catch2/catch.hpp>

#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/parts/build_design.hpp"
#include "tests/published/solid_body.hpp"
#include "tests/published/verification.hpp"

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
  out << std::setprecision(4) << value << ' ' << unit;
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
constexpr double kLength = 8.0 * kOutside;
constexpr double kTipForce = 2.0e3;

/// The tube along z, clamped at z = 0, pushed along y at its end.
/// @param around  cells around it, a multiple of 4
/// @param along   cells along it, a multiple of 8
Answer solid_tube(int through, int around, int along) {
  const auto place = [&](const Vector3d& g) {
    const double r = 0.5 * kOutside - kWall + kWall * g.x() / through;
    const double turn = 2.0 * base::kPi * g.y() / around;
    return Vector3d(r * std::cos(turn), r * std::sin(turn), kLength * g.z() / along);
  };
  SolidBody body({.cells = {through, around, along},
                  .place = place,
                  .filled = [](const Vector3d&) { return true; }},
                 kYoung, kPoisson);
  // The force is spread over the last cells: its center is half a cell from the end.
  body.solve([](const Vector3d& at) { return std::abs(at.z()) < 1e-9; },
             [&](const Vector3d& cell) { return cell.z() > along - 1; }, {0.0, kTipForce, 0.0});
  const double station = along * 0.25;  // two diameters from the wall
  const double top = around * 0.25;
  const double middle = along * 0.5;
  double shear = 0.0;  // mean through the wall at the neutral axis, by Simpson's rule
  for (const auto& [at, weight] : {std::pair{0.0, 1.0}, {0.5, 4.0}, {1.0, 1.0}}) {
    shear += weight / 6.0 * body.stress({at * through, 0.0, middle})(1, 2);
  }
  return {body.mean_displacement().y(), body.stress({1.0 * through, top, station})(2, 2), shear,
          body.n_unknowns()};
}

/// The same with beams.
/// @param arm  wall to the force
Answer beam_tube(double arm) {
  const sections::RoundTube shape{.outside = kOutside, .wall = kWall};
  const sections::AreaProps props = sections::area_props(shape, kPoisson);
  fea::Model model;
  const auto beam = fea_test::chain(model, fea::Vector3::Zero(), {0.0, 0.0, arm}, 1, props,
                                    {.young = kYoung, .shear = kYoung / (2.0 * (1.0 + kPoisson))});
  fea_test::clamp(model, beam.nodes.front());
  const fea::Solution s =
      fea_test::linear(model, fea_test::push(beam.nodes.back(), {0.0, kTipForce, 0.0}));
  const auto cut = s.forces_at(beam.beams.front(), 2.0 * kOutside);
  const double shear = sections::worst_point(shape, {.vy = cut.vy, .vz = cut.vz}).shear;
  return {s.placement(beam.nodes.back())(1),
          sections::worst_point(shape, {.my = cut.my, .mz = cut.mz}).von_mises, shear, 6};
}

// --- (b) a twin-plate tapered bracket

constexpr double kSide = 10.0e3;   // across the truck, in the plane of the plates  [N]
constexpr double kAhead = 2.0e3;   // along the truck, across the plates  [N]
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
/// @param level  share of the drop, from the bolt, at which stress is taken
Answer solid_bracket(const Vector3d& force, double level, int depth_cells, int drop_cells) {
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
  const double n = static_cast<double>(plates.beams.size());
  const auto& beam = plates.beams[static_cast<std::size_t>(std::lround(level * n))];
  const auto cut = s.forces_at(beam.beam, 0.0);
  const double stress =
      sections::worst_point(beam.at_a, {.n = cut.n, .my = cut.my, .mz = cut.mz}).von_mises;
  const fea::Vector6 moved = s.placement(*assembly.bracket_bolt);
  return {force.x() != 0.0 ? moved(0) : moved(1), stress, 0.0, 0};
}

}  // namespace

TEST_CASE("a round tube of 8 diameters bends as solid elements do", "[fea][solid]") {
  const Source source{
      "GetFEM 5.4.2, 27-node hexahedra: round tube 50 x 5 mm, 400 mm, clamped, 2 kN "
      "at its end",
      Basis::general_finite_elements};
  const int along = 32;
  const Answer solid = solid_tube(1, 16, along);
  const Answer beam = beam_tube(kLength * (1.0 - 0.5 / along));
  verify(source, "deflection of the end", printed(1e3 * solid.deflection, "mm"),
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
  const Vector3d side(0.0, kSide, 0.0);
  const Answer solid = solid_bracket(side, 0.5, 4, 16);
  const Answer beam = beam_bracket(side, 0.5);
  verify(source, "10 kN in the plates' plane: deflection of the bolt",
         printed(1e3 * solid.deflection, "mm"), 1e3 * beam.deflection, within(0.05));
  verify(source, "10 kN in the plates' plane: stress at mid drop",
         printed(solid.stress / MPa, "MPa"), beam.stress / MPa, within(0.05));
  const Vector3d ahead(kAhead, 0.0, 0.0);
  const Answer solid_across = solid_bracket(ahead, 0.75, 4, 16);
  const Answer beam_across = beam_bracket(ahead, 0.75);
  verify(source, "2 kN across the plates: deflection of the bolt",
         printed(1e3 * solid_across.deflection, "mm"), 1e3 * beam_across.deflection, within(10.0));
  verify(source, "2 kN across the plates: stress a quarter of the drop from the rail",
         printed(solid_across.stress / MPa, "MPa"), beam_across.stress / MPa, within(10.0));
}

// Not run with the others: its lines stand in README.md.
TEST_CASE("solid elements converge", "[.][convergence]") {
  for (const int n : {1, 2, 3}) {
    const Answer a = solid_tube(n, 8 * n, 16 * n);
    std::cout << "| tube | " << a.unknowns << " | " << 1e3 * a.deflection << " mm | "
              << a.stress / MPa << " MPa |\n";
  }
  for (const bool ahead : {false, true}) {
    for (const int n : {1, 2, 3}) {
      const Vector3d force = ahead ? Vector3d(kAhead, 0, 0) : Vector3d(0, kSide, 0);
      const Answer a = solid_bracket(force, ahead ? 0.75 : 0.5, 4 * n, 8 * n);
      std::cout << (ahead ? "| bracket, across the plates | " : "| bracket, in plane | ")
                << a.unknowns << " | " << 1e3 * a.deflection << " mm | " << a.stress / MPa
                << " MPa |\n";
    }
  }
}
