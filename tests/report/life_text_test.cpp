#include "report/life_text.hpp"

#include <limits>

#include <catch2/catch.hpp>

#include "report/text.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace life_text_test {
using Catch::Matchers::Contains;

namespace {

studies::LifeAtPlace place(const std::string& where, double distance) {
  return {.part = "bracket",
          .where = where,
          .detail = "fillet weld, root",
          .category = 36.0e6,
          .stress = "throat stress",
          .set = "soft rail",
          .distance = distance,
          .source = "EN 1993-1-9:2005 table 8.5 detail 3, from memory; 95 % survive",
          .lines = {{"largest range", "{0}", {{200.0e6, checks::Measure::stress}}}}};
}

studies::Life life(double shortest) {
  return {.places = {place("root weld, root", shortest),
                     place("plates at the rail, toe", 2.0 * shortest),
                     place("plates at the bolt hole", 3.0 * shortest),
                     place("plates at the bolt, thread", 4.0 * shortest)},
          .duty_basis = "given in the case file",
          .left_out = {"hard stop to hard stop in reverse"},
          .without_category = {"eyes and housings of links"}};
}

}  // namespace

TEST_CASE("a life is a band of distance with the place that goes first", "[report][life]") {
  CHECK(report::life_sentence(life(36.0e6), false) ==
        "fatigue, indicative only: 12,000-110,000 km, first bracket");
  CHECK_THAT(report::life_sentence(life(36.0e6), true), Contains("7,500-67,000 miles"));
  CHECK_THAT(report::life_sentence(life(std::numeric_limits<double>::infinity()), false),
             Contains("over 10,000,000 km"));
  CHECK_THAT(report::life_sentence(life(1.0e10), false), Contains("km or more"));
  CHECK(report::life_sentence({}, false).empty());
}

TEST_CASE("the three places that go first are shown with their ranges and sources",
          "[report][life]") {
  const std::string out = report::life_section(life(36.0e6), false, {});
  const std::string flat = written::flat(out);
  CHECK_THAT(flat, Contains("bracket: root weld, root: 36,000 km at damage 1"));
  CHECK_THAT(flat, Contains("category 36.0 MPa") && Contains("200.0 MPa") &&
                       Contains("95 % survive") && Contains("indicative only"));
  CHECK_THAT(flat, Contains("plates at the bolt hole") && !Contains("at the bolt, thread") &&
                       Contains("and 1 more places"));
  CHECK_THAT(flat, Contains("left out, as their load cases were not solved: hard stop"));
  CHECK_THAT(flat, Contains("not in it: eyes and housings"));
  CHECK(written::widest(out) <= 80);
}

TEST_CASE("a life and an order of failure still leave a small case on one screen",
          "[report][life]") {
  studies::Answer answer = invented::answer();
  answer.life = life(36.0e6);
  answer.failure_orders = {{.load_case = "slid into a curb, left wheel",
                            .set = "soft rail",
                            .order = {{"bracket", "weld", studies::GivesAt::How::breaks, 1.9}},
                            .breaks_first = true}};
  const std::string out = report::text(answer, {.command_for_more = "linkmargin check c.yaml"});
  CHECK_THAT(written::flat(out), Contains("fatigue, indicative only: 7,500"));
  CHECK(written::lines(out).size() <= 25);
  CHECK(written::is_clean(out));
}

}  // namespace life_text_test
