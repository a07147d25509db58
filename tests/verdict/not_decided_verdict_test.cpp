// An axle on radius arms that rises evenly when both wheels hit hard. Two wheel loads more than at
// rest lift it against its two coils: it rises by axle weight / rate of one coil (bump factor 3,
// upper end of 2 to 3 for an axle on a bump, Ibrahim, Loads on Vehicle Structures, read).
#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace not_decided_verdict_test {
using Catch::Matchers::Contains;
using studies::Verdict;
using verdict_tests::finding;
using verdict_tests::judged;

namespace {

constexpr double kAxleWeight = 12.0e3;  // [N]
constexpr double kLink = 0.900;         // level, bolt to bolt  [m]

/// Arms turn on pins and the link on ball joints, so that nothing but the coils resists the rise.
std::string bump(double rise, const std::string& stops) {
  return fmt::format(
      "title: bump\n"
      "vehicle:\n"
      "  axle_weight: {} N\n"
      "  tire: 800 mm\n"
      "  hub_height: 400 mm\n"
      "  track: 1.6 m\n"
      "points:\n"
      "  link at frame: [0, 450, 400 mm]\n"
      "  link at axle: [0, -450, 400 mm]\n"
      "  arm lower bolt: [-100, 400, 400 mm]\n"
      "  arm upper bolt: [0, 400, 550 mm]\n"
      "  arm at frame: [-1300, 400, 400 mm]\n"
      "lateral_link:\n"
      "  frame_bolt: link at frame\n"
      "  axle_bolt: link at axle\n"
      "  tube: 50 x 10 mm S355H\n"
      "  ends: weld-on ball joint\n"
      "  static_rating: 500 kN\n"
      "bracket:\n"
      "  drop: 200 mm\n"
      "  plates: 2 of 12 mm S355\n"
      "  depth_at_rail: 100 mm\n"
      "  weld: 6 mm fillet, both sides of each plate\n"
      "  rail: boxed, 100 x 150 x 16 mm\n"
      "  side_force: 0 %\n"
      "  welded_to: bottom\n"
      "  rail_stiffness: 200 kN m/rad\n"
      "arm:\n"
      "  axle_lower: arm lower bolt\n"
      "  axle_upper: arm upper bolt\n"
      "  frame: arm at frame\n"
      "  joins_at: 400 mm\n"
      "  lower: 60 x 8 mm S355H\n"
      "  upper: 40 x 6 mm S355H\n"
      "  axle_joint: pin along y\n"
      "  frame_joint: pin along y\n"
      "axle:\n"
      "  coil_spacing: 900 mm\n"
      "  coil_rate: {} N/m\n{}"
      "load_cases: [both wheels hit hard]\n",
      kAxleWeight, kAxleWeight / rise, stops);
}

std::array<double, 6> at(const studies::SolvedCase& solved, const std::string& point) {
  for (const studies::AtPoint& p : solved.displacements) {
    if (p.point == point) return p.value;
  }
  FAIL("no point " << point);
  return {};
}

/// Axial force at the far end of a part's first piece.
double pull(const studies::SolvedCase& solved, const std::string& part) {
  for (const studies::PieceEnds& piece : solved.pieces) {
    if (piece.part == part) return piece.ends[6];
  }
  FAIL("no part " << part);
  return 0.0;
}

const char* const kFarStops =
    "  bump_travel: 120 mm\n"
    "  stop_rate: 1000 N/mm\n";

}  // namespace

TEST_CASE("a link that turns more than 3 degrees is followed on its arc", "[verdict][large]") {
  const auto judged_at = [](double degrees) {
    return judged(bump(kLink * std::tan(degrees * hand::kPi / 180.0), kFarStops));
  };
  const auto followed = [](const studies::Answer& answer) {
    const std::vector<std::string> notes = finding(answer, "lateral_link", "yield").notes;
    return std::any_of(notes.begin(), notes.end(), [](const std::string& note) {
      return note.find("large displacements") != std::string::npos;
    });
  };
  CHECK_FALSE(followed(judged_at(2.94)));
  for (const double degrees : {3.06, 6.0}) {
    const studies::Answer far = judged_at(degrees);
    CHECK(far.verdict == Verdict::within);
    CHECK(followed(far));
    // The bolts stay as far apart as the link is long, its stretch aside: the axle is drawn over.
    const studies::SolvedCase& solved = far.solved.front();
    CHECK(solved.method == "large displacement");
    const std::array<double, 6> frame = at(solved, "frame bolt");
    const std::array<double, 6> axle = at(solved, "axle");
    CHECK(axle[2] == Approx(kLink * std::tan(degrees * hand::kPi / 180.0)).epsilon(0.05));
    // The axle's bolt, on the far side of the housing, which turns about all three axes.
    const Eigen::Vector3d turn(axle[3], axle[4], axle[5]);
    const Eigen::Vector3d arm(0.0, -0.450, 0.0);
    const Eigen::Vector3d moved_arm =
        Eigen::AngleAxisd(turn.norm(), turn.normalized()).toRotationMatrix() * arm;
    const Eigen::Vector3d axle_bolt = Eigen::Vector3d(axle[0], axle[1], axle[2]) + moved_arm;
    const Eigen::Vector3d frame_bolt = Eigen::Vector3d(frame[0], 0.450 + frame[1], frame[2]);
    const double force = std::abs(pull(solved, "lateral_link"));
    const double area = hand::kPi / 4.0 * (0.050 * 0.050 - 0.030 * 0.030);
    CHECK((axle_bolt - frame_bolt).norm() ==
          Approx(kLink * (1.0 + force / (210.0e9 * area))).epsilon(1e-6));
    // Small rotations know nothing of that force.
    CHECK(force > 100.0);
  }
}

