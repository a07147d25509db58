// Bolts that together hold one part. Shigley's example 8-7 is in tests/published; here: statics by
// hand (no source), and properties.
#include "checks/bolt_group.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "checks/caveat.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace bolt_group_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using checks::BoltGroup;
using checks::State;
using checks::Wrench;
using Eigen::Vector3d;

namespace {

/// Two rows of two along x, 100 mm apart in z and 60 mm in y.
BoltGroup rows() {
  return {.at = {{0, 0, 0}, {0, 0.06, 0}, {0, 0.06, 0.1}, {0, 0, 0.1}}, .along = Vector3d::UnitX()};
}

Wrench push(const Vector3d& force, const Vector3d& at) {
  return {.force = force, .moment = Vector3d::Zero(), .at = at};
}

checks::BoltGroupInput input(const Wrench& wrench) {
  const sections::BoltThread thread = {
      .name = "M16 x 2", .inch = false, .diameter = 0.016, .pitch = 0.002, .mark = "from memory"};
  return {
      .group = rows(),
      .wrench = wrench,
      .bolt = {.thread = thread, .grade = *sections::find_bolt_grade("10.9", thread), .planes = 1},
      .required = 2.0};
}

}  // namespace

TEST_CASE("a bracket's push beside its bolts pulls one row of them", "[checks][bolt_group]") {
  // 10 kN, 80 mm off the faces: 0.8 kN m over rows 100 mm apart, two bolts each: 4 kN.
  const auto shares = checks::bolt_shares(rows(), push({0, 0, 1e4}, {0.08, 0.03, 0.05}));
  REQUIRE(shares.size() == 4);
  for (const checks::BoltShare& share : shares) {
    CHECK_THAT(share.tension, WithinRel(4e3, 1e-12));
    CHECK_THAT(share.shear, WithinRel(2.5e3, 1e-12));
  }
}

TEST_CASE("bolts balance the force and the moment, whatever the axes", "[checks][bolt_group]") {
  const Wrench load{.force = {3e3, -5e3, 8e3}, .moment = {400, 150, -90}, .at = {0.02, 0.2, -0.1}};
  const auto plain = checks::bolt_shares(rows(), load);
  const Eigen::Matrix3d turn =
      Eigen::AngleAxisd(0.7, Vector3d(1.0, 2.0, -0.5).normalized()).toRotationMatrix();
  BoltGroup turned = rows();
  for (Vector3d& at : turned.at) at = turn * at + Vector3d(1.0, -2.0, 0.3);
  turned.along = turn * turned.along;
  const auto same = checks::bolt_shares(turned, {.force = turn * load.force,
                                                 .moment = turn * load.moment,
                                                 .at = turn * load.at + Vector3d(1.0, -2.0, 0.3)});
  REQUIRE(same.size() == plain.size());
  double squares = 0.0;
  for (std::size_t i = 0; i < plain.size(); ++i) {
    CHECK_THAT(same[i].shear, WithinRel(plain[i].shear, 1e-9));
    CHECK_THAT(same[i].tension, WithinAbs(plain[i].tension, 1e-6));
    squares += plain[i].shear * plain[i].shear;
  }
  // sum V^2 = F^2 / n + M^2 / sum r^2: no other balanced set of shears is smaller.
  const Vector3d arm = load.at - Vector3d(0.0, 0.03, 0.05);
  const double moment = (load.moment + arm.cross(load.force)).x();
  const double force2 = 25e6 + 64e6;
  CHECK_THAT(squares, WithinRel(force2 / 4.0 + moment * moment / 0.0136, 1e-9));
}

TEST_CASE("bolts on one line hold no moment about it, and any other", "[checks][bolt_group]") {
  checks::BoltGroupInput in = input(push({0, 0, 1e3}, {0.05, 0, 0.02}));
  in.group.at = {{0, 0, 0}, {0, 0.08, 0}};
  CHECK(checks::bolt_shares(in.group, in.wrench).empty());
  const checks::Finding f = checks::bolt_group(in);
  CHECK(f.state == State::undecided);
  CHECK_THAT(f.reason, Catch::Contains("beside that line"));
  // The same push on the line's plane: 1 kN at 0.5 m, bolts 80 mm apart.
  in.wrench = push({0, 0, 1e3}, {0, 0.54, 0});
  const auto shares = checks::bolt_shares(in.group, in.wrench);
  REQUIRE(shares.size() == 2);
  CHECK_THAT(shares[1].shear, WithinRel(500.0 + 500.0 / 0.08, 1e-12));
  CHECK(checks::bolt_group(in).state == State::within);
}

