#include "report/droop_text.hpp"

#include <catch2/catch.hpp>

#include "report/posture_text.hpp"

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

TEST_CASE("a damper that is at its shortest before the bump stop is crushed is no stop",
          "[report][droop]") {
  studies::Bump bump{.ends = {{"bump stop met", 0.070},
                              {studies::kDamperShortest, 0.090},
                              {studies::kFullBump, 0.110}},
                     .full = 0.110,
                     .solved = 0.095};
  const std::vector<std::string> words = report::bump_words(bump, false);
  REQUIRE(words.size() == 3);
  CHECK(words[1].find("the damper would be the stop") == 0);
  CHECK(words[2] ==
        "solved, the load cases bring the axle 95.0 mm up: past bump stop met, damper at its "
        "shortest");
  bump.ends[1].drop = 0.120;
  CHECK(report::bump_words(bump, false).size() == 2);
}

TEST_CASE("a bushing that gives more than it is thick is said to come up solid",
          "[report][posture]") {
  studies::PostureExtremes there{.posture = "ride height", .joints = {}, .stops = {}};
  there.joints = {{.part = "lateral_link", .where = "frame bolt", .give = 0.012}};
  CHECK(report::squeezed_words({there}, false).empty());
  there.joints[0].give = 0.024;
  CHECK(report::squeezed_words({there}, false)
            .find("bushing of lateral link, frame bolt: its rate lets it give 24.0 mm") == 0);
}

}  // namespace droop_text_test
