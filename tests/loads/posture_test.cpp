// Where the axle stands in a load case: straps and stops, held heave and roll, the turning of
// joints. Checked by statics and geometry worked out here; the numbers are invented.
#include "studies/posture.hpp"

#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "fea/rotation.hpp"
#include "studies/check.hpp"
#include "tests/loads/read_design.hpp"

namespace posture_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using loads_tests::SolvedDesign;

namespace {

const std::string kStraps = "limit_strap: {slack: 120 mm, rate: 400 N/mm, breaking_load: 90 kN}\n";

std::string with_cases(const std::string& cases, const std::string& more = kStraps) {
  return loads_tests::whole_axle(more + "load_cases: [hard corner, " + cases + "]\n");
}

/// A load case of a design, solved with large displacements, with where its axle is.
struct Placed {
  studies::CaseSolution solved;
  studies::AxlePlace place;
};

Placed placed(const SolvedDesign& design, const std::string& name,
              const studies::NearSolution& near = {}) {
  const parts::DesignCase load_case = design.load_case(name);
  Placed out{design.model.solve_moved(load_case, 1.0, near), {}};
  INFO(out.solved.solution.words());
  REQUIRE(out.solved.solution.status() == fea::SolveStatus::converged);
  out.place = *studies::axle_place(design.model, load_case, out.solved);
  return out;
}

double carried_by(const studies::AxlePlace& place, const std::string& name) {
  for (const studies::StopForce& stop : place.stops) {
    if (stop.name == name) return stop.force;
  }
  FAIL("no " << name);
  return 0.0;
}

studies::JointAngles joint(const studies::AxlePlace& place, const std::string& part,
                           const std::string& where) {
  for (const studies::JointAngles& j : place.joints) {
    if (j.part == part && j.where == where) return j;
  }
  FAIL("no joint " << part << ", " << where);
  return {};
}

}  // namespace

TEST_CASE("a strap of the frame that never tightens changes nothing", "[loads][posture]") {
  const std::string cases = "load_cases: [hard corner, one wheel hits hard]\n";
  const SolvedDesign plain(loads_tests::whole_axle(cases));
  const SolvedDesign strapped(
      loads_tests::whole_axle("limit_strap: {slack: 0.9 m, rate: 400 N/mm}\n" + cases));
  for (const parts::DesignCase& c : parts::design_cases(plain.design)) {
    for (const bool moved : {false, true}) {
      const auto solve = [&](const SolvedDesign& d) {
        const studies::CaseSolution s =
            moved ? d.model.solve_moved(c, 1.0, {}) : d.model.solve(c, 1.0);
        REQUIRE(s.solution.status() == fea::SolveStatus::converged);
        return s.solution.placement(*d.model.assembly().axle);
      };
      CHECK((solve(plain) - solve(strapped)).norm() == 0.0);
    }
  }
}

// Coils of 40 N/mm carry 6.6 kN each at ride height and 1.8 kN where straps of 400 N/mm come tight,
// 120 mm lower; 2.8 kN of axle hangs on both.
TEST_CASE("an axle that hangs is held by its straps against weight and coils", "[loads][posture]") {
  const SolvedDesign design(with_cases("{name: hanging, posture: droop}"));
  const Placed hanging = placed(design, "hanging");
  const double stretch = (1.4e3 + 1.8e3) / (400.0e3 + 40.0e3);
  CHECK_THAT(hanging.place.moved[2], WithinRel(-0.120 - stretch, 1e-4));
  CHECK_THAT(carried_by(hanging.place, "left limit strap"), WithinRel(400.0e3 * stretch, 1e-3));
  CHECK_THAT(carried_by(hanging.place, "right limit strap"), WithinRel(400.0e3 * stretch, 1e-3));
  CHECK(carried_by(hanging.place, "left bump stop") == 0.0);
  CHECK(hanging.place.ground_force == 0.0);
  // Second order closes the same straps.
  const studies::CaseSolution near_ride = design.solve("hanging");
  CHECK_THAT(studies::force_of(design.model.assembly().stops[2], near_ride.solution),
             WithinRel(400.0e3 * stretch, 5e-3));
}

