#include "checks/bolt_shear.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <catch2/catch.hpp>

#include "checks/caveat.hpp"
#include "tests/checks/worked_arithmetic.hpp"

namespace bolt_shear_test {
using Catch::Matchers::WithinRel;
using checks::State;

namespace {

/// M16 x 2 of class 10.9: A 201.1 mm2, At 156.7 mm2, Fu 1040 MPa.
checks::BoltInput bolt(double shear, double tension = 0.0) {
  const sections::BoltThread thread = {
      .name = "M16 x 2", .inch = false, .diameter = 0.016, .pitch = 0.002, .mark = "from memory"};
  return {.thread = thread,
          .grade = *sections::find_bolt_grade("10.9", thread),
          .shear = shear,
          .tension = tension,
          .required = 2.0};
}

}  // namespace

// AISC 360-22 J3.7, from memory; worked by hand, 4 figures: 188.2 kN with threads in both planes,
// 235.4 kN without; 156.8 kN in tension.
TEST_CASE("a bolt in double shear and in tension", "[checks][bolt]") {
  CHECK_THAT(checks::bolt_shear(bolt(50e3)).demand, WithinRel(50.0 / 188.2, 3e-4));
  checks::BoltInput out = bolt(50e3);
  out.threads_in_plane = false;
  CHECK_THAT(checks::bolt_shear(out).demand, WithinRel(50.0 / 235.4, 3e-4));
  out.planes = 1;
  CHECK_THAT(checks::bolt_shear(out).demand, WithinRel(100.0 / 235.4, 3e-4));
  CHECK_THAT(checks::bolt_shear(bolt(0.0, 80e3)).demand, WithinRel(80.0 / 156.8, 3e-4));
}

// AISC 360-22 J3.8, from memory: Fnt' = 1.3 Fnt - Fnt frv / Fnv in nominal strengths, which is
// v + t <= 1.3; up to 0.3 of the one the other is whole.
TEST_CASE("shear takes off tension over three tenths", "[checks][bolt]") {
  const auto demand = [](double v, double t) {
    return checks::bolt_shear(bolt(v * 188.2e3, t * 156.8e3)).demand;
  };
  CHECK_THAT(demand(0.65, 0.65), WithinRel(1.0, 4e-4));
  CHECK_THAT(demand(0.29, 1.0), WithinRel(1.0, 4e-4));
  CHECK_THAT(demand(1.0, 0.29), WithinRel(1.0, 4e-4));
  CHECK(worked::equations_that_hold(checks::bolt_shear(bolt(60e3, 30e3))) == 5);
}

TEST_CASE("a small coarse thread counts with its stress area", "[checks][bolt]") {
  checks::BoltInput in = bolt(10e3, 5e3);
  in.thread = {.name = "3/8-16", .diameter = 0.375 * base::kInch, .pitch = base::kInch / 16.0};
  const double at = in.thread.tensile_area();
  REQUIRE(at < 0.75 * in.thread.shank_area());
  in.tension = 0.0;
  CHECK_THAT(checks::bolt_shear(in).demand, WithinRel(10e3 / (2.0 * 0.60 * 1040e6 * at), 1e-9));
  in.shear = 0.0;
  in.tension = 5e3;
  CHECK_THAT(checks::bolt_shear(in).demand, WithinRel(5e3 / (1040e6 * at), 1e-9));
}

// EN 1993-1-8 3.13, moment from memory; by hand: 25 kN, plates 6, eye 40 and gaps of 3 mm beside it
// (an eye of 52 mm would do the same) give 200 N m; first yield of the shank 378.0 N m.
TEST_CASE("a bolt bends where its stack is loose, and only then", "[checks][bolt]") {
  checks::BoltInput in = bolt(25e3);
  in.threads_in_plane = false;
  in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.052, .loose = true};
  const checks::Finding loose = checks::bolt_shear(in);
  CHECK_THAT(loose.demand, WithinRel(std::hypot(200.0 / 378.0, 25.0 / 235.4), 4e-4));
  CHECK(worked::equations_that_hold(loose) == static_cast<int>(loose.lines.size()));
  in.stack->loose = false;
  const checks::Finding tight = checks::bolt_shear(in);
  CHECK_THAT(tight.demand, WithinRel(25.0 / 235.4, 3e-4));
  CHECK_THAT(tight.lines.back().symbols, Catch::Contains("beside it, were its stack loose"));
  // Friction of M16, class 10.9, at 0.75 of proof, two faces of 0.20: 39.01 kN (Shigley, eq. 8-31,
  // from memory).
  const auto friction =
      std::find_if(tight.lines.begin(), tight.lines.end(), [](const checks::WorkedLine& line) {
        return line.symbols.find("friction of the clamped faces") != std::string::npos;
      });
  REQUIRE(friction != tight.lines.end());
  CHECK_THAT(friction->values.back().si, WithinRel(39.01e3, 2e-4));
}

