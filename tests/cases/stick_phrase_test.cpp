#include <catch2/catch.hpp>

#include "cases/phrase.hpp"
#include "tests/cases/case_texts.hpp"

namespace stick_phrase_test {
using case_texts::thrown;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;
using parts::Stick;

namespace {

parts::Design with_own_names() {
  parts::Design design;
  sections::Material own = sections::find_material("A36").value();
  own.id = "shop steel";
  design.materials.push_back({"shop steel", own});
  design.sections.push_back({"beam", sections::TwinPlate{0.1, 0.008, 0.05}});
  design.sections.push_back({"beam wide", sections::TwinPlate{0.1, 0.008, 0.09}});
  return design;
}

Stick stick(std::string_view text) {
  return cases::read_phrase<Stick>(text, with_own_names()).value;
}

std::string refused(std::string_view text) {
  return thrown([&] { (void)cases::read_phrase<Stick>(text, with_own_names()); });
}

}  // namespace

TEST_CASE("the last unit of a tube serves both of its sizes", "[cases][phrase]") {
  for (const char* text :
       {"1-1/2 x 0.250 in DOM", "1-1/2 in x 0.250 in DOM", "1-1/2\" x 0.250\" DOM",
        "1 1/2 X 1/4 in.  dom tube", "1.5x0.25in DOM", "38.1 x 6.35 mm DOM"}) {
    INFO(text);
    const Stick read = stick(text);
    const auto& tube = std::get<sections::RoundTube>(read.shape);
    CHECK_THAT(tube.outside, WithinRel(0.0381, 1e-12));
    CHECK_THAT(tube.wall, WithinRel(0.00635, 1e-12));
    CHECK(read.material.id == "DOM1020_SR");
  }
}

TEST_CASE("a bar without a steel is 1018, and that is said", "[cases][phrase]") {
  const auto phrase = cases::read_phrase<Stick>("1-1/2 in solid bar", parts::Design{});
  CHECK_THAT(std::get<sections::RoundBar>(phrase.value.shape).diameter, WithinRel(0.0381, 1e-12));
  CHECK(phrase.value.material.id == "1018_CD");
  REQUIRE(phrase.assumed.size() == 1);
  CHECK(phrase.assumed[0].key == "steel");
  CHECK(phrase.assumed[0].value == "1018_CD");
  CHECK(cases::read_phrase<Stick>("1-1/2 in round bar A36", parts::Design{}).assumed.empty());
  CHECK(stick("1-1/2 in A36 round bar") == stick("1-1/2 in round bar A36"));
}

TEST_CASE("three sizes are a rectangular tube, with the usual corner unless one is given",
          "[cases][phrase]") {
  const auto phrase = cases::read_phrase<Stick>("3 x 2 x 0.125 in A500C_rect", parts::Design{});
  const auto& tube = std::get<sections::RectangularTube>(phrase.value.shape);
  CHECK_THAT(tube.depth, WithinRel(0.0762, 1e-12));
  CHECK_THAT(tube.width, WithinRel(0.0508, 1e-12));
  CHECK_THAT(tube.corner, WithinRel(2 * 0.125 * 0.0254, 1e-12));
  CHECK(phrase.assumed.size() == 1);
  const Stick given = stick("40 x 40 x 3 mm, 7 mm corners, S355H");
  CHECK_THAT(std::get<sections::RectangularTube>(given.shape).corner, WithinRel(0.007, 1e-12));
}

TEST_CASE("flat bars, sections of the case and its own steels read", "[cases][phrase]") {
  CHECK(std::holds_alternative<sections::FlatBar>(stick("2 x 1/4 in flat bar A36").shape));
  CHECK(stick("beam A36").shape == sections::Shape(sections::TwinPlate{0.1, 0.008, 0.05}));
  CHECK(stick("Beam Wide A36").shape == sections::Shape(sections::TwinPlate{0.1, 0.008, 0.09}));
  CHECK(stick("1 in round bar Shop Steel").material.id == "shop steel");
}

TEST_CASE("channels, boxed channels and angles read by their sizes", "[cases][phrase]") {
  constexpr double in = 0.0254;
  const auto channel = cases::read_phrase<Stick>("4 x 2 x 1/4 in channel A36", parts::Design{});
  CHECK(std::get<sections::Channel>(channel.value.shape).depth == Approx(4 * in));
  CHECK(std::get<sections::Channel>(channel.value.shape).flange == Approx(0.25 * in));
  CHECK(channel.assumed.empty());
  const Stick boxed = stick("6 x 3 x 3/16 in channel boxed with 1/4 in plate A36");
  CHECK(std::get<sections::BoxedChannel>(boxed.shape).width == Approx(3 * in));
  CHECK(std::get<sections::BoxedChannel>(boxed.shape).plate == Approx(0.25 * in));
  CHECK(boxed.material.id == "A36");
  const Stick angle = stick("75 x 50 x 6 mm angle S355");
  CHECK(std::get<sections::Angle>(angle.shape).width == Approx(0.05));
  CHECK_THAT(refused("6 x 3 x 3/16 in channel boxed with plate A36"), Contains("of which plate"));
  CHECK_THAT(refused("4 x 2 x 2 in channel A36"), Contains("leaves nothing of"));
  CHECK_THAT(refused("4 x 2 x 1/4 in channel"), Contains("does not name its steel"));
}

TEST_CASE("a steel whose condition is not said is listed", "[cases][phrase]") {
  const auto tube = cases::read_phrase<Stick>("1-1/2 x 0.250 in DOM", parts::Design{});
  REQUIRE(tube.assumed.size() == 1);
  CHECK(tube.assumed[0].key == "steel");
  CHECK(tube.assumed[0].value == "DOM1020_SR");
  CHECK_THAT(tube.assumed[0].basis, Contains("as drawn") && Contains("no source"));
  CHECK(cases::read_phrase<Stick>("1-1/2 x 0.250 in DOM1020_SR", parts::Design{}).assumed.empty());
  CHECK(cases::read_phrase<parts::Plates>("2 of 5/16 in mild steel", parts::Design{})
            .assumed.size() == 1);
  CHECK(cases::read_phrase<parts::Plates>("2 of 5/16 in A36", parts::Design{}).assumed.empty());
}

TEST_CASE("a written stick reads back to an equal one", "[cases][phrase]") {
  for (const bool inches : {true, false}) {
    parts::Design names = with_own_names();
    names.inches = inches;
    for (const char* text :
         {"1-1/2 x 0.250 in DOM", "45 x 8 mm E355", "1-1/2 in solid bar",
          "3 x 2 x 0.125 in A500C_rect", "40 x 40 x 3 mm, 7 mm corners, S355H",
          "2 x 1/4 in flat bar A36", "beam wide shop steel", "38.1 mm x 0.25 in DOM",
          "4 x 2 x 1/4 in channel A36", "2 x 2 x 1/4 in angle A36",
          "6 x 3 x 3/16 in channel boxed with 1/4 in plate A36"}) {
      INFO(text);
      const Stick first = cases::read_phrase<Stick>(text, names).value;
      const std::string written = cases::write_phrase(first, names);
      INFO(written);
      CHECK(cases::read_phrase<Stick>(written, names).value == first);
    }
  }
}

TEST_CASE("a wall of half the diameter or more is refused with what would do", "[cases][phrase]") {
  CHECK(refused("1-1/2 x 0.75 in DOM") ==
        "a wall of 0.75 in is not under half of the outside diameter (1-1/2 in); give a wall under "
        "0.75 in, or a bar, `1-1/2 in solid bar`");
  CHECK(refused("30 x 20 mm E355") ==
        "a wall of 20 mm is not under half of the outside diameter (30 mm); give a wall under 15 "
        "mm, or a bar, `30 mm solid bar`");
  CHECK_THAT(refused("2 x 3 x 1 in A500C_rect"),
             Contains("a wall of 1 in is not under half of the smaller side (2 in)"));
}

TEST_CASE("a stick that cannot be read says what was found and what would do", "[cases][phrase]") {
  CHECK_THAT(refused("1-1/2 x 0.250 in"), Contains("does not name its steel; e.g. DOM for a tube"));
  CHECK(refused("1-1/2 x 0.250 in DON") == "unknown steel `DON`; did you mean `DOM`?");
  CHECK_THAT(refused("1-1/2 x 0.250 DOM"),
             Contains("`0.250` in `1-1/2 x 0.250 DOM` has no unit of length"));
  CHECK_THAT(refused("1-1/2 in DOM"), Contains("gives one size; a tube needs outside x wall"));
  CHECK_THAT(refused("1-1/2 x 0.250 in solid bar"), Contains("gives two sizes"));
  CHECK_THAT(refused("1 x 2 x 3 x 4 in A36"), Contains("gives 4 sizes"));
  CHECK_THAT(refused("0 x 0.250 in DOM"), Contains("0 in in `0 x 0.250 in DOM` is not over 0"));
  CHECK_THAT(refused("-1 x 0.250 in DOM"), Contains("is not over 0"));
  CHECK_THAT(refused("beem A36"), Contains("did you mean `beam`?"));
  CHECK(refused("beam") == "`beam` does not name its steel; e.g. `beam A36`");
  CHECK_THAT(refused("3 x 2 x 0.125 in, 0.01 in corners, A500C_rect"), Contains("corner of"));
}

}  // namespace stick_phrase_test
