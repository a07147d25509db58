#include "report/picked_text.hpp"

#include <catch2/catch.hpp>

#include "report/grid_text.hpp"
#include "report/scattered_text.hpp"
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
          size                        mass utilization  governed by
lighter   1-1/4 x 0.188 in tube 2.13 lb/ft       131 %  column, slid into a
                                                        curb, left wheel
lightest  1-1/2 x 0.188 in tube 2.63 lb/ft        93 %  column, slid into a
                                                        curb, left wheel
heavier   1-1/2 x 0.250 in tube 3.34 lb/ft        74 %  column, slid into a
                                                        curb, left wheel
utilization: 100 % = the limit; worst of this part's checks over all load cases
  and stiffness sets
2 of 4 sizes are lighter and do not pass, stopped by: column (2)
Over its limit or not decided as drawn, and not counted here: bracket (`check`
  says why).
CAUTION: these parts can kill when they fail. Qualified welder, procedure and
  inspection; local vehicle code; a licensed engineer decides.
more: linkmargin pick a.yaml --part b --all
)");
}

TEST_CASE("a picked size that holds only as thick as it is sold for says so", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.assumed = {{"sizes", "nominal", "as entered"}};
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("`sizes: minimum` in the case counts what the mill may leave away"));
  p.lightest->at_minimum = studies::Judged{.verdict = studies::Verdict::over, .utilization = 1.02};
  p.next_up->at_minimum = studies::Judged{.verdict = studies::Verdict::within, .utilization = 0.8};
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("with the least the mill may deliver: 1-1/2 x 0.188 in tube at 102 %, OVER; "
                      "1-1/2 x 0.250 in tube at 80 %. `sizes: minimum` in the case picks by that"));
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("at 93 % of its limit, but OVER at 102 % with the least the mill may"));
  p.lightest->judged.beware = {"welds' reach assumed"};
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("beware: 1-1/2 x 0.188 in tube: welds' reach assumed"));
  p.lightest->at_minimum->verdict = studies::Verdict::not_decided;
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("1-1/2 x 0.188 in tube not decided; 1-1/2 x 0.250 in tube at 80 %."));
  p.lightest->at_minimum =
      studies::Judged{.verdict = studies::Verdict::within, .utilization = 0.97};
  CHECK_THAT(written::flat(report::picked_text(p, {})), !Contains("picks by that"));
}

TEST_CASE("when no size passes, that is what the answer starts with", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.tried.resize(2);
  p.lightest.reset();
  p.next_up.reset();
  p.next_down.reset();
  p.n_sizes = p.n_done = 2;
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
  p.tried[0].judged = {.open = "yield, hard stop: it turns too far"};
  const std::string out = report::picked_text(p, {.full = true});
  for (const studies::Candidate& c : p.tried) CHECK_THAT(out, Contains(c.item.label.substr(0, 8)));
  CHECK_THAT(out, Contains("not decided"));
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
}

TEST_CASE("the arm's other tube is named where it stands in the way", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.part = "arm.lower";
  CHECK_THAT(report::picked_text(p, {}), !Contains("beside it is over"));
  p.other_tube_over = "upper arm";
  p.could_join = {"arm.upper"};
  p.tried[0].judged.only_other_tube = true;
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("The upper arm beside it is over") &&
                 Contains("1 of the 4 sizes tried do not pass for that alone") &&
                 Contains("--part arm.lower --part arm.upper"));
}

TEST_CASE("two parts that are both over are told to be picked together", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.lightest.reset();
  p.next_up.reset();
  p.next_down.reset();
  p.others_over = {"brace"};
  p.could_join = {"brace"};
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             Contains("No size passes, and as drawn brace is over its limit or not decided too") &&
                 Contains("--part lateral_link --part brace"));
}

TEST_CASE("prices become the cost of the part, and what has none is counted", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.by = studies::PickBy::cost;
  p.lightest->item.price = 10.0;
  p.tried[2] = *p.lightest;
  p.n_unpriced = 140;
  const std::string out = written::flat(report::picked_text(p, {}));
  CHECK_THAT(out, StartsWith("CHEAPEST THAT PASSES: ") && Contains("cost 8.64") &&
                      Contains("140 sizes have no price and are left out"));
}

TEST_CASE("a pick that was stopped says how much of it is complete", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.n_sizes = 16;
  CHECK_THAT(report::picked_text(p, {}),
             Contains("INTERRUPTED: 4 of 16 sizes are complete (25 %)"));
  p.tried.resize(2);
  p.lightest.reset();
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             StartsWith("NOT DECIDED: none of the 2 sizes tried before it was interrupted holds"));
}

TEST_CASE("combinations are shown where they gain a point, and how many were solved",
          "[report][pick]") {
  const std::string out = written::flat(report::grid_text(invented::grid(), {}));
  CHECK_THAT(out, StartsWith("BEST COMBINATIONS: 3 of the 1,600 combinations of sizes for the "
                             "lateral link and brace"));
  CHECK_THAT(out, Contains("90 combinations solved in full; 1,508 left where a") &&
                      Contains("2 make no sense") && Contains("1 between them gain less"));
  CHECK_THAT(report::grid_text(invented::grid(), {.full = true}), Contains("98 %"));
  studies::PickedGrid thin = invented::grid();
  thin.best.front().at_minimum =
      studies::Judged{.verdict = studies::Verdict::over, .utilization = 1.04};
  CHECK_THAT(written::flat(report::grid_text(thin, {})),
             Contains("with the least the mill may deliver:") && Contains("104 % OVER") &&
                 Contains("`sizes: minimum` in the case picks by that"));
  studies::PickedGrid none = invented::grid();
  none.best.clear();
  CHECK_THAT(report::grid_text(none, {}), StartsWith("NONE PASSES"));
  none.in_part = 0;
  CHECK_THAT(report::grid_text(none, {}), StartsWith("NOT DECIDED") && Contains("INTERRUPTED"));
}

TEST_CASE("what scatters is told with its share, interval and distributions", "[report]") {
  const std::string text = report::scattered_text(invented::scattered(), {.full = true});
  const std::string out = written::flat(text);
  CHECK_THAT(out, StartsWith("OVER IN SOME: 1 of 3 samples are over a limit (33.3 %; with 95 % "
                             "confidence between 6.1 and 79.2 %)"));
  CHECK_THAT(out, Contains("load") && Contains("+1.00  uniform 0.8 to 1.2") && Contains("seed 7") &&
                      Contains("basis of load: as asked") && Contains("CAUTION"));
  CHECK(written::widest(text) <= 80);
  CHECK(written::is_clean(text));
}

TEST_CASE("a pick that nothing decides says what is missing", "[report][pick]") {
  studies::Picked p = invented::picked();
  p.lightest.reset();
  p.next_up.reset();
  p.next_down.reset();
  for (studies::Candidate& c : p.tried) {
    c.judged = {.open = "joint rating, hard corner: its rating is missing"};
  }
  CHECK_THAT(written::flat(report::picked_text(p, {})),
             StartsWith("NOT DECIDED: none of 4 sizes for the lateral link can be decided: joint "
                        "rating, hard corner: its rating is missing"));
}

}  // namespace picked_text_test
