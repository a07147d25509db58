#include "report/comparison_text.hpp"

#include <catch2/catch.hpp>

#include "report/conclusion_text.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace comparison_text_test {
using Catch::Matchers::Contains;

TEST_CASE("base and one variant stand side by side", "[report][compare]") {
  studies::Comparison c = invented::comparison();
  c.inches = false;
  c.variants.resize(1);
  CHECK(report::comparison_text(c, {}) ==
        R"(OVER: as drawn, worst bracket, weld 118 %. Not offered yet: other welds.
                as drawn             no brace
verdict         OVER                 OVER
worst           bracket, weld 118 %  bracket, weld 362 % (3.07 x base)
tip deflection  1.20-4.80 mm         1.20-4.80 mm (1.00 x base)
root moment     1,000-4,000 N m      4,400-4,500 N m (1.12-4.40 x base)
root weld       118 %                362 % (3.07 x base)
worst stress    331 MPa bracket      331 MPa bracket (1.00 x base)
buckles at      7.90 x load          7.90 x load (1.00 x base)
mass            11.3 kg              11.3 kg (1.00 x base)
ranges run over the stiffness of rail, brace end and bushings; 100 % = the
  limit; buckles at: lowest multiple of a load case
no brace stays over the limit; its worst check, bracket, weld, rises to 362 %
  from 118 %; with the brace the root moment falls to 23 % (soft rail) to 89 %
  (stiff rail) of that without it.
CAUTION: these parts can kill when they fail. Qualified welder, procedure and
  inspection; local vehicle code; a licensed engineer decides.
)");
}

TEST_CASE("variants that are too wide side by side stand one below the other",
          "[report][compare]") {
  studies::Comparison c = invented::comparison();
  c.variants[0].name = "no brace, and a longer name than fits beside the others on a screen";
  const std::string out = report::comparison_text(c, {});
  CHECK(written::widest(out) <= 80);
  CHECK_THAT(out, Contains("1-1/2 in solid bar"));
  CHECK(written::is_clean(out));
}

TEST_CASE("what the brace does to the root moment is told at both ends of the rail's stiffness",
          "[report][compare]") {
  // 1000 / 4400 and 4000 / 4500
  CHECK(*report::brace_benefit(invented::comparison()) ==
        "brace: root moment 23 % (soft rail) to 89 % (stiff rail) of that without it");
  studies::Comparison c = invented::comparison();
  c.base.root_moments = {{"rail", 5000.0}};
  c.variants[0].root_moments = {{"rail", 4000.0}};
  CHECK_THAT(*report::brace_benefit(c), Contains("root moment 125 % of that"));
}

TEST_CASE("without a variant that has no brace nothing is said of it", "[report][compare]") {
  studies::Comparison c = invented::comparison();
  c.variants.erase(c.variants.begin());
  CHECK(!report::brace_benefit(c));
  c = invented::comparison();
  c.base.root_moments.clear();
  CHECK(!report::brace_benefit(c));
}

TEST_CASE("each pair ends in one sentence", "[report][compare]") {
  studies::Comparison c = invented::comparison();
  c.base.root_moments = {{"soft rail", 700.0}, {"stiff rail", 8200.0}};
  c.base.parts = {{"brace", 0.41, "end weld"}};
  c.variants[0].root_moments = {{"soft rail", 10000.0}, {"stiff rail", 10000.0}};
  CHECK(report::conclusion(c, 0) ==
        "no brace stays over the limit; its worst check, bracket, weld, rises to 362 % from 118 %; "
        "with the brace the root moment falls to 7.0 % (soft rail) to 82 % (stiff rail) of that "
        "without it; the brace itself is governed by end weld at 41 %.");
  c.variants[1].verdict = studies::Verdict::within;
  c.variants[1].worst = "brace, column";
  c.variants[1].worst_utilization = 0.9;
  c.variants[1].root_moments = c.base.root_moments;
  CHECK(report::conclusion(c, 1) ==
        "1-1/2 in solid bar comes within the limits checked; its worst check is brace, column at "
        "90 %, in place of bracket, weld at 118 %; 1.42 times the mass.");
  // A drop without the brace is set beside the same drop with it, not beside another.
  c.variants[0].name = "6 in drop, no brace";
  CHECK_THAT(report::conclusion(c, 0), !Contains("with the brace"));
  c.variants[1].name = "6 in drop";
  c.variants[1].root_moments = {{"stiff rail", 5000.0}};
  CHECK_THAT(report::conclusion(c, 0), Contains("falls to 50 % (stiff rail)"));
}

TEST_CASE("a variant that could not be run is named with the reason", "[report][compare]") {
  studies::Comparison c = invented::comparison();
  c.failures = {"no link: point `axle bolt` can move along y"};
  CHECK_THAT(report::comparison_text(c, {}),
             Contains("could not be run: no link: point `axle bolt` can move along y"));
}

TEST_CASE("what is not known of a design shows as a dash or in words", "[report][compare]") {
  studies::Comparison c;
  c.base.name = "as drawn";
  c.base.worst = "bracket, weld";
  c.variants.resize(1);
  c.variants[0].name = "other";
  for (const std::string& out : {report::comparison_text(c, {}), report::variant_lines(c, {})}) {
    CHECK(written::is_clean(out));
    CHECK_THAT(out, Contains("not decided") || Contains("NOT DECIDED"));
  }
  CHECK_THAT(report::variant_lines(c, {}), !Contains("root moment"));
}

}  // namespace comparison_text_test
