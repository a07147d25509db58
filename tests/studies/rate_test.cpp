#include "studies/rate.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <variant>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/starters.hpp"
#include "sections/stock.hpp"
#include "studies/design_caveats.hpp"
#include "studies/design_number.hpp"
#include "studies/run.hpp"
#include "tests/studies/read_case.hpp"

namespace rate_test {
using Catch::Matchers::Contains;
using studies::Rated;
using studies::Rating;
using studies::Verdict;
using studies_tests::read_case;

namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kInch = 0.0254;
constexpr double kPound = 4.4482216152605;
constexpr double kKsi = 6.894757293168361e6;
constexpr double kFyA36 = 36.0 * kKsi;  // ASTM A36, read

/// A flat bar of A36 plate on ball joints, 40 in long, under `pull` along its axis.
std::string bar(const std::string& section, double pull_lb, const std::string& more = "") {
  return fmt::format(
      "title: bar\n"
      "points: {{foot: [0, 0, 0 in], head: [0, 40, 0 in]}}\n"
      "members:\n"
      "  bar: {{from: foot, to: head, section: {}, from_joint: ball joint, to_joint: ball joint}}\n"
      "supports:\n"
      "  foot: {{at: foot}}\n"
      "  head: {{at: head, held: x z rx ry rz}}\n"
      "forces:\n"
      "  load: {{at: head, force_y: {} lb}}\n"
      "{}",
      section, pull_lb, more);
}

Verdict verdict_at(const parts::Design& design, double newtons) {
  const std::string text = fmt::format("{:.12g} N", newtons);
  return studies::run(cases::apply(design, {text, {{"forces.load.force_y", text}}}), text, {})
      .answer.verdict;
}

/// The two sides found enclose the limit by hand, and the checks say so themselves.
void check_upper_end(const Rated& rated, double by_hand) {
  REQUIRE(rated.holds_to.has_value());
  REQUIRE(rated.fails_at.has_value());
  CHECK(rated.holds_to->verdict == Verdict::within);
  CHECK(rated.fails_at->verdict == Verdict::over);
  CHECK(rated.holds_to->value <= by_hand);
  CHECK(rated.holds_to->value >= 0.985 * by_hand);
  CHECK(rated.fails_at->value >= by_hand);
  CHECK(rated.fails_at->value <= 1.006 * by_hand);
}

}  // namespace

// 1.5 N / (A Fy): the required factor of yield under routine loads is a proposal, no source.
TEST_CASE("a pulled bar holds up to A Fy / 1.5, rounded down", "[studies][rate]") {
  const parts::Design design = read_case(bar("1.3 x 1/4 in flat bar A36", 5000.0));
  const double limit = 1.3 * 0.25 * kInch * kInch * kFyA36 / 1.5;
  const Rating rating = studies::rate(design, {.path = "forces.load.force_y"});
  REQUIRE(rating.designs.size() == 1);
  const Rated& rated = rating.designs.front();
  check_upper_end(rated, limit);
  CHECK(rated.holds_to->value / kPound == Approx(7750.0).margin(51.0));
  // Three digits of the unit that is shown.
  const double tens = rated.holds_to->value / kPound / 10.0;
  CHECK(tens == Approx(std::round(tens)).margin(1e-9));
  CHECK(verdict_at(design, 0.999 * limit) == Verdict::within);
  CHECK(verdict_at(design, 1.001 * limit) == Verdict::over);
  CHECK(rated.limit == Approx(limit).epsilon(1e-3));
  CHECK(rated.proved);
  CHECK(!rated.holds_from.has_value());
  CHECK(!rated.to_the_end);
  CHECK(!rated.holds_again);
}

// AISC 360-22 E3 (from memory), K = 1, with the required factor 3 of a routine column.
TEST_CASE("a negative number holds from its column's load on", "[studies][rate]") {
  const parts::Design design = read_case(bar("1 x 1 in flat bar A36", -4000.0));
  const double slenderness = 40.0 / (1.0 / std::sqrt(12.0));
  const double elastic = kPi * kPi * 200.0e9 / (slenderness * slenderness);
  const double limit = 0.877 * elastic * kInch * kInch / 3.0;
  const Rating rating = studies::rate(design, {.path = "forces.load.force_y"});
  const Rated& rated = rating.designs.front();
  CHECK(rated.to_the_end);
  REQUIRE(rated.holds_from.has_value());
  CHECK(rated.holds_from->value >= -limit);
  CHECK(rated.holds_from->value <= -0.985 * limit);
  CHECK(rated.fails_below->value < rated.holds_from->value);
  CHECK(verdict_at(design, -0.995 * limit) == Verdict::within);
  CHECK(verdict_at(design, -1.005 * limit) == Verdict::over);
}

