#include "report/case_list_text.hpp"

#include <catch2/catch.hpp>

#include "loads/case_library.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace case_list_text_test {
using Catch::Matchers::Contains;

TEST_CASE("the library names every kind with class, posture, factors, purpose and basis",
          "[report][cases]") {
  const std::string out = report::case_list_text(studies::case_list(), {});
  const std::string flat = written::flat(out);
  for (const loads::CaseInfo& info : loads::case_library()) {
    CHECK_THAT(flat, Contains(std::string(info.name)));
    CHECK_THAT(flat, Contains(loads::case_words(info.name)));
    CHECK_THAT(flat, Contains(std::string(info.factors)));
    CHECK_THAT(flat, Contains(std::string(info.checks)));
    CHECK_THAT(flat, Contains(std::string(info.basis)));
  }
  CHECK_THAT(flat, Contains("routine, ride height") && Contains("abuse, crossed"));
  CHECK_THAT(flat, Contains("not a certification set") && Contains("CAUTION"));
  CHECK_THAT(flat, Contains("straight line") && Contains("default:"));
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
  CHECK(!written::has_word(out, "safe"));
}

TEST_CASE("in a design each case has its numbers, or the reason why it is not run",
          "[report][cases]") {
  const std::string flat = written::flat(report::case_list_text(invented::cases(), {}));
  CHECK_THAT(flat, Contains("routine, ride height, runs") && Contains("ride height, not run"));
  // 8000 N = 1798 lbf, 4558 N = 1025 lbf.
  CHECK_THAT(flat, Contains("left wheel, at the ground (-1,800, 0, 1,800 lbf)"));
  CHECK_THAT(flat, Contains("tie rod 1,020 lbf"));
  CHECK_THAT(flat, Contains("not run: needs `steering:`"));
  studies::CaseList longest = invented::cases();
  longest.title = std::string(200, 'w');
  longest.kinds[0].name = std::string(200, 'w');
  longest.kinds[0].cases[0].name = std::string(200, 'w');
  CHECK(written::widest(report::case_list_text(longest, {})) <= 80);
}

}  // namespace case_list_text_test
