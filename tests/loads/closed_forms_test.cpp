// Closed forms of blows, parking and twist against hand evaluations of the same published or
// textbook formulas, numbers invented and round.
#include <cmath>

#include <catch2/catch.hpp>

#include "loads/parking_moment.hpp"
#include "loads/travel_energy.hpp"
#include "loads/twist_bind.hpp"

namespace closed_forms_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

// F = m g + sqrt((m g)^2 + k m v^2); energy, no published source.
TEST_CASE("straps catch a falling axle", "[loads]") {
  CHECK_THAT(loads::strap_catch_force(280.0, 800e3, 1.5, 0.0), WithinAbs(25.36e3, 5.0));
  CHECK_THAT(loads::strap_catch_force(280.0, 400e3, 1.5, 0.0), WithinAbs(18.86e3, 5.0));
  CHECK_THAT(loads::strap_catch_force(280.0, 800e3, 2.16, 0.0), WithinAbs(35.2e3, 50.0));
  CHECK_THAT(loads::strap_catch_force(280.0, 800e3, 3.94, 0.0), WithinAbs(61.8e3, 50.0));
  // At rest on the strap twice the weight: the drop onto a spring from no height.
  CHECK_THAT(loads::strap_catch_force(280.0, 800e3, 0.0, 0.0),
             WithinRel(2 * 280.0 * 9.80665, 1e-12));
}

TEST_CASE("coils that still push load the straps as more weight would", "[loads]") {
  // Weight 2745.9 N and 5 kN of coils onto a spring from no height: twice the sum.
  CHECK_THAT(loads::strap_catch_force(280.0, 800e3, 0.0, 5.0e3),
             WithinRel(2.0 * (280.0 * 9.80665 + 5.0e3), 1e-12));
}

TEST_CASE("coils and weight push the axle down until the strap is tight", "[loads]") {
  CHECK_THAT(loads::droop_speed(280.0, 13.2e3, 3.0e3, 0.2, 0.0), WithinAbs(3.94, 0.005));
  CHECK_THAT(loads::droop_speed(280.0, 13.2e3, 3.0e3, 0.2, 0.7), WithinAbs(2.16, 0.005));
}

// m v^2 / (2 eta s); energy, eta common practice, no source.
TEST_CASE("a bump stop halts what comes down", "[loads]") {
  CHECK_THAT(loads::stop_force(700.0, 1.0, 0.060, 0.45), WithinAbs(12.96e3, 5.0));
}

// The patch formula with d 25 mm, a 250 mm and 11.77 kN gives 594 N m with mu_e 0.58:
// Automotive Chassis Engineering, p. 82 (read).
TEST_CASE("the parking moment over the patch follows the book's example", "[loads][published]") {
  const loads::Vehicle v{.patch_length = 0.25, .kingpin_offset = 0.025};
  CHECK_THAT(loads::patch_parking_moment(v, 11.77e3).value, WithinRel(594.0, 1e-3));
}

TEST_CASE("the highest parking moment of those that can be formed is taken", "[loads]") {
  loads::Vehicle v{.friction = 0.8,
                   .tire_width = 0.25,
                   .patch_length = 0.25,
                   .tire_pressure = 220e3,
                   .kingpin_offset = 0.06};
  CHECK_THAT(loads::shop_parking_moment(v, 8e3).value, WithinAbs(683.7, 0.05));
  CHECK_THAT(loads::patch_parking_moment(v, 8e3).value, WithinAbs(476.5, 0.05));
  CHECK_THAT(loads::pressure_parking_moment(v, 8e3).value, WithinAbs(406.8, 0.05));
  CHECK_THAT(loads::parking_moment(v, 8e3).value, WithinAbs(683.7, 0.05));
  v.tire_width = base::kUnset;
  CHECK_THAT(loads::parking_moment(v, 8e3).value, WithinAbs(476.5, 0.05));
  v.kingpin_offset = base::kUnset;
  CHECK_THAT(loads::parking_moment(v, 8e3).value, WithinAbs(406.8, 0.05));
  v.tire_pressure = base::kUnset;
  CHECK(std::isnan(loads::parking_moment(v, 8e3).value));
}

// Two stiff arms on bushed bolts against a housing 80 x 8 mm (J 2.374e6 mm^4, G = 79 GPa);
// statics and Saint-Venant torsion, by hand.
TEST_CASE("stiff arms wind the axle up when it crosses", "[loads]") {
  struct Row {
    double rate, moment, couple, travel, pivot;
  };
  for (const Row& row :
       {Row{10e6, 10.88e3, 54.4e3, 5.4e-3, 12.1e3}, Row{5e6, 6.39e3, 32.0e3, 6.4e-3, 7.1e3},
        Row{1.5e6, 2.19e3, 10.9e3, 7.3e-3, 2.4e3}, Row{0.8e6, 1.20e3, 6.0e3, 7.5e-3, 1.3e3}}) {
    INFO(row.rate);
    // Each hand value is good to half of its last digit.
    const loads::TwistBindForces f = loads::twist_bind({.arm_spacing = 0.8,
                                                        .arm_length = 0.9,
                                                        .bolt_spacing = 0.2,
                                                        .bushing_rate = row.rate,
                                                        .axle_torsion = 79e9 * 2.374e-6},
                                                       10.0 * base::kDegree);
    CHECK_THAT(f.moment, WithinAbs(row.moment, 6.0));
    CHECK_THAT(f.bolt_couple, WithinAbs(row.couple, 60.0));
    CHECK_THAT(f.travel, WithinAbs(row.travel, 0.06e-3));
    CHECK_THAT(f.pivot, WithinAbs(row.pivot, 60.0));
  }
}

}  // namespace closed_forms_test