TEST_CASE("the verdict on a group turns at the required factor", "[checks][bolt_group]") {
  // Threads in the one plane: 0.450 x 1040 MPa x 201.1 mm2 = 94.10 kN of each of four.
  const double limit = 4.0 * 94.10e3 / 2.0;
  const Vector3d middle(0.0, 0.03, 0.05);
  CHECK(checks::bolt_group(input(push({0, 0.98 * limit, 0}, middle))).state == State::within);
  CHECK(checks::bolt_group(input(push({0, 1.02 * limit, 0}, middle))).state == State::over);
}

// AISC 360-22 J3.4, from memory: 2-2/3 d, here 42.67 mm.
TEST_CASE("bolts near each other are warned of", "[checks][bolt_group]") {
  const auto warned = [](double apart) {
    checks::BoltGroupInput in = input(push({0, 1e3, 0}, {0, 0, 0}));
    in.group.at = {{0, 0, 0}, {0.1, apart, 0}, {0, 0, 0.2}};
    const checks::Finding f = checks::bolt_group(in);
    return std::any_of(f.notes.begin(), f.notes.end(), checks::is_caveat);
  };
  CHECK(warned(0.0426));
  CHECK_FALSE(warned(0.0428));
}

TEST_CASE("the worked lines of a bolt group can be redone", "[checks][bolt_group]") {
  const checks::Finding f =
      checks::bolt_group(input({{3e3, -5e3, 8e3}, {400, 150, -90}, {0.02, 0.2, -0.1}}));
  // V and T of the group, then of the bolt: Rv, V / Rv, Rt, T / Rt, both
  CHECK(worked::equations_that_hold(f) == 7);
  const auto shown = std::count_if(f.lines.begin(), f.lines.end(), [](const auto& line) {
    return line.symbols.rfind("of bolt ", 0) == 0;
  });
  CHECK(shown == 4);
}

// Class 10.9: Fi = 0.75 x 830 MPa x 156.7 mm2, 0.20 of it holds each bolt's one face (as in the
// check of one bolt).
TEST_CASE("a group slips with the bolt that is pulled and sheared most", "[checks][bolt_group]") {
  const double preload = 0.75 * 830e6 * 156.67e-6;
  const Vector3d middle(0.0, 0.03, 0.05);
  const double limit = 4.0 * 0.20 * preload / 2.0;
  CHECK(checks::bolt_group_slip(input(push({0, 0.98 * limit, 0}, middle))).state == State::within);
  CHECK(checks::bolt_group_slip(input(push({0, 1.02 * limit, 0}, middle))).state == State::over);
  // 80 mm off the faces each is pulled by 4 kN and sheared by 2.5 kN.
  const checks::Finding f = checks::bolt_group_slip(input(push({0, 0, 1e4}, {0.08, 0.03, 0.05})));
  CHECK(f.check == "slip");
  CHECK_THAT(f.demand, WithinRel(2.5e3 / (0.20 * preload) + 4e3 / preload, 1e-3));
  CHECK(worked::equations_that_hold(f) == 5);
  checks::BoltGroupInput line = input({{0, 0, 0}, {0, 100, 0}, middle});
  line.group.at = {{0, 0, 0}, {0, 0.06, 0}};
  CHECK(checks::bolt_group_slip(line).state == State::undecided);
}

TEST_CASE("bolts farther apart never carry more of a moment", "[checks][bolt_group]") {
  double last = 1e9;
  for (const double wide : {0.04, 0.06, 0.08, 0.12}) {
    checks::BoltGroupInput in = input({{0, 2e3, 3e3}, {800, 0, 0}, {0, 0, 0}});
    in.group.at = {{0, -wide, -wide}, {0, wide, -wide}, {0, wide, wide}, {0, -wide, wide}};
    const double now = checks::bolt_group(in).utilization();
    CHECK(now < last);
    last = now;
  }
}

}  // namespace bolt_group_test
