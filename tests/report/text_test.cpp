#include "report/text.hpp"

#include <catch2/catch.hpp>

#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace text_test {
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

/// With what was tried against its weld.
studies::Answer over() {
  studies::Answer a = invented::answer();
  a.remedies = {{.part = "bracket",
                 .check = "weld",
                 .where = "root weld at the rail",
                 .change = "root weld, leg 0.3125 in",
                 .utilization = 0.93,
                 .tried = 2}};
  return a;
}

std::string screen(const studies::Answer& answer) {
  return report::text(answer, {.command_for_more = "linkmargin check case.yaml --all"});
}

std::string read_on(const studies::Answer& answer) {
  return written::flat(screen(answer));
}

studies::Answer all_within() {
  studies::Answer a = invented::answer();
  a.findings = {invented::column("brace", 4.02, 3.0)};
  a.verdict = studies::Verdict::within;
  a.comparison.reset();
  return a;
}

studies::Answer undecided() {
  studies::Answer a = all_within();
  checks::leave_undecided(a.findings[0], "the rating of its ball joint is missing");
  a.verdict = studies::Verdict::not_decided;
  return a;
}

}  // namespace

TEST_CASE("the answer on a screen reads like this", "[report][text]") {
  CHECK(screen(over()) ==
        R"(OVER: bracket, root weld, at 118 % of the limit (slid into a curb, left wheel).
Not offered yet: other welds.
part          governed    worst case                    safety asked utilization
              by                                        factor
bracket       root weld   slid into a curb, left wheel    1.27  1.50       118 %
lateral link  column      slid into a curb, right wheel   2.21  2.00        90 %
brace         column      slid into a curb, right wheel   4.02  1.50        37 %
utilization: 100 % = the limit; safety factor: multiple of the load at which it
  just holds; asked: factor required
tried, mends it: bracket: root weld, leg 0.3125 in (then 93 %)
buckles first: lateral link at 7.90 times slid into a curb, right wheel
each alone, between its joints: lateral link at 8.10 times; brace at 11.0 times
variant             verdict  worst          root moment         x base
as drawn            OVER     bracket 118 %  738-2,950 ft-lbf
no brace            OVER     bracket 362 %  3,250-3,320 ft-lbf  1.12-4.40
1-1/2 in solid bar  OVER     bracket 118 %  738-2,950 ft-lbf    1.00
brace: root moment 23 % (soft rail) to 89 % (stiff rail) of that without it
assumed: friction 0.9, hub height 17.85 in, mass center height unknown, axle
  weight 5500 lb as force, and 10 more (--all: each with its basis)
not checked: steering and parking loads; load cases not run: both wheels hit
  hard, dragged over a rock, hard stop, one wheel hits hard; and 2 more (--all)
CAUTION: these parts can kill when they fail. Qualified welder, procedure and
  inspection; local vehicle code; a licensed engineer decides.
more: linkmargin check case.yaml --all
)");
}

TEST_CASE("the answer to a small case fits a screen of 25 lines and 80 columns", "[report][text]") {
  const std::string out = screen(over());
  CHECK(written::lines(out).size() <= 25);
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
}

TEST_CASE("what was tried is said of each part, and what was not", "[report][text]") {
  studies::Answer a = over();
  a.remedies.push_back({.part = "arm, left", .check = "yield", .change = "2 in bar", .tried = 3});
  a.remedies.push_back({.part = "arm, right", .check = "yield", .change = "2 in bar", .tried = 1});
  a.remedies.push_back(
      {.part = "frame", .check = "yield", .change = {}, .most = "a plate of 1 in", .tried = 9});
  a.remedies.push_back({.part = "axle", .check = "frame stability", .change = {}});
  a.remedies.push_back({.part = "brace", .check = "column", .change = {}, .left = true});
  a.together = {studies::Verdict::over, "frame, yield", 1.2};
  const std::string out = read_on(a);
  CHECK_THAT(out, Contains("arm, left and arm, right: 2 in bar;"));
  CHECK_THAT(out, Contains("frame: nothing of 9 tried one at a time, up to a plate of 1 in"));
  CHECK_THAT(out, Contains("axle: no one size of the case is known to mend it"));
  CHECK_THAT(out, Contains("brace: not tried (large case)"));
  CHECK_THAT(out, Contains("all at once: OVER, worst frame, yield, 120 %"));
  CHECK(written::widest(screen(a)) <= 80);
}

TEST_CASE("what is judged at ride height is said to be", "[report][text]") {
  studies::Answer a = invented::answer();
  CHECK_THAT(read_on(a), !Contains("at ride height"));
  a.findings.front().notes.push_back(std::string(studies::kAtRideHeight) + ": it asks 12 % more");
  CHECK_THAT(read_on(a), Contains("in second order at ride height, which asks more than the place "
                                  "reached: bracket"));
}

