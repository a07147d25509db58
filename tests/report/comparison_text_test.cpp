#include "report/comparison_text.hpp"

#include <catch2/catch.hpp>

#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace comparison_text_test {
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

studies::Comparison with_moments(studies::Range braced, studies::Range bare) {
  studies::Comparison c;
  c.base.root_moment = braced;
  c.variants.push_back(invented::figures("no brace", studies::Verdict::over));
  c.variants[0].root_moment = bare;
  return c;
}

}  // namespace

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
brace: takes 11-77 % off the root moment, depending on rail and bushings
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

TEST_CASE("the brace's benefit is a range from moments with and without it", "[report][compare]") {
  // 1 - 4000/4500 = 11 %, 1 - 1000/4400 = 77 %
  CHECK(*report::brace_benefit(invented::comparison()) ==
        "brace: takes 11-77 % off the root moment, depending on rail and bushings");
  CHECK_THAT(*report::brace_benefit(with_moments({2.0, 8.0}, {1000.0, 1000.0})),
             StartsWith("brace: takes 99-99.8 %"));
  CHECK(*report::brace_benefit(with_moments({600.0, 600.0}, {1000.0, 1000.0})) ==
        "brace: takes 40 % off the root moment");
  CHECK_THAT(*report::brace_benefit(with_moments({500.0, 1200.0}, {1000.0, 1000.0})),
             StartsWith("brace: takes up to 50 % off the root moment or adds up to 20 %"));
  CHECK_THAT(*report::brace_benefit(with_moments({1100.0, 1200.0}, {1000.0, 1000.0})),
             StartsWith("brace: takes nothing off the root moment, adds 10-20 % to it"));
}

TEST_CASE("without a variant that has no brace nothing is said of it", "[report][compare]") {
  studies::Comparison c = invented::comparison();
  c.variants.erase(c.variants.begin());
  CHECK(!report::brace_benefit(c));
  CHECK(!report::brace_benefit(with_moments({}, {1000.0, 1000.0})));
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