// The coils carry nothing 165 mm below ride height, and do not pull from there on.
TEST_CASE("a coil that has left its seat does not hold the axle up", "[loads][posture]") {
  const SolvedDesign design(
      with_cases("{name: hanging, posture: droop}",
                 "limit_strap: {slack: 200 mm, rate: 400 N/mm, breaking_load: 90 kN}\n"));
  const Placed hanging = placed(design, "hanging");
  CHECK_THAT(carried_by(hanging.place, "left limit strap"), WithinRel(1.4e3, 1e-3));
  CHECK_THAT(hanging.place.moved[2], WithinRel(-0.200 - 1.4e3 / 400.0e3, 1e-4));
}

TEST_CASE("bump, then droop, then ride height leads back to the start", "[loads][posture]") {
  const SolvedDesign design(
      with_cases("{name: hanging, posture: droop}, {name: up, posture: bump},"
                 "{name: rest, left_wheel: [0, 0, 8 kN], "
                 "right_wheel: [0, 0, 8 kN]}"));
  const Placed up = placed(design, "up");
  CHECK_THAT(up.place.moved[2], WithinAbs(0.020, 1e-4));
  CHECK(up.place.ground_force > 0.0);
  const Placed down = placed(design, "hanging", {&up.solved, 1.0});
  CHECK(down.place.moved[2] < -0.1);
  const Placed rest = placed(design, "rest", {&down.solved, 1.0});
  for (const double moved : rest.place.moved) CHECK_THAT(moved, WithinAbs(0.0, 1e-7));
}

TEST_CASE("a heave and a roll that are asked for are reached, and mirror", "[loads][posture]") {
  const SolvedDesign design(
      with_cases("{name: held, heave: -60 mm, roll: 6 deg, both_sides: yes}"));
  const Placed held = placed(design, "held");
  const Placed other = placed(design, "held, mirrored");
  CHECK_THAT(held.place.moved[2], WithinAbs(-0.060, 1e-4));
  CHECK_THAT(held.place.moved[3], WithinAbs(6.0 * base::kDegree, 1e-4));
  CHECK_THAT(other.place.moved[3], WithinAbs(-6.0 * base::kDegree, 1e-4));
  const double moment = held.place.ground_moment;
  // Two coils of 40 N/mm 0.9 m apart resist the roll, and the arms with their own.
  CHECK(moment > 0.95 * 6.0 * base::kDegree * 2.0 * 40.0e3 * 0.45 * 0.45);
  const studies::Balance b =
      studies::balance_of(design.model, design.load_case("held"), held.solved);
  CHECK(b.open < 1e-6);
}

namespace {

/// From the axle's bolt of the link to the frame's, with the axle where it is: rigid geometry.
fea::Vector3 link_at(const studies::AxlePlace& place) {
  const fea::Vector3 middle(0.0, 0.0, 0.4);
  const fea::Vector3 bolt(0.1, -0.45, 0.4);
  const fea::Vector3 frame(0.1, 0.45, 0.4);
  const fea::Vector3 moved(place.moved[0], place.moved[1], place.moved[2]);
  const fea::Matrix3 turn = fea::rotation_of({place.moved[3], place.moved[4], place.moved[5]});
  return (frame - middle - moved - turn * (bolt - middle)).normalized();
}

}  // namespace

TEST_CASE("bushings of the link twist as it swings", "[loads][posture]") {
  std::string text = with_cases("{name: held, heave: 80 mm, roll: 0 deg}");
  text.replace(text.find("weld-on ball joint"), 18, "weld-on bushing");
  const SolvedDesign design(text);
  const Placed held = placed(design, "held");
  const fea::Vector3 link = link_at(held.place);
  const double swing = std::atan2(-link.z(), link.y());
  CHECK(swing > 0.08);
  const studies::JointAngles frame = joint(held.place, "lateral_link", "frame bolt");
  CHECK_FALSE(frame.ball);
  CHECK_THAT(frame.twist, WithinRel(swing, 0.01));
}

