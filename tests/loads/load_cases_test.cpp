#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "loads/case_library.hpp"

namespace load_cases_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using loads::LoadCase;
using loads::Push;
using loads::Role;
using loads::Side;

namespace {

// Invented: a round truck of 30 kN with 16 kN on its front axle.
loads::Vehicle round_truck() {
  return {.axle_weight = 16e3,
          .tire_radius = 0.40,
          .track = 1.60,
          .total_weight = 30e3,
          .wheelbase = 2.8,
          .mass_center_height = 0.80,
          .friction = 1.0};
}

std::vector<LoadCase> cases_of(const loads::Vehicle& v, const std::string& name) {
  return loads::built_in_cases(v, {name});
}

/// The force of the one push at a role; zero when there is none.
std::array<double, 3> at(const LoadCase& c, Role role) {
  for (const Push& push : c.pushes) {
    if (push.role == role) return push.force;
  }
  return {0.0, 0.0, 0.0};
}

}  // namespace

// Load transfer height / wheelbase x weight x deceleration: Gillespie, Fundamentals of Vehicle
// Dynamics, ch. 1 (from memory). The numbers are that formula by hand, printed to 1 N.
TEST_CASE("a hard stop moves height / wheelbase x weight x g to the front axle", "[loads]") {
  struct Row {
    double friction, axle, brake;
  };
  for (const Row& row :
       {Row{0.6, 21143.0, 12686.0}, Row{0.9, 23714.0, 21343.0}, Row{1.0, 24571.0, 24571.0}}) {
    loads::Vehicle v = round_truck();
    v.friction = row.friction;
    const LoadCase stop = cases_of(v, "hard_stop").at(0);
    const auto left = at(stop, Role::left_contact);
    const auto right = at(stop, Role::right_contact);
    CHECK_THAT(left[2] + right[2], WithinAbs(row.axle, 0.5));
    CHECK_THAT(left[0] + right[0], WithinAbs(-row.brake, 0.5));
    CHECK(left == right);
    CHECK(stop.severity == loads::Severity::routine);
  }
}

TEST_CASE("turning left, the ground pushes both tires to the left and loads the right one",
          "[loads]") {
  const auto cases = cases_of(round_truck(), "hard_corner");
  REQUIRE(cases.size() == 2);
  const LoadCase& left = cases[0];
  CHECK(left.name == "hard corner, turning left");
  CHECK(left.side == Side::left);
  // 1.8 and 0.2 x 8 kN: proposal, no source.
  CHECK_THAT(at(left, Role::right_contact)[2], WithinAbs(14400.0, 1e-6));
  CHECK_THAT(at(left, Role::left_contact)[2], WithinAbs(1600.0, 1e-6));
  CHECK_THAT(at(left, Role::right_contact)[1], WithinAbs(14400.0, 1e-6));
  CHECK_THAT(at(left, Role::left_contact)[1], WithinAbs(1600.0, 1e-6));
}

TEST_CASE("the right-hand case mirrors the left-hand one", "[loads]") {
  for (const char* name : {"hard_corner", "one_wheel_hits_hard", "slid_into_a_curb"}) {
    const auto cases = cases_of(round_truck(), name);
    REQUIRE(cases.size() == 2);
    for (const auto& [here, there] : {std::pair{Role::left_contact, Role::right_contact},
                                      std::pair{Role::right_contact, Role::left_contact}}) {
      const auto a = at(cases[0], here);
      const auto b = at(cases[1], there);
      CHECK(a[0] == b[0]);
      CHECK(a[1] == -b[1]);
      CHECK(a[2] == b[2]);
    }
  }
}

// Vertical factors: 2 to 3 for an axle on a bump, Ibrahim, Loads on Vehicle Structures (read);
// 4 for off-road vehicles, lecture slides Loads Acting on Frame (read).
TEST_CASE("a bump is 3 times the static load on the road and 4 times off it", "[loads]") {
  loads::Vehicle v = round_truck();
  CHECK_THAT(at(cases_of(v, "both_wheels_hit_hard")[0], Role::left_contact)[2],
             WithinAbs(24e3, 1e-6));
  CHECK_THAT(at(cases_of(v, "one_wheel_hits_hard")[0], Role::left_contact)[2],
             WithinAbs(24e3, 1e-6));
  CHECK_THAT(at(cases_of(v, "one_wheel_hits_hard")[0], Role::right_contact)[2],
             WithinAbs(8e3, 1e-6));
  v.off_road = true;
  CHECK_THAT(at(cases_of(v, "both_wheels_hit_hard")[0], Role::right_contact)[2],
             WithinAbs(32e3, 1e-6));
}

