// Ratings of ball joints and rod ends at 0.98 and 1.02 of their limit, and missing ones. Own check,
// no source. A link's load reverses: 5.0 required on the static rating (a bearing maker's selection
// page, read, maker withheld: common practice, no source); an ultimate rating counts by 1 / 1.5
// (proposal, no source).
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace joint_verdict_test {
using Catch::Matchers::Contains;
using studies::Verdict;
using verdict_tests::check_flips;
using verdict_tests::check_others_within;
using verdict_tests::finding;
using verdict_tests::judged;

namespace {

constexpr double kRequired = 5.0;
constexpr double kRating = 150.0e3;
// Rise 200 mm over 900 mm from bolt to bolt: the link carries F / cos(slope).
const double kCosine = std::sqrt(1.0 - std::pow(200.0 / 900.0, 2));

std::string case_text(double push, const std::string& rating) {
  return fmt::format(
      "title: rod ends\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 900 mm\n"
      "  rise: 200 mm\n"
      "  tube: 50 x 8 mm S355H\n"
      "  ends: tapped rod end\n{}"
      "forces:\n"
      "  push:\n"
      "    at: axle bolt\n"
      "    force_y: {} N\n",
      rating, push);
}

}  // namespace

TEST_CASE("a rod end is over once its force passes a fifth of its static rating", "[verdict]") {
  const double limit = kRating * kCosine / kRequired;
  check_flips(
      {.case_text = [&](double u) { return case_text(u * limit, "  static_rating: 150 kN\n"); },
       .part = "lateral_link",
       .check = "joint rating"});
}

TEST_CASE("a rod end at the axle alone, on a link that is welded to a pin at the frame, is judged",
          "[verdict]") {
  const double limit = kRating * kCosine / kRequired;
  check_flips({.case_text =
                   [&](double u) {
                     std::string text = case_text(u * limit, "  static_rating: 150 kN\n");
                     const std::string both = "  ends: tapped rod end\n";
                     return text.replace(text.find(both), both.size(),
                                         "  ends: weld-on pin\n  axle_end: tapped rod end\n");
                   },
               .part = "lateral_link",
               .check = "joint rating"});
}

TEST_CASE("an ultimate rating counts by two thirds, and the lower of two ratings decides",
          "[verdict]") {
  const double limit = kRating / 1.5 * kCosine / kRequired;
  for (const char* ratings :
       {"  ultimate_rating: 150 kN\n", "  ultimate_rating: 150 kN\n  static_rating: 101 kN\n"}) {
    check_flips({.case_text = [&](double u) { return case_text(u * limit, ratings); },
                 .part = "lateral_link",
                 .check = "joint rating"});
  }
}

TEST_CASE("without a rating nothing is decided, with one it is", "[verdict]") {
  const studies::Answer missing = judged(case_text(10.0e3, ""));
  CHECK(missing.verdict == Verdict::not_decided);
  CHECK(finding(missing, "lateral_link", "joint rating").state == checks::State::undecided);
  CHECK_THAT(finding(missing, "lateral_link", "joint rating").reason, Contains("rating missing"));
  check_others_within(missing, "lateral_link", "joint rating");
  CHECK(judged(case_text(10.0e3, "  static_rating: 150 kN\n")).verdict == Verdict::within);
}

TEST_CASE("over comes before not decided", "[verdict]") {
  // 1.02 of the column limit, and no rating.
  const hand::Section s = hand::tube(0.050, 0.008);
  const double slenderness = 0.900 / std::sqrt(s.inertia / s.area);
  const double limit =
      hand::column_stress(hand::kYoungEn, hand::kS355H, slenderness) * s.area * kCosine / 3.0;
  const studies::Answer answer = judged(case_text(1.02 * limit, ""));
  CHECK(answer.verdict == Verdict::over);
  CHECK(finding(answer, "lateral_link", "column").state == checks::State::over);
  CHECK(finding(answer, "lateral_link", "joint rating").state == checks::State::undecided);
  CHECK(judged(case_text(0.98 * limit, "")).verdict == Verdict::not_decided);
}

}  // namespace joint_verdict_test
