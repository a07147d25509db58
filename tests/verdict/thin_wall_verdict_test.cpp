// Walls that buckle before they yield, at 0.98 and 1.02 of their limit. Required: 1.5.
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace thin_wall_verdict_test {
using verdict_tests::check_flips;
using verdict_tests::finding;
using verdict_tests::judged;

namespace {

constexpr double kRequired = 1.5;

/// A member that stands out from a wall along y and is bent by a moment at its tip.
std::string bent_beam(const std::string& section, double bend) {
  return fmt::format(
      "title: thin beam\n"
      "points:\n"
      "  wall: [0, 0, 0 m]\n"
      "  tip: [0, 2, 0 m]\n"
      "members:\n"
      "  beam:\n"
      "    from: wall\n"
      "    to: tip\n"
      "    section: {}\n"
      "supports:\n"
      "  wall:\n"
      "    at: wall\n"
      "forces:\n"
      "  bend:\n"
      "    at: tip\n"
      "    moment_x: {} N m\n",
      section, bend);
}

std::string thin_tube(double slenderness) {
  return fmt::format("300 x {} mm S355H", 300.0 / slenderness);
}

}  // namespace

TEST_CASE("a thin tube in bending is over once its wall buckles, before it yields", "[verdict]") {
  // AISC 360-22 F8, from memory: Mn = 0.33 E / (D/t) S from D/t = 0.31 E/Fy = 183.4 on.
  const double slenderness = 240.0;
  const double limit = 0.33 * hand::kYoungEn / slenderness *
                       hand::tube(0.300, 0.300 / slenderness).modulus / kRequired;
  check_flips({.case_text = [&](double u) { return bent_beam(thin_tube(slenderness), u * limit); },
               .part = "beam",
               .check = "thin wall"});
  CHECK(finding(judged(bent_beam(thin_tube(slenderness), 1.02 * limit)), "beam", "yield")
            .utilization() < 0.9);
}

TEST_CASE("a thin wall in bending is not decided past 0.45 E/Fy", "[verdict]") {
  const double most = 0.45 * hand::kYoungEn / hand::kS355H;
  const studies::Answer thin = judged(bent_beam(thin_tube(1.02 * most), 5000.0));
  CHECK(thin.verdict == studies::Verdict::not_decided);
  CHECK(finding(thin, "beam", "thin wall").state == checks::State::undecided);
  CHECK(judged(bent_beam(thin_tube(0.98 * most), 5000.0)).verdict == studies::Verdict::within);
}

TEST_CASE("a rectangular tube in bending is over once its compressed wall gives", "[verdict]") {
  // AISC 360-22 F7-3 and F7-4, from memory, walls of 60 x 120 x 2.5 mm: b/t 45 over
  // 1.40 sqrt(E/Fy) = 34.05. What of the wall does not count is a strip in the middle of it.
  const double wall = 0.0025;
  const double flat = 0.120 - 3.0 * wall;
  const double root = std::sqrt(hand::kYoungEn / hand::kS355H);
  const double counts = 1.92 * wall * root * (1.0 - 0.38 / (flat / wall) * root);
  const hand::Section s = hand::box(0.060, 0.120, wall, 0.005);
  const double lost = (flat - counts) * wall;
  const double arm = 0.030 - 0.5 * wall;
  const double shift = lost * arm / (s.area - lost);
  const double inertia =
      s.inertia - lost * (arm * arm + wall * wall / 12.0) - (s.area - lost) * shift * shift;
  const double limit = hand::kS355H * inertia / (0.030 + shift) / kRequired;
  check_flips(
      {.case_text = [&](double u) { return bent_beam("60 x 120 x 2.5 mm S355H", u * limit); },
       .part = "beam",
       .check = "thin wall"});
}

TEST_CASE("a tube of usual walls has no thin wall line, and its yield says why", "[verdict]") {
  const studies::Answer answer = judged(bent_beam("60 x 5 mm S355H", 1000.0));
  for (const checks::Finding& f : answer.findings) CHECK(f.check != "thin wall");
  const checks::Finding yield = finding(answer, "beam", "yield");
  bool said = false;
  for (const std::string& note : yield.notes) {
    said = said || note.rfind("walls yield before they buckle: D/t of 12", 0) == 0;
  }
  CHECK(said);
}

}  // namespace thin_wall_verdict_test
