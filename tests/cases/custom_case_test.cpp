#include <catch2/catch.hpp>

#include "cases/patch.hpp"
#include "parts/design_cases.hpp"
#include "tests/cases/case_texts.hpp"

namespace custom_case_test {
using case_texts::design;
using case_texts::kCantilever;
using case_texts::kLink;
using case_texts::problems;
using Catch::Matchers::Contains;

namespace {

/// The problems of one more load case of the link's file, which is line 22.
std::string problems_of(const std::string& item) {
  return problems(kLink + "load_cases: [" + item + "]\n");
}
std::string duty_problems(const std::string& item) {
  return problems(kLink + "duty: [" + item + "]\n");
}

const parts::DesignCase& named(const std::vector<parts::DesignCase>& all, const std::string& name) {
  for (const parts::DesignCase& c : all) {
    if (c.name == name) return c;
  }
  throw std::logic_error("no load case " + name);
}

}  // namespace

TEST_CASE("one line adds a load case by wheel forces beside the default ones", "[cases][custom]") {
  const auto all = parts::design_cases(
      design(kLink + "load_cases: [{name: ditch, left_wheel: [-2, -5, 20 kN]}]\n"));
  CHECK(all.size() == 5);  // corner and curb, left and right, and the ditch
  const parts::DesignCase& ditch = named(all, "ditch");
  REQUIRE(ditch.pushes.size() == 1);
  CHECK(ditch.pushes[0].role == loads::Role::left_contact);
  CHECK(ditch.pushes[0].force == std::array<double, 3>{-2000.0, -5000.0, 20000.0});
  CHECK_FALSE(ditch.abuse);
}

TEST_CASE("named kinds replace the default ones, a case of one's own stays beside them",
          "[cases][custom]") {
  const auto all = parts::design_cases(
      design(kLink + "load_cases:\n  - hard corner\n  - {name: ditch, right_wheel: [0, -5, 20 kN], "
                     "at_hub: yes, both_sides: yes, routine: no}\n"));
  REQUIRE(all.size() == 4);
  CHECK(named(all, "ditch").abuse);
  CHECK(named(all, "ditch").pushes[0].role == loads::Role::right_hub);
  CHECK(named(all, "ditch, mirrored").pushes[0].role == loads::Role::left_hub);
  CHECK(named(all, "ditch, mirrored").pushes[0].force[1] == 5000.0);
}

TEST_CASE("one line adds a load case by a force on a point", "[cases][custom]") {
  const auto all = parts::design_cases(
      design(kCantilever + "load_cases: [{name: winch, at: tip, force: [0, 0, 2 kip], "
                           "moment: [0, 0, 80 ft-lb]}]\n"));
  REQUIRE(all.size() == 2);
  CHECK(all[0].name == "winch");
  CHECK(all[0].forces[0].value.force[2] == Approx(2000.0 * base::kPoundForce));
  CHECK(all[0].forces[0].value.moment[2] == Approx(80.0 * 12.0 * base::kInch * base::kPoundForce));
}

TEST_CASE("one line adds a load case by an acceleration of the whole truck", "[cases][custom]") {
  const auto all = parts::design_cases(design(
      case_texts::with(kLink, "  track: 66 in\n", "  track: 66 in\n  mass_center_height: 30 in\n") +
      "load_cases: [{name: swerve, acceleration: [0, 0.5, 0 g]}]\n"));
  const parts::DesignCase& swerve = named(all, "swerve");
  const double across = swerve.pushes[0].force[1] + swerve.pushes[1].force[1];
  CHECK(across == Approx(0.5 * 5500.0 * base::kPoundForce));
}

TEST_CASE("a load case that says nothing or too much is refused at its place", "[cases][custom]") {
  CHECK(problems_of("{left_wheel: [0, 1, 2 kN]}") ==
        "case.yaml:22:14: load_cases: `name` is missing: a few words for this load case, e.g. "
        "name: ditch");
  CHECK(
      problems_of("{name: ditch}") ==
      "case.yaml:22:14: load_cases.ditch: it needs one of: left_wheel and right_wheel; "
      "acceleration; at with force or moment; or a posture, heave or roll with the wheels at rest");
  CHECK_THAT(problems_of("{name: ditch, left_wheel: [0, 1, 2 kN], acceleration: [0, 1, 0 g]}"),
             Contains("load_cases.ditch: it needs one of"));
  CHECK(problems_of("{name: ditch, left_wheel: [0, 1, 2]}") ==
        "case.yaml:22:40: load_cases.ditch.left_wheel: 2 has no unit; a force needs one, e.g. lb "
        "or kN");
  CHECK_THAT(problems_of("{name: ditch, left_wheel: 20 kN}"),
             Contains("case.yaml:22:40: load_cases.ditch.left_wheel: three numbers are needed, "
                      "e.g. [0, 0, 5500 lb]"));
  CHECK_THAT(problems_of("{name: ditch, left_whel: [0, 1, 2 kN]}"),
             Contains("load_cases.ditch.left_whel: unknown key `left_whel`; did you mean "
                      "`left_wheel`?"));
  CHECK_THAT(problems_of("{name: ditch, acceleration: [0, 1, 2 kN]}"),
             Contains("an acceleration is needed, e.g. g or m/s^2"));
  CHECK_THAT(problems_of("{name: ditch, left_wheel: [0, 0, 0 kN]}"),
             Contains("load_cases.ditch: it is 0"));
  CHECK_THAT(problems_of("{name: hard stop, left_wheel: [0, 1, 2 kN]}"),
             Contains("there is a load case of that name"));
  CHECK_THAT(
      problems_of("{name: a, left_wheel: [0, 1, 2 kN]}, {name: A, left_wheel: [0, 1, 2 kN]}"),
      Contains("there is a load case of that name"));
  CHECK_THAT(problems_of("{name: ditch, at: nowhere, force: [0, 1, 2 kN]}"),
             Contains("there is no point `nowhere`"));
  CHECK_THAT(problems_of("{name: ditch, force: [0, 1, 2 kN]}"), Contains("`at` is missing"));
  CHECK_THAT(problems(kCantilever + "load_cases: [{name: a, left_wheel: [0, 1, 2 kN]}]\n"),
             Contains("load_cases.a: wheel forces and accelerations need `vehicle:`"));
}

TEST_CASE("without an axle a case that pushes nothing sideways is refused", "[cases][custom]") {
  CHECK_THROWS_WITH(
      parts::design_cases(design(kLink + "load_cases: [{name: hop, left_wheel: [0, 0, 20 kN]}]\n")),
      Contains("load_cases.hop: without `axle:`"));
}

TEST_CASE("a load case of one's own and a duty block change by path", "[cases][custom]") {
  parts::Design d = design(kLink +
                           "load_cases: [{name: ditch, left_wheel: [-2, -5, 20 kN]}]\n"
                           "duty: [{from: at rest, to: ditch, per_1000_km: 10}]\n");
  cases::set(d, {"load_cases.ditch.left_wheel", "[0, 7, 20 kN]"});
  CHECK(d.custom_cases[0].value.left_wheel[1] == 7000.0);
  cases::set(d, {"duty.1.per_1000_km", "25"});
  CHECK(d.duty[0].value.block.per_1000_km == 25.0);
  CHECK_THROWS_WITH(cases::set(d, {"load_cases.dich.left_wheel", "[0, 7, 20 kN]"}),
                    Contains("did you mean `ditch`?"));
  cases::set(d, {"load_cases.ditch", "none"});
  CHECK(d.custom_cases.empty());
}

TEST_CASE("duty blocks go between load cases that there are", "[cases][duty]") {
  const parts::Design d =
      design(kLink +
             "duty: [{from: hard corner turning left, to: hard_corner_turning_right, per_1000_km: "
             "500}]\n");
  REQUIRE(d.duty.size() == 1);
  CHECK(d.duty[0].value.block.per_1000_km == 500.0);
  CHECK(d.duty[0].value.block.spread == loads::Spread::full);
  CHECK(duty_problems("{from: hard corner turning left, to: hard corner turning rigt, "
                      "per_1000_km: 5}") ==
        "case.yaml:22:41: duty.1.to: there is no load case `hard corner turning rigt`; did you "
        "mean `hard corner turning right`?");
  CHECK_THAT(duty_problems("{from: at rest, to: hard stop}"),
             Contains("case.yaml:22:8: duty.1: `per_1000_km` is missing"));
  CHECK_THAT(duty_problems("{from: at rest, to: hard stop, per_1000_km: 0}"),
             Contains("duty.1.per_1000_km: 0 is not over 0"));
  CHECK_THAT(duty_problems("{from: at rest, to: hard stop, per_1000_km: 5, sizes: odd}"),
             Contains("it is one of: all full, straight line, bell curve"));
  CHECK_THAT(problems(kLink + "duty: often\n"), Contains("case.yaml:22:7: duty: a list is needed"));
}

}  // namespace custom_case_test
