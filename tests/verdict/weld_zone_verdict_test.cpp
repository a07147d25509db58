// Parts that welds weaken in places, at 0.98 and 1.02 of their limits. DOM tube: ASTM A513 type 5
// 1020, stress relieved 55 ksi, normalized, as beside a weld, 35 ksi (read). 1018 bar: cold drawn
// 54 ksi, hot rolled, as beside a weld, 32 ksi (Shigley table A-20, read). Young's modulus 29,000
// ksi as 200 GPa. Zones: 15 mm or 2 t beyond a weld, common practice, no source.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace weld_zone_verdict_test {
using Catch::Matchers::Contains;
using verdict_tests::check_flips;
using verdict_tests::finding;
using verdict_tests::judged;

namespace {

constexpr double kYieldFactor = 1.5;
constexpr double kColumnFactor = 3.0;
constexpr double kYoung = 200.0e9;
constexpr double kDomAway = 55.0 * hand::kKsi;
constexpr double kDomBeside = 35.0 * hand::kKsi;
constexpr double kBarAway = 54.0 * hand::kKsi;
constexpr double kBarBeside = 32.0 * hand::kKsi;

/// A bar on two supports that let it turn, its ends welded to what is there.
std::string simple_beam(const std::string& section, double length, const std::string& force) {
  return fmt::format(
      "title: simple beam\n"
      "points:\n"
      "  start: [0, 0, 0 m]\n"
      "  end: [0, {}, 0 m]\n"
      "members:\n"
      "  beam: {{from: start, to: end, section: {}}}\n"
      "supports:\n"
      "  start: {{at: start, held: x y z ry}}\n"
      "  end: {{at: end, held: x z}}\n"
      "forces:\n"
      "  load: {{{}}}\n",
      length, section, force);
}

std::string in_the_middle(double length, double force) {
  return fmt::format("on: beam, from_start: {} m, force_z: {} N", 0.5 * length, -force);
}

/// A strut of 1-1/2 x 0.120 in DOM, welded at its head and at its foot or on a pin there.
std::string strut(const std::string& from_joint, double length, double press) {
  return fmt::format(
      "title: strut\n"
      "points:\n"
      "  foot: [0, 0, 0 m]\n"
      "  head: [0, {}, 0 m]\n"
      "members:\n"
      "  strut: {{from: foot, to: head, section: 1-1/2 x 0.120 in DOM, from_joint: {}}}\n"
      "supports:\n"
      "  foot: {{at: foot}}\n"
      "  head: {{at: head, held: x z rx ry rz}}\n"
      "forces:\n"
      "  press: {{at: head, force_y: {} N}}\n",
      length, from_joint, -press);
}

const hand::Section kTube = hand::tube(1.5 * 0.0254, 0.120 * 0.0254);

/// Nominal load of the strut with that yield strength.  Source: AISC 360-22 E3, from memory.
double e3(double yield, double length) {
  const double radius = std::sqrt(kTube.inertia / kTube.area);
  return kTube.area * hand::column_stress(kYoung, yield, length / radius);
}

}  // namespace

TEST_CASE("a tube bent in its middle is judged by its parent there", "[verdict]") {
  // M = F L / 4; its welds at the ends see none of it.
  const double length = 1.2;
  const double limit = 4.0 * kDomAway * kTube.modulus / length / kYieldFactor;
  const auto text = [&](double u) {
    return simple_beam("1-1/2 x 0.120 in DOM", length, in_the_middle(length, u * limit));
  };
  check_flips({.case_text = text, .part = "beam", .check = "yield"});
  const checks::Finding f = finding(judged(text(0.98)), "beam", "yield");
  CHECK(f.capacity == Approx(kDomAway).epsilon(1e-4));
  CHECK_THAT(f.where, Contains("50 % along"));
  // Beside it the zones: to 15 mm from each end, where the moment is 15 / 600 of the middle's.
  REQUIRE(f.lines.size() >= 2);
  const checks::WorkedLine& beside = f.lines.back();
  CHECK_THAT(beside.symbols, Contains("weld zone's"));
  CHECK(beside.values.at(0).si == Approx(kDomBeside).epsilon(1e-4));
  const checks::WorkedLine& zones = f.lines.at(f.lines.size() - 2);
  REQUIRE(zones.values.size() == 4);
  CHECK(zones.values[1].si == Approx(0.015));
  CHECK(zones.values[2].si == Approx(length - 0.015));
}

TEST_CASE("the same tube pulled along is judged by its weld zones", "[verdict]") {
  const double limit = kTube.area * kDomBeside / kYieldFactor;
  const auto text = [&](double u) {
    return simple_beam("1-1/2 x 0.120 in DOM", 1.2,
                       fmt::format("at: end, force_y: {} N", u * limit));
  };
  check_flips({.case_text = text, .part = "beam", .check = "yield"});
  const checks::Finding f = finding(judged(text(0.98)), "beam", "yield");
  CHECK(f.capacity == Approx(kDomBeside).epsilon(1e-4));
  CHECK_THAT(f.lines.back().symbols, Contains("parent's"));
  CHECK(f.lines.back().values.at(0).si == Approx(kDomAway).epsilon(1e-4));
}

