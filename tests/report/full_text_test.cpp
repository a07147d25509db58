#include "report/full_text.hpp"

#include <catch2/catch.hpp>

#include "report/finding_text.hpp"
#include "report/text.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace full_text_test {
using Catch::Matchers::Contains;

TEST_CASE("a finding can be followed from symbols to numbers to the result", "[report][full]") {
  CHECK(report::finding_text(invented::root_weld(), false, {}) ==
        R"(bracket: root weld at the rail                                       118 %  OVER
  in slid into a curb, left wheel; soft rail, brace end 10 kN/mm, bushings as
    given
  tau = F / A
    = 40000 N / 120.9 mm^2 = 330.9 MPa
  capacity = 0.60 F_EXX
    = 0.60 * 482.6 MPa = 289.6 MPa
  demand 330.9 MPa, capacity 289.6 MPa; safety factor 1.27, asked 1.50;
    utilization 118 %
  source: elastic line method on the throat; nominal 0.60 F_EXX (AISC 360-22
    J2.4)
  note: the leg decides, not the plate
)");
}

TEST_CASE("a finding that is not decided says why and shows no number for it", "[report][full]") {
  checks::Finding open = invented::root_weld();
  checks::leave_undecided(open, "one line cannot hold a moment about itself");
  const std::string out = report::finding_text(open, true, {});
  CHECK_THAT(out, Contains("NOT DECIDED") &&
                      Contains("not decided: one line cannot hold a moment about itself"));
  CHECK_THAT(out, !Contains("utilization"));
}

TEST_CASE("the full answer holds every finding, assumption, case, set, mass and caution",
          "[report][full]") {
  const studies::Answer a = invented::answer();
  const std::string out = report::text(a, {.full = true, .program = "linkmargin 0.1.0, commit 1"});
  const std::string flat = written::flat(out);
  for (const checks::Finding& f : a.findings) CHECK_THAT(flat, Contains(f.where));
  for (const parts::Assumption& s : a.assumed) CHECK_THAT(flat, Contains(s.basis));
  for (const std::string& c : a.load_cases) CHECK_THAT(flat, Contains(c));
  for (const std::string& s : a.sets) CHECK_THAT(flat, Contains(s));
  for (const std::string& n : a.not_checked) CHECK_THAT(flat, Contains(n));
  for (const std::string& c : studies::cautions()) CHECK_THAT(flat, Contains(c));
  CHECK_THAT(flat, Contains("9.04 lb") && Contains("computed by linkmargin 0.1.0, commit 1"));
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
}

TEST_CASE("the full answer shows each load case in balance, forces then moments",
          "[report][full]") {
  const std::string out = report::text(invented::answer(), {.full = true});
  // 42812.5 N / 4.4482 N = 9625 lbf; 2000 N m / 1.3558 N m = 1475 ft-lbf. What is lost in rounding
  // beside the largest is 0.
  CHECK_THAT(out, Contains("acts:") && Contains("holds:"));
  CHECK_THAT(out, Contains("left wheel     0  -9,620   5,500  -1,480   0   0"));
  CHECK_THAT(written::flat(out), Contains("left over: 2.0e-12 of the largest"));
}

TEST_CASE("a load case that was not solved is listed with the reason", "[report][full]") {
  studies::Answer a = invented::answer();
  a.solved[0].converged = false;
  a.solved[0].trouble = "the second-order solution did not converge";
  CHECK_THAT(report::full_text(a, {}), Contains("the second-order solution did not"));
}

TEST_CASE("the most an answer can hold keeps to 80 columns", "[report][full]") {
  studies::Answer a = invented::answer();
  const std::string longest(200, 'w');
  a.title = longest;
  a.findings[0].part = longest;
  a.findings[0].lines[0].symbols = longest;
  a.assumed[0].basis = longest;
  a.masses[0].part = longest;
  a.comparison->variants[0].name = longest;
  for (const bool full : {false, true}) {
    CHECK(written::widest(report::text(a, {.full = full})) <= 80);
  }
}

}  // namespace full_text_test
