#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "cases/patch.hpp"
#include "tests/cases/case_texts.hpp"
#include "tests/cases/rich_case.hpp"

namespace compare_words_test {
using case_texts::thrown;
using Catch::Matchers::Contains;

namespace {

/// "name: path -> value" of each variant that the words ask for, one a line.
std::string asked(std::string_view words, const std::string& text = case_texts::kLink) {
  std::string all;
  for (const parts::Variant& v : cases::variants_from_words(case_texts::design(text), words)) {
    if (!all.empty()) all += "\n";
    all += v.name;
    all += ":";
    for (const parts::Patch& p : v.patches) all += fmt::format(" {} -> {}", p.path, p.value);
  }
  return all;
}

std::string refused(std::string_view words) {
  return thrown([&] { (void)asked(words); });
}

}  // namespace

TEST_CASE("short words leave out a part, bend the link or change its stick", "[cases][compare]") {
  CHECK(asked("no brace") == "no brace: brace -> ");
  CHECK(asked("No  Brace") == "No Brace: brace -> ");
  CHECK(asked("straight") == "straight: lateral_link.bend -> none");
  CHECK(asked("2 in bend") == "2 in bend: lateral_link.bend -> 2 in off straight");
  CHECK(asked("1 in off straight") == "1 in off straight: lateral_link.bend -> 1 in off straight");
  CHECK(asked("2 in bend, forward") ==
        "2 in bend, forward: lateral_link.bend -> 2 in off straight, forward");
  CHECK(asked("1-1/2 in solid bar") ==
        "1-1/2 in solid bar: lateral_link.tube -> 1-1/2 in solid bar");
}

TEST_CASE("a straight link has no bend radius, and no points that it bends at",
          "[cases][compare]") {
  const auto with = [](const std::string& more) {
    std::string text = case_texts::kRich;
    const std::string line = "  through: [half way]\n";
    return text.replace(text.find(line), line.size(), more);
  };
  CHECK(asked("straight", with("  bend: 2 in off straight\n  bend_radius: 4 in\n")) ==
        "straight: lateral_link.bend -> none lateral_link.bend_radius -> none");
  CHECK(asked("3 in bend", with("  bend: 2 in off straight\n  bend_radius: 4 in\n")) ==
        "3 in bend: lateral_link.bend -> 3 in off straight");
  const std::string through = with("  through: [half way]\n  bend_radius: 4 in\n");
  CHECK(asked("straight", through) ==
        "straight: lateral_link.bend -> none lateral_link.through -> none "
        "lateral_link.bend_radius -> none");
  const parts::Design drawn = case_texts::design(through);
  const parts::Design changed =
      cases::apply(drawn, cases::variants_from_words(drawn, "straight").front());
  CHECK(changed.lateral_link->through.empty());
  CHECK(std::isnan(changed.lateral_link->bend_radius));
}

TEST_CASE("a path and a value change that value", "[cases][compare]") {
  CHECK(asked("lateral_link.tube = 1-1/2 x 0.188 in DOM") ==
        "lateral_link.tube = 1-1/2 x 0.188 in DOM: lateral_link.tube -> 1-1/2 x 0.188 in DOM");
  CHECK(asked("bracket.drop=7 in") == "bracket.drop = 7 in: bracket.drop -> 7 in");
  CHECK(asked("brace = none") == "brace = none: brace -> ");
  CHECK(asked("members.strut.section = 2 x 0.250 in DOM", case_texts::kRich) ==
        "members.strut.section = 2 x 0.250 in DOM: members.strut.section -> 2 x 0.250 in DOM");
}

TEST_CASE("alternatives in one line share what stands around them", "[cases][compare]") {
  CHECK(asked("1-1/2 x 0.120 or 0.188 or 0.250 in DOM") ==
        "1-1/2 x 0.120 in DOM: lateral_link.tube -> 1-1/2 x 0.120 in DOM\n"
        "1-1/2 x 0.188 in DOM: lateral_link.tube -> 1-1/2 x 0.188 in DOM\n"
        "1-1/2 x 0.250 in DOM: lateral_link.tube -> 1-1/2 x 0.250 in DOM");
  CHECK(asked("bracket.drop = 7 or 11 in") ==
        "bracket.drop = 7 in: bracket.drop -> 7 in\n"
        "bracket.drop = 11 in: bracket.drop -> 11 in");
  CHECK(asked("bracket.plates = 2 of 1/4 or 3/8 in A36") ==
        "bracket.plates = 2 of 1/4 in A36: bracket.plates -> 2 of 1/4 in A36\n"
        "bracket.plates = 2 of 3/8 in A36: bracket.plates -> 2 of 3/8 in A36");
  CHECK(asked("1-1/2 or 1-3/4 x 0.250 in DOM") ==
        "1-1/2 x 0.250 in DOM: lateral_link.tube -> 1-1/2 x 0.250 in DOM\n"
        "1-3/4 x 0.250 in DOM: lateral_link.tube -> 1-3/4 x 0.250 in DOM");
}

TEST_CASE("alternatives that are whole by themselves stand alone", "[cases][compare]") {
  CHECK(asked("1-1/2 in solid bar or 1-3/4 x 0.250 in DOM") ==
        "1-1/2 in solid bar: lateral_link.tube -> 1-1/2 in solid bar\n"
        "1-3/4 x 0.250 in DOM: lateral_link.tube -> 1-3/4 x 0.250 in DOM");
  CHECK(asked("no brace or straight") ==
        "no brace: brace -> \nstraight: lateral_link.bend -> none");
  CHECK(asked("vehicle.friction = 0.7 or 0.8") ==
        "vehicle.friction = 0.7: vehicle.friction -> 0.7\n"
        "vehicle.friction = 0.8: vehicle.friction -> 0.8");
}

TEST_CASE("words that cannot be applied are refused", "[cases][compare]") {
  CHECK(refused("no brase") == "there is no part `brase`; did you mean `brace`?");
  CHECK_THAT(refused("cheaper"), Contains("`cheaper` is not understood; would do: `no brace`"));
  CHECK(refused("no bracket") == "brace: a brace holds a bracket: add `bracket:`");
  CHECK(refused("bracket.drop = 7") ==
        "bracket.drop: 7 has no unit; a length needs one, e.g. in or mm");
  CHECK_THAT(refused("bracket.drop ="), Contains("is not `path = value`"));
  CHECK_THAT(refused("1-1/2 x 0.9 in DOM"), Contains("lateral_link.tube: a wall of 0.9 in"));
  CHECK(thrown([] { (void)asked("1-1/2 in solid bar", case_texts::kCantilever); }) ==
        "the case has no lateral link for `1-1/2 in solid bar`; say which part, e.g. "
        "`members.NAME.section = 1-1/2 in solid bar`");
}

// 1-1/2 x 0.250 in: the bar of equal area is sqrt(1.5^2 - 1.0^2) = 1.118 in across.
TEST_CASE("ready-made comparisons depend on the design", "[cases][compare]") {
  CHECK(asked("bar and tube") ==
        "1.5 in solid bar, equal diameter: lateral_link.tube -> 1.5 in solid bar\n"
        "1.118 in solid bar, equal mass: lateral_link.tube -> 1.118 in solid bar");
  CHECK(asked("straight and bent") == "2 in bend: lateral_link.bend -> 2 in off straight");
  CHECK(asked("every drop") ==
        "7 in drop: bracket.drop -> 7 in\n7 in drop, no brace: bracket.drop -> 7 in brace -> \n"
        "no brace: brace -> \n"
        "11 in drop: bracket.drop -> 11 in\n11 in drop, no brace: bracket.drop -> 11 in brace -> ");
  CHECK(asked("braced and unbraced") == "no brace: brace -> ");
  parts::Design design = case_texts::design(case_texts::kLink);
  // The brace left out, two bars, one bend, two drops with and without.
  CHECK(cases::usual_variants(design).size() == 8);
  cases::set(design, {"lateral_link.tube", "1-1/4 in solid bar"});
  const std::vector<parts::Variant> tubes = cases::variants_from_words(design, "bar and tube");
  REQUIRE(tubes.size() == 2);
  CHECK_THAT(tubes[0].name, Catch::Matchers::StartsWith("1.25 x "));
  design.brace.reset();
  design.lateral_link.reset();
  CHECK_THAT(thrown([&] { (void)cases::variants_from_words(design, "braced and unbraced"); }),
             Contains("no brace to compare with"));
}

TEST_CASE("commas part the values of a number, not the words of a phrase", "[cases][compare]") {
  CHECK(asked("drop = 5, 7 in") == "drop = 5 in: drop -> 5 in\ndrop = 7 in: drop -> 7 in");
  CHECK(asked("bracket.weld = 5/16 in fillet, both sides of each plate") ==
        "bracket.weld = 5/16 in fillet, both sides of each plate: bracket.weld -> 5/16 in fillet, "
        "both sides of each plate");
}

}  // namespace compare_words_test
