#include <catch2/catch.hpp>

#include "studies/check.hpp"
#include "studies/pick.hpp"
#include "tests/studies/read_case.hpp"

namespace minimum_sizes_test {
using Catch::Contains;
using studies_tests::read_case;

namespace {

std::string frame(const std::string& section, const std::string& more = "") {
  return "title: cantilever\npoints:\n  root: [0, 0, 0 mm]\n  tip: [500, 0, 0 mm]\nmembers:\n"
         "  arm: {from: root, to: tip, section: " +
         section +
         "}\nsupports:\n  wall: {at: root}\nforces:\n  load: {at: tip, force_z: -500 N}\n" + more;
}

std::string assumed(const studies::Answer& answer, const std::string& key) {
  for (const parts::Assumption& a : answer.assumed) {
    if (a.key == key) return a.value + " [" + a.basis + "]";
  }
  return "";
}

}  // namespace

TEST_CASE("minimum sizes are used, named, and cost utilization", "[studies]") {
  const studies::Answer nominal = studies::check(read_case(frame("1-1/2 x 0.120 in DOM1020_SR")));
  const studies::Answer least =
      studies::check(read_case(frame("1-1/2 x 0.120 in DOM1020_SR", "sizes: minimum\n")));
  CHECK_THAT(assumed(nominal, "sizes"), Contains("nominal"));
  CHECK_THAT(assumed(least, "sizes"), Contains("minimum"));
  CHECK_THAT(assumed(least, "members.arm.section size"),
             Contains("minimum: ") && Contains("ASTM A513 type 5"));
  CHECK(least.findings.front().utilization() > 1.02 * nominal.findings.front().utilization());
}

TEST_CASE("an open section says what becomes of its warping", "[studies]") {
  const studies::Answer warps = studies::check(read_case(frame("100 x 50 x 6 mm channel S355")));
  std::string channel;
  for (const parts::Assumption& a : warps.assumed) channel += a.value + "\n";
  CHECK_THAT(channel, Contains("warps as it twists"));
  const studies::Answer open = studies::check(read_case(frame("60 x 60 x 6 mm angle S355")));
  std::string all;
  for (const parts::Assumption& a : open.assumed) all += a.value + "\n";
  CHECK_THAT(all, Contains("warping is left out"));
  std::string notes;
  for (const checks::Finding& f : open.findings) {
    for (const std::string& note : f.notes) notes += note + "\n";
  }
  CHECK_THAT(notes, Contains("open section under torque"));
  const studies::Answer closed =
      studies::check(read_case(frame("100 x 50 x 6 mm channel boxed with 6 mm plate S355")));
  for (const parts::Assumption& a : closed.assumed) CHECK_THAT(a.value, !Contains("warping"));
}

TEST_CASE("estimated strengths of a thick bar are listed", "[studies]") {
  const studies::Answer answer = studies::check(read_case(frame("40 mm round bar 1018_CD")));
  CHECK_THAT(assumed(answer, "members.arm.section strength"), Contains("up to 30 mm thick"));
}

TEST_CASE("other shapes than round ones are picked from their own kind", "[studies][pick]") {
  const studies::Picked picked = studies::pick(read_case(frame("60 x 40 x 3 mm S355H")), "arm");
  REQUIRE(picked.lightest);
  CHECK(std::holds_alternative<sections::RectangularTube>(picked.lightest->item.shape));
  CHECK_THROWS_WITH(studies::pick(read_case(frame("50 x 50 x 5 mm angle S355")), "arm"),
                    Contains("no list holds sizes like it") && Contains("--stock FILE"));
  const sections::StockItem own{.label = "own angle",
                                .list = "own.csv",
                                .inches = false,
                                .shape = sections::Angle{0.06, 0.06, 0.006},
                                .mark = "as entered"};
  const studies::Picked from_own =
      studies::pick(read_case(frame("50 x 50 x 5 mm angle S355")), "arm", {.more = {own}});
  CHECK(from_own.tried.size() == 1);
}

}  // namespace minimum_sizes_test
