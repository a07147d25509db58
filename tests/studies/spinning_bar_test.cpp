// A bar on two ball joints that a rock pushes at its middle: what buckles and what does not,
// against its own Euler load (textbook). Invented numbers.
#include <algorithm>

#include <catch2/catch.hpp>

#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace spinning_bar_test {
using Catch::Matchers::Contains;
using studies_tests::read_case;

namespace {

/// @param load  a load case of the library
studies::Answer answer(const std::string& load) {
  return studies::check(
      read_case("title: bar on two balls\n"
                "vehicle:\n"
                "  axle_weight: 25 kN\n"
                "  tire: 900 mm\n"
                "  track: 1.7 m\n"
                "lateral_link:\n"
                "  bolt_to_bolt: 900 mm\n"
                "  rise: 0 mm\n"
                "  tube: 60 x 8 mm S355H\n"
                "  ends: weld-on ball joint\n"
                "bracket:\n"
                "  drop: 200 mm\n"
                "  plates: 2 of 16 mm S355\n"
                "  depth_at_rail: 200 mm\n"
                "  weld: 10 mm fillet, both sides of each plate\n"
                "  rail: boxed, 100 x 200 x 8 mm\n"
                "  welded_to: bottom and inner side\n"
                "  rail_stiffness: 2000 kN m/rad\n"
                "brace:\n"
                "  tube: 60 x 6 mm S355H\n"
                "  length: 850 mm\n"
                "  slope: 15 deg\n"
                "  meets_bracket: at the bolt\n"
                "  far_end: welded to opposite rail\n"
                "load_cases: [" +
                load + "]\n"));
}

bool says_that_some_are_none(const studies::Answer& answer) {
  return std::any_of(answer.findings.begin(), answer.findings.end(), [](const auto& finding) {
    return std::any_of(finding.notes.begin(), finding.notes.end(), [](const std::string& note) {
      return note.find("that are none") != std::string::npos;
    });
  });
}

}  // namespace

TEST_CASE("a side load does not make a bar spin away between its balls", "[studies][stability]") {
  // pi^2 E I / L^2 is over 900 kN; linear theory has the bar go at a twentieth of the rock's push.
  const studies::Answer rock = answer("dragged_over_a_rock");
  REQUIRE_FALSE(rock.critical.empty());
  CHECK(rock.critical.front().factor > 10.0);
  CHECK(says_that_some_are_none(rock));
}

TEST_CASE("a bar that is pressed buckles at its own load", "[studies][stability]") {
  const studies::Answer curb = answer("slid_into_a_curb");
  REQUIRE_FALSE(curb.critical.empty());
  CHECK(curb.critical.front().what == "lateral_link");
  // Nothing but the bar gives: its own factor is the assembly's, the bracket's give aside.
  const auto own = std::find_if(curb.own.begin(), curb.own.end(),
                                [](const auto& factor) { return factor.what == "lateral_link"; });
  REQUIRE(own != curb.own.end());
  CHECK(curb.critical.front().factor == Approx(own->factor).epsilon(0.02));
  CHECK_FALSE(says_that_some_are_none(curb));
}

}  // namespace spinning_bar_test
