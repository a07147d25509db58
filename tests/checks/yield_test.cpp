#include "checks/yield.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace yield_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

checks::YieldInput input(const sections::Shape& shape, const sections::Resultants& r) {
  checks::YieldInput in;
  in.shape = shape;
  in.resultants = r;
  in.worst = sections::worst_point(shape, r);
  in.strength = 350e6;
  in.strength_basis = "specified minimum";
  in.safety_factor = in.strength / in.worst.von_mises;
  in.required = 1.5;
  return in;
}

const sections::Shape kTube = sections::RoundTube{.outside = 0.050, .wall = 0.005};

}  // namespace

// Computed by hand from the published formulas (Shigley, 9th ed., ch. 3 and eq. 5-15), 4 figures:
// tube 50 x 5, N 20 kN, My 0.6, Mz 0.8 and T 0.5 kN m.
TEST_CASE("the stress of a tube in tension, bending and torsion is the hand calculation's",
          "[checks][yield]") {
  const checks::Finding f =
      checks::yield(input(kTube, {.n = 20e3, .t = 500, .my = 600, .mz = 800}));
  CHECK_THAT(f.demand, WithinRel(176.7e6, 5e-4));
  CHECK_THAT(f.safety_factor, WithinRel(350.0 / 176.7, 5e-4));
  CHECK(f.state == State::within);
  // N/A, M/S, T/(2S), sigma, von Mises and the factor
  CHECK(worked::equations_that_hold(f, 1e-6) == 8);
  CHECK_THAT(f.lines.at(2).values.back().si, WithinRel(34.51e6, 5e-4));
}

// By hand: 1.5 times the frame's My of 400 and Mz of 0 N m.
TEST_CASE("what a bend makes of the frame's moments can be followed", "[checks][yield]") {
  checks::YieldInput in = input(kTube, {.n = 20e3, .my = 600});
  in.at_bend = 1.5;
  const checks::Finding f = checks::yield(in);
  CHECK_THAT(f.lines.at(1).values.front().si, WithinRel(400.0, 1e-12));
  CHECK_THAT(f.lines.at(1).values.back().si, WithinRel(600.0, 1e-12));
  CHECK_THAT(f.lines.at(2).values.back().si, WithinRel(0.0, 1e-12));
  CHECK(worked::equations_that_hold(f, 1e-6) == 10);  // those of a straight bar and two
}

TEST_CASE("the yield verdict turns at the required factor", "[checks][yield]") {
  const double limit_stress = 350e6 / 1.5;
  const double modulus = base::kPi / 32.0 * (std::pow(0.050, 4) - std::pow(0.040, 4)) / 0.050;
  const auto state = [&](double share) {
    return checks::yield(input(kTube, {.my = share * limit_stress * modulus})).state;
  };
  CHECK(state(0.98) == State::within);
  CHECK(state(1.02) == State::over);
}

TEST_CASE("the worked lines can be redone for every shape", "[checks][yield]") {
  const sections::Resultants r{.n = -8e3, .vy = 1e3, .vz = 2e3, .t = 40, .my = 300, .mz = 100};
  const std::vector<sections::Shape> shapes = {
      kTube,
      sections::RoundBar{.diameter = 0.040},
      sections::FlatBar{.depth = 0.080, .width = 0.012},
      sections::RectangularTube{.depth = 0.060, .width = 0.040, .wall = 0.003, .corner = 0.006},
      sections::TwinPlate{.depth = 0.080, .thickness = 0.008, .gap = 0.050},
  };
  for (const sections::Shape& shape : shapes) {
    const checks::Finding f = checks::yield(input(shape, r));
    CAPTURE(shape.index());
    CHECK(worked::equations_that_hold(f, 1e-6) >= 4);
    CHECK(f.lines.size() == 9);
  }
}

TEST_CASE("a bar in shear alone is not said to bend", "[checks][yield]") {
  const checks::Finding f = checks::yield(input(kTube, {.vz = 10e3, .my = 5.0}));
  CHECK(worked::equations_that_hold(f, 1e-6) >= 3);
}

TEST_CASE("a multiple found by solving again decides, and the stress there is shown",
          "[checks][yield]") {
  checks::YieldInput in = input(kTube, {.n = -20e3, .my = 800});
  const double quotient = in.safety_factor;
  in.safety_factor = 0.9 * quotient;
  const double grown = (in.strength - 0.9 * quotient * 20e3 / (base::kPi * 0.045 * 0.005)) /
                       (in.worst.von_mises - 20e3 / (base::kPi * 0.045 * 0.005));
  in.at_limit = sections::Resultants{.n = -20e3 * in.safety_factor, .my = 800 * grown};
  const checks::Finding f = checks::yield(in);
  CHECK(f.safety_factor == 0.9 * quotient);
  const checks::WorkedLine& last = f.lines.back();
  CHECK_THAT(last.numbers, Catch::Contains("times the load"));
  CHECK_THAT(last.values.at(5).si, WithinRel(in.strength, 1e-6));
}

TEST_CASE("a torque on a section without torsion modulus leaves yield undecided",
          "[checks][yield]") {
  const sections::ByNumbers numbers{.area = 7e-4,
                                    .iyy = 1.8e-7,
                                    .izz = 1.8e-7,
                                    .torsion = 3.6e-7,
                                    .modulus_y = 7.2e-6,
                                    .modulus_z = 7.2e-6};
  checks::YieldInput in = input(numbers, {.t = 100, .my = 300});
  const checks::Finding f = checks::yield(in);
  CHECK(f.state == State::undecided);
  CHECK_THAT(f.reason, Catch::Contains("torsion modulus"));
  CHECK(std::isnan(f.utilization()));
}

TEST_CASE("a load multiple that was not found leaves yield undecided", "[checks][yield]") {
  checks::YieldInput in = input(kTube, {.my = 300});
  in.safety_factor = base::kUnset;
  CHECK(checks::yield(in).state == State::undecided);
}

TEST_CASE("the strength that does not decide stands beside the one that does", "[checks][yield]") {
  checks::YieldInput in = input(kTube, {.n = 20e3, .my = 600});
  in.other = checks::OtherStrength{.weld_zones = {{0.0, 0.04}, {0.86, 0.9}},
                                   .zone_decides = false,
                                   .strength = 240e6,
                                   .von_mises = 80e6,
                                   .basis = "invented"};
  const checks::Finding parent = checks::yield(in);
  CHECK(parent.capacity == in.strength);
  CHECK_THAT(parent.lines.at(parent.lines.size() - 2).symbols, Catch::Contains("weld zones"));
  CHECK(parent.lines.at(parent.lines.size() - 2).numbers == "{0} to {1}, {2} to {3}");
  CHECK_THAT(parent.lines.back().symbols, Catch::Contains("the weld zone's"));
  CHECK_THAT(parent.lines.back().values.back().si, WithinRel(3.0, 1e-12));
  CHECK_THAT(parent.notes.back(), Catch::Contains("invented"));
  in.other->zone_decides = true;
  CHECK_THAT(checks::yield(in).lines.back().symbols, Catch::Contains("the parent's"));
  in.other->von_mises = 0.0;
  CHECK_THAT(checks::yield(in).lines.back().symbols, Catch::Contains("no stress"));
  in.other->von_mises = base::kUnset;
  CHECK_THAT(checks::yield(in).lines.back().symbols, Catch::Contains("holds nowhere"));
}

}  // namespace yield_test
