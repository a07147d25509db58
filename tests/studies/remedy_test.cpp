#include "studies/remedy.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "cases/small_case.hpp"
#include "cases/starters.hpp"
#include "sections/area_props.hpp"
#include "sections/stock.hpp"
#include "studies/check.hpp"
#include "studies/design_change.hpp"
#include "tests/studies/read_case.hpp"

namespace remedy_test {
using Catch::Matchers::Contains;
using studies::Answer;
using studies::Remedy;
using studies::Verdict;
using studies_tests::read_case;

namespace {

constexpr double kKsi = 6.894757293168361e6;
constexpr double kInch = 0.0254;

std::string rod(double pull) {
  return fmt::format(
      "title: rod\n"
      "points: {{foot: [0, 0, 0 in], head: [0, 40, 0 in]}}\n"
      "members:\n"
      "  rod: {{from: foot, to: head, section: 1 x 0.120 in DOM, from_joint: ball joint, to_joint: "
      "ball joint}}\n"
      "supports:\n"
      "  foot: {{at: foot}}\n"
      "  head: {{at: head, held: x z rx ry rz}}\n"
      "forces:\n"
      "  load: {{at: head, force_y: {} N}}\n",
      pull);
}

Answer answered(const parts::Design& design) {
  Answer answer = studies::check(design);
  studies::add_remedies(answer, design);
  return answer;
}

/// A pulled rod holds by 1.5 N / (A Fy), beside its welds: DOM 1020 35 ksi (ASTM A513, normalized,
/// read), 1018 bar 32 ksi (hot rolled, Shigley table A-20, read).
bool holds_by_hand(const sections::Shape& shape, double pull) {
  const bool bar = std::holds_alternative<sections::RoundBar>(shape);
  return 1.5 * pull <= sections::area_props(shape).area * (bar ? 32.0 : 35.0) * kKsi;
}

const Remedy& remedy_of(const Answer& answer, const std::string& part, const std::string& check) {
  const auto found =
      std::find_if(answer.remedies.begin(), answer.remedies.end(),
                   [&](const Remedy& r) { return r.part == part && r.check == check; });
  REQUIRE(found != answer.remedies.end());
  return *found;
}

}  // namespace

TEST_CASE("a rod that is over is mended by the lightest size that is nowhere smaller",
          "[studies]") {
  const double pull = 45.0e3;
  const Answer answer = answered(read_case(rod(pull)));
  const Remedy& remedy = remedy_of(answer, "rod", "yield");
  const sections::StockItem* lightest = nullptr;
  const std::vector<sections::StockItem> stock = sections::round_stock(true);
  for (const sections::StockItem& item : stock) {
    const auto* tube = std::get_if<sections::RoundTube>(&item.shape);
    const auto* bar = std::get_if<sections::RoundBar>(&item.shape);
    if (tube == nullptr && bar == nullptr) continue;
    const double outside = tube != nullptr ? tube->outside : bar->diameter;
    if (outside < 0.999 * kInch || (tube != nullptr && tube->wall < 0.119 * kInch)) continue;
    if (!holds_by_hand(item.shape, pull)) continue;
    const double area = sections::area_props(item.shape).area;
    if (lightest == nullptr || area < sections::area_props(lightest->shape).area) lightest = &item;
  }
  REQUIRE(lightest != nullptr);
  CHECK(remedy.change == lightest->label);
  CHECK(remedy.in_full);
  CHECK(remedy.tried > 1);
  const double yield = lightest->label.find("bar") == std::string::npos ? 35.0 : 32.0;
  CHECK(remedy.utilization ==
        Approx(1.5 * pull / (sections::area_props(lightest->shape).area * yield * kKsi))
            .epsilon(2e-3));
}

TEST_CASE("what no size mends is said with the farthest that was tried", "[studies]") {
  const Answer answer = answered(read_case(rod(4.0e6)));
  const Remedy& remedy = remedy_of(answer, "rod", "yield");
  CHECK(remedy.change.empty());
  CHECK(remedy.tried > 0);
  CHECK_FALSE(remedy.most.empty());
}

TEST_CASE("nothing is tried where nothing is over", "[studies]") {
  const Answer answer = answered(read_case(rod(10.0e3)));
  CHECK(answer.verdict == Verdict::within);
  CHECK(answer.remedies.empty());
  CHECK_FALSE(answer.together.has_value());
}

TEST_CASE("the changes of several parts hold at once, and each does where it is made",
          "[studies]") {
  std::string text(cases::small_case());
  const auto put = [&](const std::string& old, const std::string& with) {
    const std::size_t at = text.find(old);
    REQUIRE(at != std::string::npos);
    text.replace(at, old.size(), with);
  };
  put("weld: 5/16 in", "weld: 1/4 in");
  parts::Design design = read_case(text);
  design.variants.clear();
  const Answer answer = answered(design);
  const Remedy& link = remedy_of(answer, "lateral_link", "column");
  const Remedy& weld = remedy_of(answer, "bracket", "weld");
  CHECK(link.change == "1-5/8 x 0.120 in DOM tube");
  CHECK(weld.change == "root weld, leg 0.3125 in");
  CHECK(weld.utilization < 1.0);
  REQUIRE(answer.together.has_value());
  CHECK(answer.together->verdict == Verdict::within);
  // As the case file says it.
  put("tube: 1-1/2 x 0.120 in DOM", "tube: 1-5/8 x 0.120 in DOM");
  put("weld: 1/4 in", "weld: 5/16 in");
  const Answer changed = studies::check(read_case(text));
  CHECK(changed.verdict == Verdict::within);
  for (const checks::Finding& f : changed.findings) {
    if (f.part == "bracket" && f.check == "weld") {
      CHECK(weld.utilization == Approx(f.utilization()).epsilon(0.01));
    }
  }
}

TEST_CASE("plates that a bolt bears too hard on are tried with a wider bolt too", "[studies]") {
  std::string text(cases::starter("link"));
  const std::string before = "  bend: none";
  text.replace(text.find(before), before.size(), "  bolt: 5/8 in grade 8\n" + before);
  checks::Finding hole;
  hole.part = "bracket";
  hole.check = "bolt hole";
  std::vector<std::string> words;
  for (const studies::ChangeLadder& ladder : studies::changes_for(read_case(text), hole)) {
    for (const studies::DesignChange& change : ladder) words.push_back(change.words);
  }
  const auto tried = [&](const std::string& what) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& w) { return w.find(what) != std::string::npos; });
  };
  CHECK(tried("bolt 7/8"));
  CHECK(tried("plates of"));
  CHECK_FALSE(tried("bolt 5/8"));  // no grade bears on less
}

TEST_CASE("what no one size mends is left, not guessed", "[studies]") {
  checks::Finding tips;
  tips.part = "the axle tips on its springs and bushings";
  tips.check = "frame stability";
  CHECK(studies::changes_for(read_case(std::string(cases::small_case())), tips).empty());
}

// 2 kN on 0.8 m bends a 25 x 1.5 mm tube to 1.6 kN m / 609 mm^3 = 2630 MPa, ten times what it may;
// while the frame cannot carry the load at all, that cannot be said of the tube that is there.
TEST_CASE("what was not decided and comes out over is no remedy", "[studies][remedy]") {
  const Answer answer = answered(
      read_case("title: post\n"
                "points: {a: [0, 0, 0 mm], b: [0, 0, 800 mm]}\n"
                "members: {post: {from: a, to: b, section: 15 x 1.5 mm E355_N, welded: no}}\n"
                "supports: {a: {at: a}}\n"
                "forces: {side: {at: b, force_x: 2 kN}}\n"));
  const Remedy& remedy = remedy_of(answer, "post", "frame stability");
  CHECK(remedy.change.empty());
  CHECK_THAT(remedy.spoils, Contains("yield does not hold"));
}

}  // namespace remedy_test
