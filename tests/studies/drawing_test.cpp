#include <cmath>

#include <catch2/catch.hpp>

#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace drawing_test {
namespace {

constexpr const char* kCantilever = R"(title: cantilever
points:
  root: [0, 0, 0 mm]
  tip: [500, 0, 0 mm]
members:
  arm:
    from: root
    to: tip
    section: 40 x 5 mm E355
supports:
  wall:
    at: root
forces:
  load:
    at: tip
    force_z: -500 N
)";

}  // namespace

TEST_CASE("a drawing is made only where it is asked for", "[studies][drawing]") {
  CHECK(!studies::check(studies_tests::read_case(kCantilever)).drawing);
}

// Statics: V = F, M = F L at the root and 0 at the tip. Deflection of a cantilever under a tip
// load, x^2 (3 L - x) / (2 L^3) of the tip's: Beer, Johnston, DeWolf and Mazurek, Mechanics of
// Materials, app. D (from memory); shear adds some 2 % here.
TEST_CASE("a drawn cantilever has the forces of statics and the deflected line of a cubic",
          "[studies][drawing]") {
  const studies::Answer answer = studies::check_and_draw(studies_tests::read_case(kCantilever));
  REQUIRE(answer.drawing);
  const studies::Drawing& drawing = *answer.drawing;
  REQUIRE(drawing.pieces.size() == 1);
  REQUIRE(drawing.cases.size() == 1);
  const studies::DrawnPiece& arm = drawing.pieces.front();
  const studies::DrawnCase& load = drawing.cases.front();
  CHECK(arm.along.back() == Approx(0.5));
  const auto& forces = load.forces.front();
  REQUIRE(forces.size() == arm.line.size());
  CHECK(std::abs(forces.front().my) == Approx(250.0).epsilon(1e-3));
  CHECK(std::abs(forces.back().my) == Approx(0.0).margin(0.1));
  CHECK(std::abs(forces.front().vz) == Approx(500.0).epsilon(1e-3));
  const auto& moved = load.moved.front();
  const double tip = moved.back()[2];
  CHECK(tip < 0.0);
  const std::size_t middle = moved.size() / 2;
  REQUIRE(arm.along[middle] == Approx(0.25));
  CHECK(moved[middle][2] / tip == Approx(5.0 / 16.0).epsilon(0.02));
  REQUIRE(load.loads.size() == 2);
  CHECK(load.loads.front().force[2] == Approx(-500.0));
  CHECK(load.loads.back().holds);
  CHECK(load.loads.back().force[2] == Approx(500.0));
}

TEST_CASE("in the load case of its finding a part has the finding's utilization",
          "[studies][drawing]") {
  const studies::Answer answer = studies::check_and_draw(studies_tests::read_case(kCantilever));
  REQUIRE(answer.drawing);
  REQUIRE(answer.drawing->utilization.size() == 1);
  const studies::PartInCase& one = answer.drawing->utilization.front();
  CHECK(one.found);
  CHECK(one.utilization == answer.findings.front().utilization());
}

}  // namespace drawing_test