TEST_CASE("a tab on the side of a tube weakens that side alone", "[verdict]") {
  const double length = 1.2;
  const double radius = 0.75 * 0.0254;
  const double width = 0.010;
  const double half = std::asin(0.5 * width / radius) + 0.015 / radius;
  const double at_middle = 4.0 * kTube.modulus / length / kYieldFactor;
  const auto limit_of = [&](const std::string& toward, double limit) {
    return verdict_tests::Limit{
        .case_text =
            [=](double u) {
              return simple_beam("1-1/2 x 0.120 in DOM", length, in_the_middle(length, u * limit)) +
                     "side_welds:\n  tab: {on: beam, from_start: 600 mm, length: 20 mm, width: 10 "
                     "mm, toward: " +
                     toward + "}\n";
            },
        .part = "beam",
        .check = "yield"};
  };
  // On top, where the moment presses most: as weak as a ring. Beside, about the neutral axis: the
  // zone's edge, sin(half) of the outer fiber's stress; the parent's outer fiber is farther off.
  REQUIRE(std::sin(half) / kDomBeside > 1.0 / kDomAway);
  check_flips(limit_of("z", at_middle * kDomBeside));
  check_flips(limit_of("x", at_middle * kDomBeside / std::sin(half)));
  const checks::Finding f =
      finding(judged(limit_of("x", at_middle * kDomBeside / std::sin(half)).case_text(0.98)),
              "beam", "yield");
  CHECK(std::any_of(f.notes.begin(), f.notes.end(), [](const std::string& note) {
    return note.find("on one side of it") != std::string::npos;
  }));
}

TEST_CASE("a bar is judged at the inner edge of its weld zone when that is worst", "[verdict]") {
  // The zone of a 30 mm bar is 60 mm long: there M is 60 / 90 of the middle's, and 32 of 54 ksi
  // are left.
  const hand::Section bar = hand::bar(0.030);
  const double length = 0.180;
  const double limit = kBarBeside * bar.modulus / (0.5 * 0.060) / kYieldFactor;
  REQUIRE(kBarBeside / 60.0 < kBarAway / 90.0);
  const auto text = [&](double u) {
    return simple_beam("30 mm round bar 1018_CD", length, in_the_middle(length, u * limit));
  };
  check_flips({.case_text = text, .part = "beam", .check = "yield"});
  CHECK_THAT(finding(judged(text(0.98)), "beam", "yield").where, Contains("33 % along"));
}

TEST_CASE("a strut welded at its ends buckles as its parent and holds A Fy beside its welds",
          "[verdict]") {
  // Short: its ends give first; long: it buckles first.
  for (const double length : {0.5, 1.2}) {
    const double held = kTube.area * kDomBeside;
    const double limit = std::min(e3(kDomAway, length), held) / kColumnFactor;
    REQUIRE((length < 1.0) == (held < e3(kDomAway, length)));
    check_flips({.case_text = [&](double u) { return strut("welded", length, u * limit); },
                 .part = "strut",
                 .check = "column"});
  }
}

TEST_CASE("a weld more than a twentieth of its length in makes a strut buckle as its zone",
          "[verdict]") {
  // Weld of the eye as far from the pin as the tube is wide, 38.1 mm: L / 20 of 762 mm.
  // Aluminum Design Manual, practice for welds at the ends of columns, from memory.
  for (const double length : {0.740, 0.780}) {
    const bool near_end = length > 0.762;
    const double nominal =
        near_end ? std::min(e3(kDomAway, length), kTube.area * kDomBeside) : e3(kDomBeside, length);
    const double limit = nominal / kColumnFactor;
    const auto text = [&](double u) { return strut("pin along x", length, u * limit); };
    check_flips({.case_text = text, .part = "strut", .check = "column"});
    const checks::Finding f = finding(judged(text(0.98)), "strut", "column");
    const bool said = std::any_of(f.lines.begin(), f.lines.end(), [&](const auto& line) {
      return line.symbols.find(near_end ? "within 0.05 L" : "over 0.05 L") != std::string::npos;
    });
    CHECK(said);
  }
}

TEST_CASE("welds farther from the bolts never leave more margin", "[verdict]") {
  const auto link = [](int millimeters, const std::string& bend) {
    return fmt::format(
        "title: link\n"
        "lateral_link:\n"
        "  bolt_to_bolt: 700 mm\n"
        "  rise: 0 mm\n"
        "  tube: 1-1/2 x 0.120 in DOM\n"
        "  ends: weld-on pin\n"
        "  bolt_to_weld: {} mm\n"
        "{}"
        "forces:\n"
        "  push: {{at: axle bolt, force_y: 10 kN}}\n",
        millimeters, bend);
  };
  for (const std::string bend : {"", "  bend: 40 mm off straight, up\n  bend_radius: 200 mm\n"}) {
    double before = 0.0;
    double least = 1.0e9;
    for (const int reach : {15, 25, 44, 46, 80, 150, 200, 240}) {
      const double now = judged(link(reach, bend)).findings.front().utilization();
      CHECK(now >= before * (1.0 - 1e-6));
      before = now;
      least = std::min(least, now);
    }
    CHECK(before > 1.05 * least);
  }
}

}  // namespace weld_zone_verdict_test
