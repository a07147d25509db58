#include "loads/axle_formulas.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace axle_formulas_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

// Invented round truck; the transfer is height / wheelbase x weight x deceleration, Gillespie,
// Fundamentals of Vehicle Dynamics, ch. 1 (from memory), by hand.
TEST_CASE("a stop moves weight to the front axle", "[loads]") {
  const loads::Vehicle v{
      .axle_weight = 16e3, .total_weight = 30e3, .wheelbase = 2.8, .mass_center_height = 0.8};
  CHECK_THAT(loads::braking_transfer(v, 0.6), WithinAbs(5143.0, 0.5));
  CHECK_THAT(loads::braking_transfer(v, 0.9), WithinAbs(7714.0, 0.5));
  CHECK_THAT(loads::braking_transfer(v, 1.0), WithinAbs(8571.0, 0.5));
}

// P_H / P_V: Brown, Robertson, Serpento, Motor Vehicle Structures, p. 22 (read), two digits there.
TEST_CASE("the step ratio follows the published table", "[loads][published]") {
  CHECK_THAT(loads::step_ratio(0.10), WithinAbs(0.48, 0.005));
  CHECK_THAT(loads::step_ratio(0.25), WithinAbs(0.88, 0.005));
  CHECK_THAT(loads::step_ratio(0.293), WithinAbs(1.00, 0.005));
  CHECK_THAT(loads::step_ratio(0.50), WithinAbs(1.73, 0.005));
}

// 400 x 3.0 x 2.7 x 4.1 x 0.85 by hand.
TEST_CASE("axle torque is the engine's through every ratio", "[loads]") {
  const loads::Vehicle v{.engine_torque = 400.0,
                         .gear = 3.0,
                         .transfer = 2.7,
                         .final_drive = 4.1,
                         .driveline_efficiency = 0.85};
  CHECK_THAT(loads::axle_torque(v), WithinRel(11291.4, 1e-9));
  CHECK_THAT(loads::axle_torque(v) / v.final_drive, WithinRel(2754.0, 1e-9));
}

TEST_CASE("with a brake share the front tires are at their limit, the rear takes its part",
          "[loads]") {
  loads::Vehicle v{.axle_weight = 16e3,
                   .total_weight = 30e3,
                   .wheelbase = 2.8,
                   .mass_center_height = 0.8,
                   .friction = 0.9};
  CHECK(loads::stop_deceleration(v) == 0.9);
  // The share of the weight at that very stop changes nothing.
  v.brake_share = (16e3 + 0.8 / 2.8 * 30e3 * 0.9) / 30e3;
  CHECK_THAT(loads::stop_deceleration(v), WithinRel(0.9, 1e-12));
  // A harder front brake: a W = share of the brake force at the limit of the front tires.
  v.brake_share = 1.0;
  const double a = loads::stop_deceleration(v);
  CHECK(a < 0.9);
  CHECK_THAT(30e3 * a, WithinRel(0.9 * (16e3 + 0.8 / 2.8 * 30e3 * a), 1e-12));
  // A weak front brake cannot take the tires' limit away.
  v.brake_share = 0.3;
  CHECK(loads::stop_deceleration(v) == 0.9);
}

}  // namespace axle_formulas_test
