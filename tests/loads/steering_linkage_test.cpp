// Drag link, tie rod, knuckles, axle and lateral link as one loop: statics about the two kingpins,
// seen from above. A steering arm of 0.15 m on each knuckle; the drag link runs straight across to
// the right one, 0.15 m ahead of its kingpin.
#include <cmath>

#include <catch2/catch.hpp>

#include "tests/loads/read_design.hpp"

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using loads_tests::SolvedDesign;

namespace {

constexpr double kArm = 0.15;
constexpr double kOffset = 0.06;  // kingpin to tire center

std::string steered_axle() {
  std::string text = loads_tests::whole_axle(
      "steering:\n"
      "  pitman_ball: pitman ball\n"
      "  knuckle_ball: knuckle ball\n"
      "  tie_rod_ball: tie rod ball\n"
      "  drag_link: 40 x 6 mm E355\n"
      "  tie_rod: 40 x 6 mm E355\n"
      "  static_rating: 200 kN\n");
  const auto put = [&](const std::string& before, const std::string& more) {
    const std::size_t at = text.find(before);
    REQUIRE(at != std::string::npos);
    text.insert(at + before.size(), more);
  };
  put("friction: ", "0.8 #");
  put("unsprung_weight: 2.8 kN\n",
      "  tire_width: 250 mm\n  kingpin_offset: 60 mm\n  gear_torque: 1.2 kN m\n"
      "  pitman_arm: 160 mm\n");
  put("points:\n",
      "  pitman ball: [0.15, 0.44, 0.4 m]\n"
      "  knuckle ball: [0.15, -0.74, 0.4 m]\n"
      "  tie rod ball: [-0.15, 0.74, 0.4 m]\n");
  return text;
}

}  // namespace

// 683.7 N m about each kingpin: 0.8 x 8 kN x sqrt(0.25^2 / 8 + 0.06^2), a form in wide use
// (steering-design literature, from memory). The tie rod carries one wheel's, the drag link both,
// and the lateral link what the drag link pushes: 4.558, 9.116 and 9.116 kN.
TEST_CASE("parked, the lateral link balances the drag link", "[loads][steering][hand]") {
  const SolvedDesign solved(steered_axle());
  const std::string name = "dry park, lock to lock, to the left";
  CHECK_THAT(std::abs(solved.tension(name, "tie_rod")), WithinAbs(4558.0, 0.5));
  CHECK_THAT(std::abs(solved.tension(name, "drag_link")), WithinAbs(9116.0, 1.0));
  CHECK_THAT(std::abs(solved.tension(name, "lateral_link")), WithinAbs(9116.0, 1.0));
  // To the left the knuckles turn counterclockwise: the tie rod behind them is pushed from the
  // right, the drag link ahead of them pulls.
  CHECK(solved.tension(name, "drag_link") > 0.0);
  CHECK_THAT(solved.tension("dry park, lock to lock, to the right", "drag_link"),
             WithinRel(-solved.tension(name, "drag_link"), 1e-6));
}

// 1.2 kN m / 0.16 m at the pitman arm's ball; the wheel on the far knuckle does not turn.
TEST_CASE("against a wedged wheel the tie rod carries all of the gear's push",
          "[loads][steering][hand]") {
  const SolvedDesign solved(steered_axle());
  for (const char* name : {"steering jammed, to the left", "steering jammed, to the right"}) {
    for (const char* part : {"tie_rod", "drag_link", "lateral_link"}) {
      INFO(name << ", " << part);
      CHECK_THAT(std::abs(solved.tension(name, part)), WithinRel(7500.0, 1e-4));
    }
  }
}

// Brake forces turn the knuckles against each other: B x 0.06 / 0.15 in the tie rod, none in the
// drag link.
TEST_CASE("braking loads the tie rod and not the drag link", "[loads][steering][hand]") {
  const SolvedDesign solved(steered_axle());
  double brake = 0.0;
  for (const loads::Push& push : solved.load_case("hard stop").pushes) {
    if (push.role == loads::Role::left_contact) brake -= push.force[0];
  }
  REQUIRE(brake > 5000.0);
  CHECK_THAT(std::abs(solved.tension("hard stop", "tie_rod")),
             WithinRel(brake * kOffset / kArm, 1e-4));
  CHECK_THAT(solved.tension("hard stop", "drag_link"), WithinAbs(0.0, 0.01 * brake));
}

TEST_CASE("the steering arm's length comes from the points unless it is given",
          "[loads][steering]") {
  const std::string text = steered_axle();
  CHECK_THAT(parts::vehicle_of(loads_tests::read_design(text)).steering_arm,
             WithinRel(kArm, 1e-12));
  const auto problems_with = [&](const std::string& line) {
    std::string changed = text;
    changed.insert(changed.find("  kingpin_offset"), line);
    return cases::read(changed, "case.yaml").problems;
  };
  CHECK(problems_with("  steering_arm: 151 mm\n").empty());
  const auto problems = problems_with("  steering_arm: 170 mm\n");
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].where().key == "vehicle.steering_arm");
}
