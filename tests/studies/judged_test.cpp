// What every way of judging a design must agree on.
#include "studies/judged.hpp"

#include <string>

#include <catch2/catch.hpp>

#include "studies/check.hpp"
#include "tests/studies/read_case.hpp"

namespace judged_test {
using studies::Verdict;

namespace {

/// A link whose bolt slips in the stack that it clamps, and would be over in bending; a column near
/// its limit beside it, so that a run for the worst does not come to the bolt by its demand.
parts::Design link_with(const std::string& bolt) {
  return studies_tests::read_case(
      "title: link\n"
      "vehicle: {axle_weight: 17 kN, tire: 900 mm, track: 1650 mm}\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 1150 mm\n"
      "  rise: 50 mm\n"
      "  tube: 40 x 4 mm E355\n"
      "  ends: weld-on pin\n"
      "  bolt: " +
      bolt +
      "\n"
      "bracket:\n"
      "  drop: 120 mm\n"
      "  plates: 2 of 12 mm S355\n"
      "  depth_at_rail: 150 mm\n"
      "  weld: 8 mm fillet, both sides of each plate\n"
      "  rail: boxed, 75 x 150 x 6 mm\n"
      "  welded_to: bottom and inner side\n"
      "  rail_stiffness: 2000 kN m/rad\n"
      "load_cases: [hard corner, slid into a curb]\n");
}

}  // namespace

TEST_CASE("a clamp that nobody has stated leaves a slipped bolt open, however it is judged",
          "[studies]") {
  for (const auto& [bolt, verdict] : {std::pair("M14 10.9, clamped stack", Verdict::within),
                                      std::pair("M14 10.9", Verdict::not_decided)}) {
    CAPTURE(bolt);
    const parts::Design design = link_with(bolt);
    const studies::Answer answer = studies::check(design);
    CHECK(answer.verdict == verdict);
    double column = 0.0;
    double sheared = 0.0;
    for (const checks::Finding& f : answer.findings) {
      if (f.check == "column") column = f.utilization();
      if (f.check == "bolt" && f.state == checks::State::within) sheared = f.utilization();
    }
    CHECK(column > sheared);
    studies::Counted counted{.asked = {"lateral_link"}};
    CHECK(studies::judged(design, counted).verdict == verdict);
    CHECK(studies::judged_until_over(design, counted, 1.0).verdict == verdict);
  }
}

}  // namespace judged_test