// F = K x weight x (track / 2) / h with K = 1.75 (Garrett): Brown, Robertson, Serpento, Motor
// Vehicle Structures, p. 24 (read). Axle weight 16 kN, so 28 kN before the reduction.
TEST_CASE("a curb pushes back with 1.75 times the axle weight, less for a tall truck", "[loads]") {
  loads::Vehicle v = round_truck();
  v.mass_center_height = base::kUnset;
  const LoadCase unknown = cases_of(v, "slid_into_a_curb").at(0);
  CHECK(unknown.name == "slid into a curb, left wheel");
  CHECK_THAT(at(unknown, Role::left_contact)[1], WithinAbs(-28e3, 1e-6));
  CHECK_THAT(at(unknown, Role::left_contact)[2], WithinAbs(16e3, 1e-6));
  CHECK(unknown.pushes.size() == 1);
  CHECK_THAT(unknown.basis, Contains("Garrett") && Contains("unknown"));
  v.mass_center_height = 1.0;
  CHECK_THAT(at(cases_of(v, "slid_into_a_curb")[0], Role::left_contact)[1],
             WithinAbs(-28e3 * 0.8, 1e-6));
  v.mass_center_height = 0.5;
  CHECK_THAT(at(cases_of(v, "slid_into_a_curb")[0], Role::left_contact)[1], WithinAbs(-28e3, 1e-6));
}

TEST_CASE("a rock drags the middle of the link or of an arm rearward and lifts it", "[loads]") {
  loads::Vehicle v = round_truck();
  v.friction = 0.9;
  const std::vector<LoadCase> rocks = cases_of(v, "dragged_over_a_rock");
  REQUIRE(rocks.size() == 3);
  const auto link = at(rocks[0], Role::link_midspan);
  CHECK_THAT(link[0], WithinAbs(-7200.0, 1e-6));  // 0.9 x 8 kN: proposal, no source
  CHECK(link[1] == 0.0);
  CHECK_THAT(link[2], WithinAbs(8000.0, 1e-6));
  CHECK_THAT(at(rocks[0], Role::left_contact)[2], WithinAbs(8000.0, 1e-6));
  CHECK(at(rocks[1], Role::left_arm_midspan) == link);
  CHECK(at(rocks[2], Role::right_arm_midspan) == link);
  // An arm that the truck slides on off the road: twice as much; common practice, no source.
  v.off_road = true;
  CHECK_THAT(at(cases_of(v, "dragged_over_a_rock")[1], Role::left_arm_midspan)[2],
             WithinAbs(16000.0, 1e-6));
}

// Step factor 4.5 (Garrett) on P_H / P_V = 1 / tan(a), sin(a) = 1 - H/R: Brown, Robertson,
// Serpento, Motor Vehicle Structures, p. 22 (read).
TEST_CASE("a square edge pushes through the hub of a free wheel", "[loads][published]") {
  const LoadCase edge = cases_of(round_truck(), "square_edge_head_on").at(0);
  CHECK_THAT(at(edge, Role::left_hub)[0], WithinAbs(-2.18 * 8000.0, 40.0));
  CHECK_THAT(at(edge, Role::left_hub)[2], WithinAbs(8000.0, 1e-6));
  CHECK(at(edge, Role::left_contact) == std::array<double, 3>{0.0, 0.0, 0.0});
}

