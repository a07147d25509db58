#include "report/failure_order_text.hpp"

#include <catch2/catch.hpp>

#include "report/text.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace failure_order_text_test {
using Catch::Matchers::Contains;
using studies::GivesAt;

namespace {

std::vector<studies::FailureOrder> orders() {
  return {{.load_case = "hard stop",
           .set = "soft rail",
           .order = {{"lateral_link", "yield", GivesAt::How::bends, 2.34, true},
                     {"bracket", "weld", GivesAt::How::breaks, 2.9, false}}},
          {.load_case = "slid into a curb, left wheel",
           .set = "stiff rail",
           .order = {{"bracket", "yield", GivesAt::How::bends, 1.4, false},
                     {"bracket", "weld", GivesAt::How::breaks, 1.9, false},
                     {"lateral_link", "column", GivesAt::How::buckles, 2.3, true}},
           .left_out = {"brace, joint rating"},
           .breaks_first = true}};
}

}  // namespace

TEST_CASE("what gives is told in order, with the multiples", "[report][order]") {
  CHECK(report::order_words(orders()[0]) ==
        "lateral link bends first, at 2.34 times; then bracket, weld breaks at 2.90 "
        "times");
  const auto alone = [](const char* check) {
    studies::FailureOrder one;
    one.order = {{"brace", check, GivesAt::How::breaks, 1.5, false}};
    return report::order_words(one);
  };
  CHECK(alone("rail wall") == "brace, rail wall gives first, at 1.50 times");
  CHECK(alone("joint tilt") == "brace, joint tilt reaches its limit first, at 1.50 times");
  CHECK(alone("joint rating") == "brace, joint rating is reached first, at 1.50 times");
  CHECK(report::order_words({}) == "nothing, as far as the load was followed");
}

TEST_CASE("what breaks before a tube bends is flagged, on the screen too", "[report][order]") {
  const std::string section = written::flat(report::failure_order_section(orders(), {}));
  CHECK_THAT(section, Contains("hard stop (soft rail): lateral link bends first"));
  CHECK_THAT(section,
             Contains("left wheel (stiff rail): gives before a tube bends: bracket bends first"));
  CHECK_THAT(section, Contains("not decided, so not in it: brace, joint rating"));
  CHECK(report::breaks_first_sentence({orders()[0]}).empty());
  studies::Answer answer = invented::answer();
  CHECK_THAT(report::text(answer, {}), !Contains("before a tube"));
  answer.failure_orders = orders();
  const std::string screen = report::text(answer, {.command_for_more = "linkmargin check c.yaml"});
  CHECK_THAT(written::flat(screen), Contains("order: bracket, weld breaks before a tube "
                                             "(slid into a curb, left wheel)"));
  CHECK(written::lines(screen).size() <= 25);
  CHECK(written::widest(screen) <= 80);
}

}  // namespace failure_order_text_test
