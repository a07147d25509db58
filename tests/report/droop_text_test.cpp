#include "report/droop_text.hpp"

#include <catch2/catch.hpp>

namespace droop_text_test {
using report::droop_words;

namespace {

studies::Droop early() {
  return {.ends = {{"limit strap tight", 0.1016}, {"damper at full length", 0.127}},
          .free_travel = 0.127,
          .advised = 0.127 - 0.0254,
          .strap = 0.1016,
          .joint = {}};
}

}  // namespace

TEST_CASE("what ends the drop is said in order, then where a strap should come tight",
          "[report][droop]") {
  const std::vector<std::string> words = droop_words(early(), true);
  REQUIRE(words.size() == 2);
  CHECK(words[0] == "limit strap tight at 4.00 in, damper at full length at 5.00 in");
  CHECK(words[1] ==
        "strap length: tight at 4.00 in, 1.00 in short of the free travel of 5.00 in, because "
        "straps stretch (common practice, no source)");
}

TEST_CASE("a strap that is too long, or stretches too far, is said to be so", "[report][droop]") {
  studies::Droop late = early();
  late.strap = 0.130;
  CHECK(droop_words(late, false)[1] ==
        "the strap comes tight too late: something else has ended the drop before it");
  studies::Droop stretched = early();
  stretched.stretched = 0.140;
  CHECK(droop_words(stretched, false)[1] ==
        "caught by one strap, its stretch lets the axle down to 140 mm, beyond the free travel of "
        "127 mm");
}

}  // namespace droop_text_test