TEST_CASE("a number may hold in a range that ends on both sides", "[studies][rate]") {
  const parts::Design design = read_case(bar("1 x 1 in flat bar A36", -2000.0));
  const Rating rating = studies::rate(
      design, {.path = "forces.load.force_y", .from = -20000.0 * kPound, .to = 50000.0 * kPound});
  const Rated& rated = rating.designs.front();
  check_upper_end(rated, kInch * kInch * kFyA36 / 1.5);
  CHECK(rated.holds_from.has_value());
  CHECK(rated.points.size() < 40);
}

TEST_CASE("each variant has its own limit, and one that makes no sense says why",
          "[studies][rate]") {
  const parts::Design design =
      read_case(bar("1 x 1/4 in flat bar A36", 3000.0,
                    "variants: {twice: {members.bar.section: 2 x 1/4 in flat bar A36}}\n"));
  const Rating rating = studies::rate(design, {.path = "forces.load.force_y", .to = 1.0e5});
  REQUIRE(rating.designs.size() == 2);
  check_upper_end(rating.designs[0], 0.25 * kInch * kInch * kFyA36 / 1.5);
  check_upper_end(rating.designs[1], 0.50 * kInch * kInch * kFyA36 / 1.5);
  CHECK(rating.designs[1].name == "twice");
}

TEST_CASE("a load under which nothing holds, or all does, is said", "[studies][rate]") {
  const parts::Design design = read_case(bar("1 x 1/4 in flat bar A36", 3000.0));
  const Rated nowhere =
      studies::rate(design, {.path = "forces.load.force_y", .from = 5.0e4, .to = 9.0e4})
          .designs.front();
  CHECK(!nowhere.holds_to.has_value());
  const Rated throughout =
      studies::rate(design, {.path = "forces.load.force_y", .from = 10.0, .to = 900.0})
          .designs.front();
  CHECK(throughout.to_the_end);
  CHECK(throughout.holds_to->value == 900.0);
}

TEST_CASE("what cannot be varied is refused in words", "[studies][rate]") {
  const parts::Design design = read_case(bar("1 x 1/4 in flat bar A36", 3000.0));
  const auto rated = [&](const studies::Span& span) { return studies::rate(design, span); };
  CHECK_THROWS_WITH(
      rated({.path = "forces.load.force"}),
      Contains("forces.load.force: it is no number; there is from_start, force_x, force_y"));
  CHECK_THROWS_WITH(rated({.path = "forces.lode.force_y"}), Contains("did you mean `load`"));
  CHECK_THROWS_WITH(rated({.path = "vehicle.axle_weight"}), Contains("the case has no `vehicle`"));
  CHECK_THROWS_WITH(rated({.path = "forces.load.force_x"}), Contains("nothing lies between"));
  CHECK_THROWS_AS(rated({.path = "wheels.size"}), base::InputError);
}

// 1.5 N / (A Fy), as above. The push is at 97 % of the slender column's limit, whatever the yield
// strength; of the two pulls the lesser is the first in which a weak steel is seen to fail.
TEST_CASE("what governs may lie in a load case that was not near a limit", "[studies][rate]") {
  const double area = kInch * kInch;
  const double governs = 225.0e6;
  const auto pull = [&](double yield) {
    return fmt::format("at: head, force: [0, {:.6g}, 0 N]", area * yield / 1.5);
  };
  const parts::Design design =
      read_case(bar("1 x 1 in flat bar A36", 0.01,
                    fmt::format("load_cases:\n- {{name: lesser pull, {}}}\n- {{name: pull, {}}}\n"
                                "- {{name: push, at: head, force: [0, -18.8, 0 kN]}}\n",
                                pull(209.0e6), pull(governs))));
  const Rated rated = studies::rate(design, {.path = "bar.yield"}).designs.front();
  REQUIRE(rated.holds_from.has_value());
  CHECK(rated.holds_from->value >= governs);
  CHECK(rated.holds_from->value <= 1.01 * governs);
  REQUIRE(rated.holds_from->worst.has_value());
  CHECK(rated.holds_from->worst->load_case == "pull");
  CHECK(rated.fails_below->value <= governs);
  CHECK(rated.fails_below->value >= 0.999 * governs);
}