TEST_CASE("the verdict comes first and names what it does not cover", "[report][text]") {
  CHECK_THAT(read_on(invented::answer()), StartsWith("OVER: bracket, root weld, at 118 %"));
  CHECK_THAT(read_on(all_within()), StartsWith("WITHIN THE LIMITS CHECKED: "));
  CHECK_THAT(read_on(undecided()), StartsWith("NOT DECIDED: brace, column") &&
                                       Contains("the rating of its ball joint is missing"));
  for (const studies::Answer& a : {invented::answer(), all_within(), undecided()}) {
    const std::string out = screen(a);
    CHECK_THAT(out.substr(0, 400), Contains("Not offered yet: other welds"));
    CHECK(written::is_clean(out));
    CHECK(written::widest(out) <= 80);
  }
}

TEST_CASE("a part that is over is not hidden behind one that is not decided", "[report][text]") {
  studies::Answer a = invented::answer();
  checks::Finding open = invented::yield("bracket", "plates at the rail", 2.0, 1.5);
  checks::leave_undecided(open, "its link turns too far");
  a.findings.insert(a.findings.begin(), open);
  const std::string out = read_on(a);
  CHECK_THAT(out, StartsWith("OVER: bracket, root weld, at 118 %"));
  CHECK_THAT(out, Contains("1 over, 1 not decided") || Contains("1 not decided"));
  CHECK_THAT(screen(a), Contains("bracket       root weld"));
  CHECK_THAT(out, Contains("not decided: bracket: its link turns too far"));
}

TEST_CASE("one reason that leaves several parts open is said once", "[report][text]") {
  studies::Answer a = invented::answer();
  for (const char* part : {"brace", "lateral_link"}) {
    checks::Finding open = invented::column(part, 2.0, 1.5);
    checks::leave_undecided(open, "the link turns too far");
    a.findings.insert(a.findings.begin(), open);
  }
  CHECK_THAT(read_on(a), Contains("not decided: lateral link; brace: the link turns too far") &&
                             Contains("decided beside that, the worst: "));
}

TEST_CASE("a tipping axle is named as such, apart from the member that buckles", "[report][text]") {
  studies::Answer a = invented::answer();
  const std::vector<studies::CriticalFactor> members = a.critical;
  a.critical = {
      {1.6, "the axle tips on its springs and bushings", true, false, "hard stop", "soft rail"}};
  a.critical.insert(a.critical.end(), members.begin(), members.end());
  const std::string out = read_on(a);
  CHECK_THAT(out, Contains("the axle tips on its springs and bushings at 1.60 times hard stop"));
  CHECK_THAT(out, Contains("then lateral link at 7.90"));
}

TEST_CASE("no compression is said, and so is a search that failed", "[report][text]") {
  studies::Answer a = all_within();
  a.critical.clear();
  a.own.clear();
  CHECK_THAT(read_on(a), Contains("buckles first: nothing in the load cases solved"));
  checks::Finding failed;
  failed.check = "frame stability";
  failed.part = "assembly";
  checks::leave_undecided(failed, "the critical load factor of the frame was not found");
  a.findings.insert(a.findings.begin(), failed);
  a.verdict = studies::Verdict::not_decided;
  CHECK_THAT(read_on(a), !Contains("nothing in the load cases") && Contains("not found"));
}

TEST_CASE("an answer without anything in it still prints no false word", "[report][text]") {
  const std::string out = screen({});
  CHECK_THAT(out, StartsWith("NOT DECIDED: nothing was checked."));
  CHECK_THAT(out, Contains("CAUTION") && !Contains("WITHIN"));
  CHECK(written::is_clean(out));
}

TEST_CASE("color is used only when it is asked for", "[report][text]") {
  CHECK(screen(invented::answer()).find('\x1b') == std::string::npos);
  const std::string colored = report::text(invented::answer(), {.color = true});
  CHECK_THAT(colored, StartsWith("\x1b[1;31mOVER\x1b[0m: bracket"));
}

TEST_CASE("what a finding warns of stands under the table", "[report][text]") {
  studies::Answer a = all_within();
  CHECK_THAT(read_on(a), !Contains("beware:"));
  a.findings[0].notes = {"nothing to see", "beware: the load slips it", "warning: near its edge"};
  CHECK_THAT(read_on(a), Contains("beware: brace, between its joints: the load slips it") &&
                             !Contains("nothing to see") && !Contains("near its edge"));
}

}  // namespace text_test