TEST_CASE("a bracket that leans far is judged where it leans, by no less than its statics",
          "[verdict][large]") {
  // Root spring k against a side force F on a rigid arm h: k a = F h cos(a), a of 23 degrees.
  const double rate = 15.0e3;
  const double force = 26.25e3;
  const double drop = 0.250;
  double lean = 0.0;
  for (int i = 0; i < 200; ++i) lean = force * drop * std::cos(lean) / rate;
  const double throat = 4.0 * 0.006 / std::sqrt(2.0);
  const double stress = std::hypot(force / (throat * 0.100),
                                   rate * lean * 0.050 / (throat * std::pow(0.100, 3) / 12.0));
  const studies::Answer answer =
      judged(fmt::format("title: soft rail\n"
                         "lateral_link:\n"
                         "  bolt_to_bolt: 900 mm\n"
                         "  rise: 0 mm\n"
                         "  tube: 50 x 10 mm S355H\n"
                         "  ends: weld-on pin\n"
                         "bracket:\n"
                         "  drop: 250 mm\n"
                         "  plates: 2 of 12 mm S355\n"
                         "  depth_at_rail: 100 mm\n"
                         "  weld: 6 mm fillet, both sides of each plate\n"
                         "  rail: boxed, 100 x 150 x 16 mm\n"
                         "  side_force: 0 %\n"
                         "  welded_to: bottom\n"
                         "  rail_stiffness: 15 kN m/rad\n"
                         "forces:\n"
                         "  push:\n"
                         "    at: axle bolt\n"
                         "    force_y: {} N\n",
                         force));
  const checks::Finding weld = finding(answer, "bracket", "weld");
  REQUIRE(weld.state != checks::State::undecided);
  CHECK(weld.demand > 0.99 * stress);
  const std::array<double, 6> bolt = at(answer.solved.front(), "frame bolt");
  CHECK(bolt[1] == Approx(drop * std::sin(lean)).epsilon(0.02));
  // The plates bend a little, too.
  CHECK(bolt[2] == Approx(drop * (1.0 - std::cos(lean))).epsilon(0.04));
}

TEST_CASE("travel that a bump stop might end is not decided until the stop is given", "[verdict]") {
  // Up to 25 mm a stop that is not given counts as open (proposal, no source).
  const studies::Answer unknown = judged(bump(1.02 * 0.025, ""));
  CHECK(unknown.verdict == Verdict::not_decided);
  CHECK_THAT(finding(unknown, "arm, left", "yield").reason, Contains("axle.bump_travel"));
  CHECK(judged(bump(0.98 * 0.025, "")).verdict == Verdict::within);
  CHECK(judged(bump(1.02 * 0.025, kFarStops)).verdict == Verdict::within);
}

TEST_CASE("a bump stop that closes takes its part of the load", "[verdict]") {
  // Beyond 20 mm of travel the stop's rate adds to the coil's: from k z = W to
  // k z + r (z - travel) = W, per side. Without the stop it would rise 40 mm.
  const double rate = kAxleWeight / 0.040;
  const double stop = 1000.0e3;
  const double rise = (kAxleWeight + stop * 0.020) / (rate + stop);
  const studies::Answer answer =
      judged(bump(0.040, "  bump_travel: 20 mm\n  stop_rate: 1000 N/mm\n"));
  CHECK(answer.verdict == Verdict::within);
  for (const studies::AtPoint& at : answer.solved.front().displacements) {
    if (at.point == "axle") CHECK(at.value[2] == Approx(rise).epsilon(1e-6));
  }
}

}  // namespace not_decided_verdict_test