// As above: 2.0, the factor asked, times 50 kN is over the friction of 39.01 kN, times 19.4 kN it
// is not; bent 400 / 378.0, sheared 50 / 235.4.
TEST_CASE("of a clamped stack that slips it is said what bending makes of it", "[checks][bolt]") {
  const auto checked = [](double shear, bool assumed) {
    checks::BoltInput in = bolt(shear);
    in.threads_in_plane = false;
    in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.052};
    in.clamp_assumed = assumed;
    return checks::bolt_shear(in);
  };
  const checks::Finding said = checked(50e3, false);
  CHECK(said.state == State::within);
  const auto caveat = std::find_if(said.notes.begin(), said.notes.end(), checks::is_caveat);
  REQUIRE(caveat != said.notes.end());
  CHECK_THAT(*caveat, Catch::Contains("the load slips its clamped stack, which may leave no gap: "
                                      "with its bending counted about 216 %, not 42 %"));
  // Nobody says that it is clamped, and bending would be over.
  const checks::Finding assumed = checked(50e3, true);
  CHECK(assumed.state == State::undecided);
  CHECK_THAT(assumed.reason, Catch::Contains("slips it: with its bending counted about 216 %, "
                                             "not 42 %; say `clamped stack` or `loose stack`"));
  const checks::Finding held = checked(19.4e3, true);
  CHECK(held.state == State::within);
  CHECK(std::none_of(held.notes.begin(), held.notes.end(), checks::is_caveat));
}

TEST_CASE("an assumed clamp decides only where bending would hold too", "[checks][bolt]") {
  checks::BoltInput in = bolt(50e3);
  in.threads_in_plane = false;
  in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.052};
  in.clamp_assumed = true;
  const double asked = in.required;
  const double bent = *checks::demand_if_slipped(in);
  in.required = 0.98 / bent;
  CHECK(checks::bolt_shear(in).state == State::within);
  in.required = 1.02 / bent;
  CHECK(checks::bolt_shear(in).state == State::undecided);
  in.required = asked;
  in.shear = 300e3;  // over by shear alone, whatever the stack
  CHECK(checks::bolt_shear(in).state == State::over);
}

TEST_CASE("what a slipped stack comes to in another load case is said", "[checks][bolt]") {
  checks::BoltInput in = bolt(19e3);
  in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.052};
  const auto warned = [&] {
    const checks::Finding f = checks::bolt_shear(in);
    return std::any_of(f.notes.begin(), f.notes.end(), checks::is_caveat);
  };
  CHECK_FALSE(checks::demand_if_slipped(in));
  CHECK_FALSE(warned());
  in.if_slipped = 1.2;
  CHECK(warned());
}

TEST_CASE("one of two eyes that slips is enough for the bolt to bend", "[checks][bolt]") {
  checks::BoltInput in = bolt(5e3);
  in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.052};
  in.stack->two_eyes = checks::TwoEyes{.first = {5e3, 0.0}, .second = {-19e3, 0.0}};
  CHECK_FALSE(checks::demand_if_slipped(in));
  in.stack->two_eyes->second = {-20e3, 0.0};
  CHECK(checks::demand_if_slipped(in));
}