TEST_CASE("a ball joint's tilt is out of the plane square to its bolt", "[loads][posture]") {
  const SolvedDesign design(with_cases("{name: held, heave: -80 mm, roll: 5 deg}"));
  const Placed held = placed(design, "held");
  const fea::Vector3 link = link_at(held.place);
  const fea::Matrix3 turn =
      fea::rotation_of({held.place.moved[3], held.place.moved[4], held.place.moved[5]});
  const studies::JointAngles axle = joint(held.place, "lateral_link", "axle bolt");
  CHECK(axle.ball);
  CHECK(std::isnan(axle.twist));
  CHECK_THAT(axle.tilt, WithinAbs(std::abs(std::asin(turn.col(0).dot(link))), 1e-4));
  CHECK_THAT(joint(held.place, "lateral_link", "frame bolt").tilt,
             WithinAbs(std::abs(std::asin(link.x())), 1e-4));
}

TEST_CASE("an axle that nothing catches is refused in words", "[loads][posture]") {
  const std::string text = loads_tests::whole_axle(
      "load_cases: [hard corner, {name: off the ground, left_wheel: [0, 0, 0.1 kN], "
      "right_wheel: [0, 0, 0.1 kN]}]\n");
  const studies::Answer answer = studies::check(loads_tests::read_design(text));
  CHECK(answer.verdict != studies::Verdict::within);
  bool said = false;
  for (const checks::Finding& f : answer.findings) {
    if (f.state != checks::State::undecided || f.load_case != "off the ground") continue;
    CHECK_THAT(f.reason,
               Contains("no equilibrium without straps") && Contains("limit_strap.slack"));
    said = true;
  }
  CHECK(said);
}

TEST_CASE("a posture without what it stands on is refused at its place", "[loads][posture]") {
  const auto problem = [](const std::string& item, const std::string& more) {
    const cases::Reading reading =
        cases::read(loads_tests::whole_axle(more + "load_cases: [" + item + "]\n"), "case.yaml");
    REQUIRE_FALSE(reading.design.has_value());
    return std::string(reading.problems.front().what());
  };
  CHECK_THAT(problem("{name: low, posture: droop}", ""),
             Contains("load_cases.low.posture: droop needs limit_strap.slack"));
  CHECK_THAT(problem("{name: low, posture: crossed}", ""),
             Contains("load_cases.low.posture: crossed needs vehicle.articulation"));
  CHECK_THAT(problem("{name: low, posture: droop, heave: 2 in}", kStraps),
             Contains("load_cases.low.heave: stops or straps end the travel"));
  CHECK_THAT(problem("{name: low, roll: 60 deg}", ""),
             Contains("load_cases.low.roll: an axle does not roll that far"));
}

