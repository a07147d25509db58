#include "report/picked_text.hpp"

#include <catch2/catch.hpp>

#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace picked_text_test {
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

TEST_CASE("a picked size is shown with its neighbors and what stops the lighter ones",
          "[report][pick]") {
  const report::TextStyle style = {.command_for_more = "linkmargin pick a.yaml --part b --all"};
  CHECK(report::picked_text(invented::picked(), style) ==
        R"(LIGHTEST THAT PASSES: 1-1/2 x 0.188 in tube, DOM for the lateral link,
2.63 lb/ft, at 93 % of its limit. Not offered yet: other welds.
now in the case: tube 1.5 x 0.25 in, DOM
          size                        mass utilization  stopped by
lighter   1-1/4 x 0.188 in tube 2.13 lb/ft       131 %  column, slid into a
                                                        curb, left wheel
lightest  1-1/2 x 0.188 in tube 2.63 lb/ft        93 %  within
heavier   1-1/2 x 0.250 in tube 3.34 lb/ft        74 %  within
utilization: 100 % = the limit, worst of this part's checks
2 of 4 sizes are lighter and do not pass, stopped by: column (2)
Another part of this design is over its limit or not decided: `check` says
  which.
CAUTION: these parts can kill when they fail. Qualified welder, procedure and
  inspection; local vehicle code; a licensed engineer decides.
more: linkmargin pick a.yaml --part b --all
)");
}

TEST_CASE("when no size passes, that is what the answer starts with", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.tried.resize(2);
  p.lightest.reset();
  p.next_up.reset();
  p.next_down.reset();
  const std::string out = written::flat(report::picked_text(p, {}));
  CHECK_THAT(out, StartsWith("NONE PASSES: no size of the stock list holds"));
  CHECK_THAT(out, Contains("2 of 2 sizes do not pass, stopped by: column (2)"));
  CHECK(written::is_clean(out));
}

TEST_CASE("the size of the outside that is there now has a line, once", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.same_outside = invented::candidate("1-3/4 x 0.156 in tube", 3.95, 0.95);
  CHECK_THAT(report::picked_text(p, {}), Contains("same outside  1-3/4 x 0.156 in tube"));
  p.same_outside = p.lightest;
  CHECK_THAT(report::picked_text(p, {}), !Contains("same outside"));
}

TEST_CASE("steels that differ are told", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.next_up->steel = "1018";
  CHECK_THAT(report::picked_text(p, {}), Contains("steel: ") && Contains("tube: 1018"));
}

TEST_CASE("a full answer lists every size, those not decided too", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.tried[0].verdict = studies::Verdict::not_decided;
  p.tried[0].utilization = base::kUnset;
  p.tried[0].stopped_by = "yield, hard stop: it turns too far";
  const std::string out = report::picked_text(p, {.full = true});
  for (const studies::Candidate& c : p.tried) CHECK_THAT(out, Contains(c.item.label.substr(0, 8)));
  CHECK_THAT(out, Contains("not decided"));
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
}

TEST_CASE("the arm's other tube is named where it stands in the way", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.part = "arm.lower";
  CHECK_THAT(report::picked_text(p, {}), !Contains("of the same arm"));
  p.other_tube_over = "upper tube";
  CHECK_THAT(report::picked_text(p, {}),
             Contains("The upper tube of the same arm is over") && Contains("--part arm.upper"));
}

TEST_CASE("a pick that nothing decides says what is missing", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.lightest.reset();
  p.next_up.reset();
  p.next_down.reset();
  for (studies::Candidate& c : p.tried) {
    c.verdict = studies::Verdict::not_decided;
    c.stopped_by = "joint rating, hard corner: its rating is missing";
  }
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             StartsWith("NOT DECIDED: none of 4 sizes for the lateral link can be decided: joint "
                        "rating, hard corner: its rating is missing"));
}

}  // namespace picked_text_test
