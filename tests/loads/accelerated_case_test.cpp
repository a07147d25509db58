#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "loads/accelerated.hpp"

namespace accelerated_case_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;
using loads::LoadCase;
using loads::Role;

namespace {

// Invented: a round truck of 30 kN with 16 kN on its front axle.
loads::Vehicle truck() {
  return {.axle_weight = 16e3,
          .track = 1.60,
          .total_weight = 30e3,
          .wheelbase = 2.8,
          .mass_center_height = 0.80,
          .unsprung_weight = 2.8e3};
}

LoadCase with(const std::array<double, 3>& acceleration, const loads::Vehicle& v = truck()) {
  return loads::accelerated(v, "hard pull", "load_cases.hard pull.acceleration", acceleration);
}

std::array<double, 3> at(const LoadCase& c, Role role) {
  for (const loads::Push& push : c.pushes) {
    if (push.role == role) return push.force;
  }
  return {0.0, 0.0, 0.0};
}

}  // namespace

// Front wheel m g / 2 (a2 / L - h / L a / g): Jazar, Vehicle Dynamics, ch. 2 (read).
TEST_CASE("a truck that speeds up takes weight off its front wheels", "[loads][published]") {
  const LoadCase c = with({0.3, 0.0, 0.0});
  const double front = 0.5 * (16e3 - 0.8 / 2.8 * 30e3 * 0.3);
  CHECK_THAT(at(c, Role::left_contact)[2], WithinRel(front, 1e-12));
  CHECK(at(c, Role::right_contact) == at(c, Role::left_contact));
  // Each axle pulls what it has of the weight.
  CHECK_THAT(at(c, Role::left_contact)[0], WithinRel(0.3 * front, 1e-12));
  CHECK_THAT(at(c, Role::axle_center)[0], WithinRel(-0.3 * 2.8e3, 1e-12));
}

TEST_CASE("a stop by acceleration is the stop by friction, and follows a brake share", "[loads]") {
  const LoadCase c = with({-0.9, 0.0, 0.0});
  CHECK_THAT(at(c, Role::left_contact)[2], WithinRel(0.5 * 23714.29, 1e-6));
  CHECK_THAT(at(c, Role::left_contact)[0], WithinRel(-0.5 * 21342.86, 1e-6));
  loads::Vehicle v = truck();
  v.brake_share = 0.7;
  CHECK_THAT(at(with({-0.9, 0.0, 0.0}, v), Role::left_contact)[0],
             WithinRel(-0.5 * 0.7 * 30e3 * 0.9, 1e-12));
}

// Transfer weight x a h / T: Milliken, Race Car Vehicle Dynamics (from memory).
TEST_CASE("pushed to the left, the right wheel is loaded by height over track", "[loads]") {
  const LoadCase c = with({0.0, 0.5, 0.0});
  CHECK_THAT(at(c, Role::right_contact)[2], WithinRel(8e3 + 16e3 * 0.5 * 0.8 / 1.6, 1e-12));
  CHECK_THAT(at(c, Role::left_contact)[2], WithinRel(8e3 - 16e3 * 0.5 * 0.8 / 1.6, 1e-12));
  CHECK_THAT(at(c, Role::right_contact)[1] + at(c, Role::left_contact)[1],
             WithinRel(0.5 * 16e3, 1e-12));
}

TEST_CASE("an acceleration upward adds to gravity", "[loads]") {
  const LoadCase c = with({0.0, 0.0, 2.0});
  CHECK_THAT(at(c, Role::left_contact)[2], WithinRel(3.0 * 8e3, 1e-12));
  CHECK_THAT(at(c, Role::axle_center)[2], WithinRel(-2.0 * 2.8e3, 1e-12));
}

TEST_CASE("a wheel that lifts, or a number that is not given, is an error", "[loads]") {
  CHECK_THROWS_WITH(with({0.0, 1.2, 0.0}),
                    Contains("load_cases.hard pull.acceleration: ") && Contains("wheel lifts"));
  loads::Vehicle v = truck();
  v.mass_center_height = base::kUnset;
  CHECK_THROWS_WITH(with({0.0, 0.5, 0.0}, v),
                    Contains("vehicle.mass_center_height: ") && Contains("hard pull"));
  CHECK_THROWS_WITH(with({0.5, 0.0, 0.0}, v), Contains("vehicle.mass_center_height: "));
  CHECK_NOTHROW(with({0.0, 0.0, 1.0}, v));
}

}  // namespace accelerated_case_test