namespace {

/// Two rigid radius arms 0.8 m apart and 0.9 m long, each on two bushings 0.2 m apart on one level;
/// an axle of 80 x 8 mm tube.
std::string twisting(double rate) {
  return loads_tests::kVehicle +
         fmt::format(
             "  articulation: 10 deg\n"
             "joints:\n"
             "  mount: {{along_x: {0} kN/mm, along_y: {0} kN/mm, along_z: {0} kN/mm,\n"
             "    about_x: 0 N m/rad, about_y: 0 N m/rad, about_z: 0 N m/rad}}\n"
             "points:\n"
             "  link at frame: [0.1, 0.45, 0.4 m]\n"
             "  link at axle: [0.1, -0.45, 0.4 m]\n"
             "  front bolt: [0.1, 0.4, 0.4 m]\n"
             "  rear bolt: [-0.1, 0.4, 0.4 m]\n"
             "  pivot: [-0.9, 0.4, 0.4 m]\n"
             "lateral_link: {{frame_bolt: link at frame, axle_bolt: link at axle,\n"
             "  tube: 60 x 10 mm E355, ends: weld-on ball joint}}\n"
             "arm: {{axle_lower: front bolt, axle_upper: rear bolt, frame: pivot,\n"
             "  lower: 200 x 15 mm S355H, axle_joint: mount, frame_joint: ball joint}}\n"
             "axle: {{coil_spacing: 0.9 m, coil_rate: 40 N/mm, housing: 80 x 8 mm S355H}}\n"
             "load_cases: [full cross-up]\n",
             rate);
}

/// What the arm's two bolts carry against each other, upright.  [N]
double bolt_couple(const SolvedDesign& design, const fea::Solution& solution) {
  double up = 0.0;
  double sign = 1.0;
  const std::vector<fea::Spring>& springs = design.model.assembly().model.springs;
  for (std::size_t i = 0; i < springs.size(); ++i) {
    if (springs[i].name.rfind("arm, left ", 0) != 0) continue;
    up += 0.5 * sign * solution.spring_force({static_cast<int>(i)})[2];
    sign = -1.0;
  }
  return std::abs(up);
}

}  // namespace

// M = phi (b / La) / (2 / k_th + b / (G J)), k_th = k d^2 / 2, couple M / d: statics, no source.
// E = 205 GPa there and 210 here, which is 1 % of the axle's share.
TEST_CASE("a crossed axle winds up stiff arms on two bolts each", "[loads][posture][hand]") {
  const auto [rate, couple] = GENERATE(std::pair(10.0, 54.4), std::pair(5.0, 32.0),
                                       std::pair(1.5, 10.9), std::pair(0.8, 6.0));
  INFO(rate << " kN/mm");
  const SolvedDesign design(twisting(rate));
  const Placed crossed = placed(design, "full cross-up, left wheel up");
  CHECK_THAT(crossed.place.moved[3], WithinAbs(10.0 * base::kDegree, 1e-4));
  CHECK_THAT(bolt_couple(design, crossed.solved.solution), WithinRel(couple * 1000.0, 0.05));
}

// The axle rolls on the line of the two bolts: the tube, which rises toward the frame, comes out of
// the plane square to them.
TEST_CASE("a ball joint beside another tilts by where its arm points", "[loads][posture]") {
  std::string text = twisting(10.0);
  const auto put = [&](const std::string& piece, const std::string& instead) {
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), instead);
  };
  put("pivot: [-0.9, 0.4, 0.4 m]", "pivot: [-0.9, 0.4, 0.6 m]");
  put("axle_joint: mount", "axle_joint: ball joint");
  put("[full cross-up]", "[hard corner, {name: rolled, heave: 0 mm, roll: 2 deg}]");
  const SolvedDesign design(text);
  const Placed rolled = placed(design, "rolled");
  const fea::Solution& solution = rolled.solved.solution;
  for (const parts::TurningJoint& watched : design.model.assembly().joints) {
    if (watched.part != "arm, left" || watched.where != "lower bolt") continue;
    const fea::Spring& bolt = design.model.assembly().model[*watched.spring];
    const auto turn = [&](fea::NodeId node) {
      return fea::rotation_of(solution.placement(node).tail<3>());
    };
    const fea::Vector3 bar = fea::Vector3(-0.9, 0.0, 0.2).normalized();
    const fea::Vector3 now = turn(bolt.a).transpose() * (turn(*bolt.b) * bar);
    const double tilt = joint(rolled.place, "arm, left", "lower bolt").tilt;
    CHECK_THAT(tilt, WithinAbs(std::abs(std::asin(now.y())), 1e-6));
    CHECK(tilt > 1e-4);
    return;
  }
  FAIL("no such joint");
}

}  // namespace posture_test