TEST_CASE("in a stop and a corner axle and wheels hold back with their own mass", "[loads]") {
  loads::Vehicle v = round_truck();
  CHECK(cases_of(v, "hard_stop")[0].pushes.size() == 2);
  v.unsprung_weight = 2.8e3;
  CHECK_THAT(at(cases_of(v, "hard_stop")[0], Role::axle_center)[0], WithinAbs(2800.0, 1e-9));
  CHECK_THAT(at(cases_of(v, "hard_stop_in_reverse")[0], Role::axle_center)[0],
             WithinAbs(-0.6 * 2800.0, 1e-9));
  CHECK_THAT(at(cases_of(v, "hard_corner")[0], Role::axle_center)[1], WithinAbs(-2800.0, 1e-9));
  // A blow's acceleration is not known: no relief is counted.
  for (const char* name : {"one_wheel_hits_hard", "slid_into_a_curb", "square_edge_head_on"}) {
    CHECK(at(cases_of(v, name)[0], Role::axle_center) == std::array<double, 3>{0.0, 0.0, 0.0});
  }
}

TEST_CASE("there are sixteen kinds, each with class, posture, factors, purpose and marked basis",
          "[loads]") {
  CHECK(loads::case_library().size() == 16);
  for (const loads::CaseInfo& info : loads::case_library()) {
    INFO(info.name);
    CHECK_FALSE(info.factors.empty());
    CHECK_FALSE(info.checks.empty());
    const std::string basis(info.basis);
    const bool marked = basis.find("(read)") != std::string::npos ||
                        basis.find("from memory") != std::string::npos ||
                        basis.find("common practice") != std::string::npos ||
                        basis.find("proposal") != std::string::npos ||
                        basis.find("no source") != std::string::npos ||
                        basis.find("own mark") != std::string::npos;
    CHECK(marked);
  }
}

TEST_CASE("case names build in the order asked, and an unknown one lists the known", "[loads]") {
  const auto two = loads::built_in_cases(round_truck(), {"slid_into_a_curb", "hard_stop"});
  REQUIRE(two.size() == 3);
  CHECK(two.front().id == "slid_into_a_curb_left");
  CHECK(two.back().id == "hard_stop");
  for (const LoadCase& c : two) CHECK_FALSE(c.basis.empty());
  CHECK_THROWS_WITH(loads::built_in_cases(round_truck(), {"hard_turn"}),
                    Contains("load_cases: `hard_turn`") && Contains("hard_corner"));
}

TEST_CASE("a case that lacks a number names it, and the case that needs it", "[loads]") {
  loads::Vehicle v = round_truck();
  v.mass_center_height = base::kUnset;
  CHECK_THROWS_WITH(cases_of(v, "hard_stop"), Contains("vehicle.mass_center_height: ") &&
                                                  Contains("hard stop") && Contains("leave"));
  v = round_truck();
  v.wheelbase = 0.0;
  CHECK_THROWS_WITH(cases_of(v, "hard_stop"), Contains("vehicle.wheelbase: "));
  v = round_truck();
  v.total_weight = base::kUnset;
  CHECK_THROWS_WITH(cases_of(v, "hard_stop"), Contains("vehicle.total_weight: "));
  v.total_weight = 15e3;
  CHECK_THROWS_WITH(cases_of(v, "hard_stop"), Contains("vehicle.total_weight: the whole truck"));
  v = round_truck();
  v.mass_center_height = 2.0;
  CHECK_THROWS_WITH(cases_of(v, "hard_stop"), Contains("lifts the rear axle"));
  v = round_truck();
  v.track = base::kUnset;
  CHECK_THROWS_WITH(cases_of(v, "slid_into_a_curb"), Contains("vehicle.track: "));
  v.axle_weight = base::kUnset;
  CHECK_THROWS_WITH(cases_of(v, "both_wheels_hit_hard"), Contains("vehicle.axle_weight: "));
  CHECK_THROWS_WITH(loads::static_pushes(v), Contains("vehicle.axle_weight: "));
}

TEST_CASE("at rest each wheel carries half of the axle", "[loads]") {
  const auto pushes = loads::static_pushes(round_truck());
  REQUIRE(pushes.size() == 2);
  CHECK(pushes[0].role == Role::left_contact);
  CHECK(pushes[0].force == std::array<double, 3>{0.0, 0.0, 8000.0});
  CHECK(pushes[1].force == pushes[0].force);
}

}  // namespace load_cases_test