TEST_CASE("a bolt through what is not known is open where the load slips an assumed clamp",
          "[checks][bolt]") {
  checks::BoltInput in = bolt(20e3);
  CHECK(checks::bolt_shear(in).state == State::within);
  in.clamp_assumed = true;
  const checks::Finding open = checks::bolt_shear(in);
  CHECK(open.state == State::undecided);
  CHECK_THAT(open.reason, Catch::Contains("say `clamped stack`, or give its tabs"));
  in.shear = 19e3;
  CHECK(checks::bolt_shear(in).state == State::within);
  in.shear = 300e3;
  CHECK(checks::bolt_shear(in).state == State::over);
}

TEST_CASE("spacers beside an eye bend its bolt more than a wider eye", "[checks][bolt]") {
  checks::BoltInput in = bolt(25e3);
  in.threads_in_plane = false;
  in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.046, .loose = true, .spacer = 0.003};
  const checks::Finding spaced = checks::bolt_shear(in);  // the eye of 40 mm above: 200 N m
  CHECK_THAT(spaced.demand, WithinRel(std::hypot(200.0 / 378.0, 25.0 / 235.4), 4e-4));
  CHECK(worked::equations_that_hold(spaced) == static_cast<int>(spaced.lines.size()));
  in.stack->spacer = 0.0;
  CHECK(checks::bolt_shear(in).demand < spaced.demand);
}

TEST_CASE("a loose bolt is decided where it is known what it goes through", "[checks][bolt]") {
  checks::BoltInput in = bolt(10e3);
  in.loose = true;
  CHECK(checks::bolt_shear(in).state == State::undecided);
  in.stack = checks::BoltStack{.plate = 0.006, .eye = 0.030, .loose = true};
  CHECK(checks::bolt_shear(in).state == State::within);
  in.loose = false;
  in.stack.reset();
  CHECK(checks::bolt_shear(in).state == State::within);
}

// Beam on two supports, no source: plates 12 mm, 50 mm apart, two eyes of 25 mm; the eyes' middles
// 18.5 mm from the plates', which are 62 mm apart. First yield of the shank 378.0 N m.
TEST_CASE("two eyes on one bolt bend it together", "[checks][bolt]") {
  checks::BoltInput in = bolt(10e3);
  in.planes = 1;
  in.threads_in_plane = false;
  in.stack = checks::BoltStack{.plate = 0.012, .eye = 0.050, .loose = true};
  const auto bent = [&](checks::AcrossBolt first, checks::AcrossBolt second) {
    in.stack->two_eyes = checks::TwoEyes{first, second};
    const checks::Finding f = checks::bolt_shear(in);
    CHECK(worked::equations_that_hold(f) + 1 == static_cast<int>(f.lines.size()));
    return 378.0 * std::sqrt(f.demand * f.demand - std::pow(10.0 / 117.7, 2));
  };
  CHECK_THAT(bent({10e3, 0.0}, {0.0, 0.0}), WithinRel(129.8, 2e-3));
  CHECK_THAT(bent({0.0, 0.0}, {0.0, 10e3}), WithinRel(129.8, 2e-3));
  CHECK_THAT(bent({10e3, 0.0}, {-10e3, 0.0}), WithinRel(74.6, 3e-3));
  CHECK_THAT(bent({10e3, 0.0}, {10e3, 0.0}), WithinRel(185.0, 2e-3));
  CHECK_THAT(bent({10e3, 0.0}, {0.0, 10e3}),
             WithinRel(0.0185 * 10e3 / 62.0 * std::hypot(43.5, 18.5), 2e-3));
}

TEST_CASE("the bolt verdict turns at its limit", "[checks][bolt]") {
  CHECK(checks::bolt_shear(bolt(0.98 * 188.2e3 / 2.0)).state == State::within);
  CHECK(checks::bolt_shear(bolt(1.02 * 188.2e3 / 2.0)).state == State::over);
  CHECK(checks::bolt_shear(bolt(0.0)).state == State::within);
}

}  // namespace bolt_shear_test
