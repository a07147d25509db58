// Yield of every kind of section, at 0.98 and 1.02 of the load that hand arithmetic gives.
// Required on routine loads: 1.5.
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace yield_verdict_test {
using verdict_tests::check_flips;
using verdict_tests::finding;
using verdict_tests::judged;

namespace {

constexpr double kRequired = 1.5;

/// A member that stands out from a wall along y.
std::string cantilever(const std::string& section, double length, const std::string& load,
                       const std::string& more = "") {
  return fmt::format(
      "title: cantilever\n"
      "points:\n"
      "  wall: [0, 0, 0 m]\n"
      "  tip: [0, {}, 0 m]\n"
      "members:\n"
      "  beam:\n"
      "    from: wall\n"
      "    to: tip\n"
      "    section: {}\n{}"
      "supports:\n"
      "  wall:\n"
      "    at: wall\n"
      "forces:\n"
      "  load:\n"
      "    at: tip\n{}",
      length, section, more, load);
}

/// A level link that pushes a bracket 250 mm below its rail; plates 6 x 100 mm.
std::string bracket(double push, const std::string& more = "  side_force: 0 %\n") {
  return fmt::format(
      "title: bracket plates\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 900 mm\n"
      "  rise: 0 mm\n"
      "  tube: 50 x 10 mm S355H\n"
      "  ends: weld-on pin\n"
      "bracket:\n"
      "  drop: 250 mm\n"
      "  plates: 2 of 6 mm S355\n"
      "  depth_at_rail: 100 mm\n"
      "  depth_at_bolt: 100 mm\n"
      "  weld: 20 mm fillet, both sides of each plate\n"
      "  rail: boxed, 100 x 150 x 16 mm\n"
      "{}"
      "  welded_to: bottom\n"
      "  rail_stiffness: 200 kN m/rad\n"
      "forces:\n"
      "  push:\n"
      "    at: axle bolt\n"
      "    force_y: {} N\n",
      more, push);
}

}  // namespace

TEST_CASE("a tube in bending is over once F L passes Fy S", "[verdict]") {
  // M / S, Shigley 9th ed. eq. 3-24, from memory.
  const double length = 1.2;
  const double limit = hand::kS355H * hand::tube(0.060, 0.005).modulus / length / kRequired;
  check_flips({.case_text =
                   [&](double u) {
                     return cantilever("60 x 5 mm S355H", length,
                                       fmt::format("    force_z: {} N\n", -u * limit));
                   },
               .part = "beam",
               .check = "yield"});
}

TEST_CASE("a bar under tension, bending and torque is over once von Mises passes Fy", "[verdict]") {
  // sigma = N/A + M/S, tau = T/(2 S), sqrt(sigma^2 + 3 tau^2): Shigley 9th ed. eq. 5-15, from
  // memory. A36: 36 ksi, ASTM A36, from memory. Tension straightens: at the tip M stays as given.
  const hand::Section s = hand::bar(0.040);
  const double n = 60.0e3;
  const double m = 500.0;
  const double t = 900.0;
  const double sigma = n / s.area + m / s.modulus;
  const double tau = t / (2.0 * s.modulus);
  const double multiple =
      36.0 * hand::kKsi / std::sqrt(sigma * sigma + 3.0 * tau * tau) / kRequired;
  check_flips({.case_text =
                   [&](double u) {
                     const double f = u * multiple;
                     return cantilever("40 mm round bar A36", 0.4,
                                       fmt::format("    force_y: {} N\n    moment_x: {} N m\n"
                                                   "    moment_y: {} N m\n",
                                                   f * n, f * m, f * t));
                   },
               .part = "beam",
               .check = "yield"});
}

TEST_CASE("a rectangular tube bent both ways is over once its corner passes Fy", "[verdict]") {
  // Mx/Sx + Mz/Sz at the corner; 80 x 40 x 4 mm, outside corner radius of two walls.
  const double about_x = hand::box(0.080, 0.040, 0.004, 0.008).modulus;
  const double about_z = hand::box(0.040, 0.080, 0.004, 0.008).modulus;
  const double m_x = 2000.0;
  const double m_z = 1000.0;
  const double multiple = hand::kS355H / (m_x / about_x + m_z / about_z) / kRequired;
  check_flips({.case_text =
                   [&](double u) {
                     return cantilever("80 x 40 x 4 mm S355H", 0.3,
                                       fmt::format("    moment_x: {} N m\n    moment_z: {} N m\n",
                                                   u * multiple * m_x, u * multiple * m_z));
                   },
               .part = "beam",
               .check = "yield"});
}

TEST_CASE("bracket plates are over once force times drop passes Fy S", "[verdict]") {
  const double modulus = 2.0 * 0.006 * 0.100 * 0.100 / 6.0;
  const double limit = hand::kS355 * modulus / 0.250 / kRequired;
  check_flips({.case_text = [&](double u) { return bracket(u * limit); },
               .part = "bracket",
               .check = "yield",
               .tolerance = 2e-3});  // the plates lean: a thousandth of the push is pull
}

TEST_CASE("a side force of a twentieth bends the plates across, less where a sleeve holds them",
          "[verdict]") {
  // Statics, no source; 5 % is a proposal. Held by the sleeve, 56 mm apart, the plates are straight
  // at half of the drop, and a couple of pull and push in them carries the rest.
  const double in_plane = 0.250 / (2.0 * 0.006 * 0.100 * 0.100 / 6.0);
  const double across = 2.0 * 0.100 * 0.006 * 0.006 / 6.0;
  const double area = 2.0 * 0.100 * 0.006;
  const double held = 0.05 * (0.125 / across + 2.0 * 0.125 / 0.056 / area);
  const double limit = hand::kS355 / (in_plane + held) / kRequired;
  check_flips({.case_text = [&](double u) { return bracket(u * limit, ""); },
               .part = "bracket",
               .check = "yield"});
  const auto loose = [&](double push) {
    std::string text = bracket(push, "");
    return text.insert(text.find("  ends: weld-on pin"),
                       "  bolt: M24 class 10.9, single shear, loose stack\n");
  };
  const double alone = hand::kS355 / (in_plane + 0.05 * 0.250 / across) / kRequired;
  CHECK(finding(judged(loose(0.98 * alone)), "bracket", "yield").state == checks::State::within);
  CHECK(finding(judged(loose(1.02 * alone)), "bracket", "yield").state == checks::State::over);
}

TEST_CASE("a welded DOM tube is judged by 35 ksi, not by its 55", "[verdict]") {
  // ASTM A513 type 5 1020, stress relieved: 55 ksi; normalized, as beside a weld: 35 ksi (read).
  const hand::Section s = hand::tube(1.5 * 0.0254, 0.250 * 0.0254);
  const double length = 0.8;
  const double limit = 35.0 * hand::kKsi * s.modulus / length / kRequired;
  const auto text = [&](double u, const std::string& more) {
    return cantilever("1-1/2 x 0.250 in DOM", length,
                      fmt::format("    force_z: {} N\n", -u * limit), more);
  };
  check_flips(
      {.case_text = [&](double u) { return text(u, ""); }, .part = "beam", .check = "yield"});
  CHECK(finding(judged(text(1.02, "")), "beam", "yield").capacity == Approx(241.3e6).epsilon(2e-4));
  const studies::Answer unwelded = judged(text(1.02, "    welded: no\n"));
  CHECK(unwelded.verdict == studies::Verdict::within);
  CHECK(finding(unwelded, "beam", "yield").utilization() ==
        Approx(1.02 * 35.0 / 55.0).epsilon(1e-3));
}

TEST_CASE("an angle is over once unsymmetric bending passes Fy at the tip of a leg", "[verdict]") {
  // (My Iz z - My Iyz y) / (Iy Iz - Iyz^2), textbook unsymmetric bending, from memory, with the
  // rectangles 50 x 5 and 45 x 5 mm of a sharp angle; EN 10025-2: 355 MPa (read).
  const double a1 = 0.050 * 0.005;
  const double a2 = 0.045 * 0.005;
  const double center = (a1 * 0.0025 + a2 * 0.0275) / (a1 + a2);
  const double i = a1 * (0.005 * 0.005 / 12.0 + std::pow(0.0025 - center, 2)) +
                   a2 * (0.045 * 0.045 / 12.0 + std::pow(0.0275 - center, 2));
  const double mixed =
      a1 * (0.025 - center) * (0.0025 - center) + a2 * (0.0025 - center) * (0.0275 - center);
  const double z = 0.050 - center;
  const double y = 0.005 - center;
  const double stress = (i * z - mixed * y) / (i * i - mixed * mixed);  // at its inner edge
  const double limit = 355.0e6 / stress / kRequired;
  check_flips({.case_text =
                   [&](double u) {
                     return cantilever("50 x 50 x 5 mm angle S355", 0.5,
                                       fmt::format("    moment_x: {} N m\n", u * limit));
                   },
               .part = "beam",
               .check = "yield",
               .tolerance = 5e-3});
}

// B2 = 1.30 / h^(2/3), h = t R / r^2: ASME III NB-3683, from memory.
TEST_CASE("a thin tube is over at its bend once the flattened section passes Fy", "[verdict]") {
  const double h = 3.0 * 120.0 / (28.5 * 28.5);
  const double at_limit =
      hand::kS355H * hand::tube(0.060, 0.003).modulus / (1.30 / std::pow(h, 2.0 / 3.0)) / kRequired;
  check_flips({.case_text =
                   [&](double u) {
                     return fmt::format(
                         "title: bent tube\n"
                         "points: {{wall: [0, 0, 0 m], knee: [0, 1, 0 m], tip: [0, 1, 1 m]}}\n"
                         "members:\n"
                         "  beam: {{from: wall, to: tip, through: [knee], bend_radius: 120 mm,\n"
                         "    section: 60 x 3 mm S355H}}\n"
                         "supports: {{wall: {{at: wall}}}}\n"
                         "forces: {{load: {{at: tip, moment_x: {} N m}}}}\n",
                         u * at_limit);
                   },
               .part = "beam",
               .check = "yield"});
}

}  // namespace yield_verdict_test
