// Twist of a rail between two cross members. Expected stiffnesses in round invented sizes: derived
// outside the program from the closed forms (no published source), and by a finite-element
// solution of G J phi'' - E Cw phi'''' = 0 here.
#include "parts/rail_root.hpp"

#include <cmath>

#include <Eigen/Dense>
#include <catch2/catch.hpp>

#include "build_design.hpp"

namespace rail_root_test {
using Catch::Matchers::WithinRel;

namespace {

constexpr double kAhead = 0.25;
constexpr double kBehind = 0.45;

parts::Bracket on(const parts::Rail& rail) {
  parts::Bracket b = parts_test::hand_check_bracket();
  b.rail = rail;
  b.cross_member_ahead = kAhead;
  b.cross_member_behind = kBehind;
  return b;
}

parts::Bracket on_box() {
  return on({.boxed = true, .width = 0.070, .height = 0.150, .wall = 0.004});
}

parts::Bracket on_channel() {
  return on({.boxed = false, .width = 0.065, .height = 0.180, .wall = 0.0045});
}

/// Twist and rate of twist as cubic elements: a torque of one at the bracket, twist held at both
/// ends, warping held there or free.
double by_elements(bool warping_held) {
  const double h = 0.1755;
  const double b = 0.06275;
  const double t = 0.0045;
  const double gj = 200.0e9 / 2.6 * (2.0 * b + h) * t * t * t / 3.0;
  const double ecw = 200.0e9 * t * h * h * b * b * b / 12.0 * (2.0 * h + 3.0 * b) / (h + 6.0 * b);
  constexpr int kElements = 70;  // of 10 mm
  constexpr int kBracket = 25;
  const double l = (kAhead + kBehind) / kElements;
  Eigen::Matrix4d bending;
  bending << 12, 6 * l, -12, 6 * l, 6 * l, 4 * l * l, -6 * l, 2 * l * l, -12, -6 * l, 12, -6 * l,
      6 * l, 2 * l * l, -6 * l, 4 * l * l;
  Eigen::Matrix4d string;
  string << 36, 3 * l, -36, 3 * l, 3 * l, 4 * l * l, -3 * l, -l * l, -36, -3 * l, 36, -3 * l, 3 * l,
      -l * l, -3 * l, 4 * l * l;
  const Eigen::Matrix4d element = ecw / (l * l * l) * bending + gj / (30.0 * l) * string;
  Eigen::MatrixXd k = Eigen::MatrixXd::Zero(2 * kElements + 2, 2 * kElements + 2);
  for (int e = 0; e < kElements; ++e) k.block<4, 4>(2 * e, 2 * e) += element;
  const auto hold = [&](int freedom) { k(freedom, freedom) += 1.0e15; };
  hold(0);
  hold(2 * kElements);
  if (warping_held) {
    hold(1);
    hold(2 * kElements + 1);
  }
  Eigen::VectorXd torque = Eigen::VectorXd::Zero(2 * kElements + 2);
  torque[2 * kBracket] = 1.0;
  return 1.0 / k.ldlt().solve(torque)[2 * kBracket];
}

}  // namespace

TEST_CASE("a channel rail whose warping is free or held at its cross members", "[parts][rail]") {
  const parts::Bracket b = on_channel();
  CHECK_THAT(parts::open_rail_root(b, false), WithinRel(98.09e3, 1e-3));
  CHECK_THAT(parts::open_rail_root(b, true), WithinRel(408.7e3, 1e-3));
  CHECK_THAT(parts::open_rail_root(b, false), WithinRel(by_elements(false), 1e-4));
  CHECK_THAT(parts::open_rail_root(b, true), WithinRel(by_elements(true), 1e-4));
}

TEST_CASE("at the middle of a long channel rail warping no longer matters", "[parts][rail]") {
  parts::Bracket b = on_channel();
  b.cross_member_ahead = b.cross_member_behind = 60.0;
  const double gj = 200.0e9 / 2.6 * (2.0 * 0.06275 + 0.1755) * std::pow(0.0045, 3) / 3.0;
  CHECK_THAT(parts::open_rail_root(b, false), WithinRel(gj * 2.0 / 60.0, 0.02));
  CHECK_THAT(parts::open_rail_root(b, true), WithinRel(gj * 2.0 / 60.0, 0.05));
}

// G J (1/a + 1/b) = 1687 kN m/rad with the walls' own strips in J; without them 1 % less. 0.8 for
// the cross members: proposal, no source.
TEST_CASE("a boxed rail twists as a closed section", "[parts][rail]") {
  CHECK_THAT(parts::closed_rail_root(on_box()), WithinRel(0.8 * 1687.0e3, 0.012));
  CHECK(parts::closed_rail_root(on_box()) > 10.0 * parts::open_rail_root(on_channel(), false));
}

// 3 E I / L of each, in series with the side of the rail it ends: statics.
TEST_CASE("cross members of a known section bend as the rail twists", "[parts][rail]") {
  parts::Bracket b = on_box();
  b.cross_member = parts_test::tube(0.060, 0.003);
  b.cross_member_length = 0.8;
  const double inertia = 3.14159265358979 / 64.0 * (std::pow(0.060, 4) - std::pow(0.054, 4));
  const double held = 3.0 * 205.0e9 * inertia / 0.8;
  CHECK_THAT(parts::cross_member_stiffness(b), WithinRel(held, 1e-9));
  const double j = 4.0 * std::pow(0.066 * 0.146, 2) * 0.004 / (2.0 * (0.066 + 0.146));
  const double gj = 200.0e9 / 2.6 * j;
  const double expected = 1.0 / (kAhead / gj + 1.0 / held) + 1.0 / (kBehind / gj + 1.0 / held);
  CHECK_THAT(parts::closed_rail_root(b), WithinRel(expected, 1e-9));

  // An open rail: the cross members hold b / L and a / L of the torque.
  parts::Bracket open = on_channel();
  const double rigid = parts::open_rail_root(open, false);
  open.cross_member = b.cross_member;
  open.cross_member_length = 0.8;
  const double ends = (0.25 * 0.25 + 0.45 * 0.45) / (0.7 * 0.7) / held;
  CHECK_THAT(1.0 / parts::open_rail_root(open, false), WithinRel(1.0 / rigid + ends, 1e-9));
}

}  // namespace rail_root_test