// The wall at which A Fy / 1.5 carries the load: A = pi t (D - t).
TEST_CASE("the wall of a tube can be rated too", "[studies][rate]") {
  const std::string text =
      "title: tube\n"
      "points: {foot: [0, 0, 0 m], head: [0, 1, 0 m]}\n"
      "members: {tube: {from: foot, to: head, section: 40 x 4 mm S355H, from_joint: ball joint,\n"
      "  to_joint: ball joint}}\n"
      "supports: {foot: {at: foot}, head: {at: head, held: x z rx ry rz}}\n"
      "forces: {load: {at: head, force_y: 60 kN}}\n";
  const Rated rated = studies::rate(read_case(text), {.path = "tube.wall"}).designs.front();
  REQUIRE(rated.holds_from.has_value());
  // At 0.9 of the wall (EN 10305-1 and the like, read) where the mill may leave a tenth away.
  const double area = 1.5 * 60.0e3 / 355.0e6;
  const double wall = 0.5 * (0.040 - std::sqrt(0.040 * 0.040 - 4.0 * area / kPi));
  CHECK(rated.holds_from->value >= 0.995 * wall);
  CHECK(rated.holds_from->value <= 1.02 * wall / 0.85);
  CHECK(rated.fails_below->verdict == Verdict::over);
}

// Where the strength of a weld zone counts from 0.05 L on, a larger tube may come out worse: the
// range told must not step over such sizes.
TEST_CASE("of a tube's outside all that is in stock is tried", "[studies][rate]") {
  const parts::Design design = read_case(std::string(cases::starter("link")));
  const studies::Rated as_drawn =
      studies::rate(design, {.path = "lateral_link.outside"}).designs.front();
  REQUIRE(as_drawn.holds_from.has_value());
  REQUIRE(as_drawn.holds_to.has_value());
  std::size_t n_within = 0;
  for (const sections::StockItem& item : sections::round_stock(true)) {
    const auto* tube = std::get_if<sections::RoundTube>(&item.shape);
    if (tube == nullptr || tube->outside < as_drawn.holds_from->value ||
        tube->outside > as_drawn.holds_to->value) {
      continue;
    }
    INFO(item.label);
    parts::Design changed = studies::with_number(design, "lateral_link.outside", tube->outside);
    changed.sizes = sections::Sizes::minimum;
    CHECK(studies::run(changed, "", {}).answer.verdict == studies::Verdict::within);
    CHECK(std::any_of(as_drawn.points.begin(), as_drawn.points.end(),
                      [&](const auto& point) { return point.value == tube->outside; }));
    ++n_within;
  }
  CHECK(n_within > 3);
}

// Geometry alone: 34 in at 15 degrees rise 8.8 in.
TEST_CASE("a drop that a brace does not reach is told, where the case as drawn is not so",
          "[studies][rate]") {
  const parts::Design design = read_case(std::string(cases::starter("link")));
  const auto with_drop = [&](const char* drop) {
    return cases::apply(design, {drop, {{"bracket.drop", drop}}});
  };
  CHECK(studies::more_caveats(with_drop("9 in"), design).empty());
  const std::vector<std::string> found = studies::more_caveats(with_drop("24 in"), design);
  REQUIRE(found.size() == 1);
  CHECK_THAT(found.front(),
             Contains("brace: it ends") && Contains("below the bottom of a rail level"));
  CHECK(studies::more_caveats(with_drop("24 in"), with_drop("24 in")).empty());
}

TEST_CASE("a rating that is stopped says so of each design", "[studies][rate]") {
  const parts::Design design = read_case(bar("1 x 1/4 in flat bar A36", 3000.0));
  const Rating rating = studies::rate(design, {.path = "forces.load.force_y"},
                                      [](const studies::Progress&) { return studies::Go::stop; });
  CHECK(rating.designs.front().stopped);
  CHECK(!rating.designs.front().holds_to.has_value());
}

}  // namespace rate_test
