#include "report/rated_text.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/json.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace rated_text_test {
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

studies::RatedPoint point(double pounds, double safety_factor, double required = 1.5) {
  const checks::Finding worst =
      invented::yield("lateral_link", "at the bend", safety_factor, required);
  return {.value = pounds * base::kPoundForce,
          .verdict = safety_factor >= required ? studies::Verdict::within : studies::Verdict::over,
          .worst = worst,
          .refused = {}};
}

studies::Rating rating() {
  studies::Rating r;
  r.title = "lateral link, 9 in drop, braced";
  r.span = {.path = "vehicle.axle_weight",
            .from = 2200.0 * base::kPoundForce,
            .to = 13750.0 * base::kPoundForce};
  r.now = {.si = 5500.0 * base::kPoundForce, .unit = "lb", .factor = base::kPoundForce};
  studies::Rated drawn;
  drawn.name = "as drawn";
  drawn.points = {point(2200.0, 3.0), point(4180.0, 1.52), point(4200.0, 1.49)};
  drawn.holds_to = drawn.points[1];
  drawn.fails_at = drawn.points[2];
  studies::Rated bare;
  bare.name = "no brace";
  bare.points = {point(2200.0, 1.1)};
  r.designs = {drawn, bare};
  return r;
}

}  // namespace

TEST_CASE("the limit is what the answer starts with, and each variant has a line",
          "[report][rate]") {
  const std::string out = report::rated_text(rating(), {});
  CHECK_THAT(
      written::flat(out),
      StartsWith("THE CHECKS MADE HOLD up to 4,180 lb of axle weight, as drawn, with the thinnest "
                 "tubes a mill may deliver; the case has 5,500 lb; what governs at the limit: "
                 "lateral link, yield at the bend (slid "
                 "into a curb, right wheel). Not offered yet: "));
  CHECK_THAT(out, Contains("as drawn") && Contains("4,200 lb") && Contains("lateral link, yield"));
  CHECK_THAT(out, Contains("no brace") && Contains("nowhere"));
  CHECK_THAT(written::flat(out), Contains("no promise for any truck") && Contains("CAUTION"));
  CHECK(out.find("holds from") == std::string::npos);
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
}

TEST_CASE("a value that does not hold is not rounded to one that may", "[report][rate]") {
  studies::Rating r = rating();
  r.designs[0].fails_at = point(4200.4, 1.49);
  CHECK_THAT(report::rated_text(r, {}), Contains("4,201 lb"));
  r.designs[0].fails_at = point(4200.6, 1.49);
  CHECK_THAT(report::rated_text(r, {}), Contains("4,201 lb"));
  r.designs[0].fails_at = point(4200.0, 1.49);
  CHECK_THAT(report::rated_text(r, {}), Contains("4,200 lb"));
  r.designs[0].holds_from = point(2500.0, 1.6);
  r.designs[0].fails_below = point(2490.6, 1.4);
  CHECK_THAT(written::flat(report::rated_text(r, {})), Contains("below, at 2,490 lb"));
}

TEST_CASE("what a design at its limit says to beware of is told", "[report][rate]") {
  studies::Rating r = rating();
  r.designs[0].beware = {"brace: it ends below the rail"};
  CHECK_THAT(written::flat(report::rated_text(r, {})),
             Contains("beware, as drawn, with 4,180 lb of axle weight: brace: it ends below the "
                      "rail"));
}

TEST_CASE("a range that begins somewhere, and one that does not end, are told", "[report][rate]") {
  studies::Rating r = rating();
  r.designs[0].holds_from = point(2500.0, 1.6);
  r.designs[0].fails_at.reset();
  r.designs[0].to_the_end = true;
  r.designs[0].holds_again = true;
  const std::string out = written::flat(report::rated_text(r, {}));
  CHECK_THAT(out, StartsWith("THE CHECKS MADE HOLD from 2,500 lb up to 4,180 lb of axle weight, as "
                             "drawn (the search ends there)"));
  CHECK_THAT(out, Contains("2,500 lb 4,180 lb") && Contains("another range"));
  r.designs[0] = r.designs[1];
  CHECK_THAT(written::flat(report::rated_text(r, {})),
             StartsWith("THE CHECKS MADE DO NOT HOLD at any axle weight between 2,200 lb and"));
}

TEST_CASE("a rating that nothing decides does not say that nothing holds", "[report][rate]") {
  studies::Rating r = rating();
  studies::RatedPoint open = point(2200.0, 3.0);
  open.verdict = studies::Verdict::not_decided;
  checks::leave_undecided(*open.worst, "its rating is missing");
  r.designs.resize(1);
  r.designs[0] = studies::Rated();
  r.designs[0].points = {open};
  CHECK_THAT(written::flat(report::rated_text(r, {})),
             StartsWith("NOT DECIDED at any axle weight between 2,200 lb and 13,750 lb: lateral "
                        "link, yield at the bend") &&
                 Contains("its rating is missing"));
}

TEST_CASE("a full rating lists every value tried, those that make no sense too", "[report][rate]") {
  studies::Rating r = rating();
  r.designs[0].points.push_back({.value = 9000.0 * base::kPoundForce,
                                 .verdict = studies::Verdict::not_decided,
                                 .worst = {},
                                 .refused = "the whole truck weighs less than its front tires"});
  const std::string out = report::rated_text(r, {.full = true});
  CHECK_THAT(out, Contains("Values tried, as drawn") && Contains("2,200 lb"));
  CHECK_THAT(written::flat(out), Contains("refused") && Contains("the case makes no sense there"));
  CHECK(written::widest(out) <= 80);
}

TEST_CASE("a rating in JSON keeps both sides of the limit", "[report][json][rate]") {
  const auto out = nlohmann::json::parse(report::json(rating(), {"1.0", "abc"}));
  CHECK(out["over"] == "vehicle.axle_weight");
  CHECK(out["shown_unit"] == "lb");
  const auto& drawn = out["designs"][0];
  CHECK(drawn["holds_up_to"]["value_SI"].get<double>() == 4180.0 * base::kPoundForce);
  CHECK(drawn["holds_up_to"]["verdict"] == "within the limits checked");
  CHECK(drawn["fails_at"]["worst_finding"]["check"] == "yield");
  CHECK(drawn["values_tried"].size() == 3);
  CHECK(!out["designs"][1].contains("holds_up_to"));
  CHECK(out["cautions"].size() > 0);
}

}  // namespace rated_text_test
