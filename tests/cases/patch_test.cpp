#include "cases/patch.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/cases/case_texts.hpp"
#include "tests/cases/design_dump.hpp"
#include "tests/cases/rich_case.hpp"

namespace patch_test {
using case_texts::design;
using case_texts::kLink;
using case_texts::kRich;
using case_texts::thrown;
using case_texts::with;
using design_dump::design_text;

namespace {

parts::Design changed(const std::string& text, const parts::Patch& patch) {
  parts::Design d = design(text);
  cases::set(d, patch);
  return d;
}

std::string refused(const parts::Patch& patch) {
  parts::Design d = design(kRich);
  return thrown([&] { cases::set(d, patch); });
}

}  // namespace

TEST_CASE("a patch changes what the same words in the file would", "[cases][patch]") {
  CHECK(design_text(changed(kLink, {"bracket.drop", "7 in"})) ==
        design_text(design(with(kLink, "drop: 9 in", "drop: 7 in"))));
  CHECK(design_text(changed(kLink, {"lateral_link.bar", "1-1/2 in solid bar"})) ==
        design_text(design(with(kLink, "1-1/2 x 0.250 in DOM", "1-1/2 in solid bar"))));
  CHECK(design_text(changed(kRich, {"members.strut.section", "2 x 0.250 in DOM"})) ==
        design_text(design(with(kRich, "section: odd shop steel", "section: 2 x 0.250 in DOM"))));
  CHECK(design_text(changed(kRich, {"points.half way", "[1, 2, 3 in]"})) ==
        design_text(design(with(kRich, "half way: [100 mm, 0, 20 in]", "half way: [1, 2, 3 in]"))));
  CHECK(design_text(changed(kRich, {"factors.weld_routine", "3"})) ==
        design_text(design(with(kRich, "weld_routine: 2.25", "weld_routine: 3"))));
  CHECK(design_text(changed(kRich, {"load_cases", "[hard corner]"})) ==
        design_text(design(with(kRich, "  - slid_into_a_curb\n", ""))));
  CHECK(changed(kLink, {"title", "another"}).title == "another");
  CHECK(std::isnan(changed(kRich, {"bracket.rail_stiffness", "not sure"}).bracket->rail_stiffness));
}

TEST_CASE("parts and members can be left out", "[cases][patch]") {
  for (const char* value : {"", "none", "left out"}) {
    CHECK_FALSE(changed(kLink, {"brace", value}).brace);
    CHECK(changed(kRich, {"springs.mount", value}).springs.size() == 1);
  }
}

TEST_CASE("what a patch states is no longer assumed, and what it leaves open is",
          "[cases][patch]") {
  const auto keys = [](const parts::Design& d, const std::string& key) {
    int n = 0;
    for (const parts::Assumption& a : d.assumed) n += a.key == key ? 1 : 0;
    return n;
  };
  CHECK(keys(design(kLink), "vehicle.friction") == 1);
  CHECK(keys(changed(kLink, {"vehicle.friction", "0.7"}), "vehicle.friction") == 0);
  parts::Design d = changed(kLink, {"lateral_link.tube", "1-1/2 in solid bar"});
  CHECK(keys(d, "lateral_link.tube.steel") == 1);
  cases::set(d, {"lateral_link.bar", "1-1/2 x 0.250 in DOM"});
  CHECK(keys(d, "lateral_link.tube.steel") == 1);
  cases::set(d, {"lateral_link.bar", "1-1/2 x 0.250 in DOM1020_SR"});
  CHECK(keys(d, "lateral_link.tube.steel") == 0);
  CHECK(keys(changed(kLink, {"bracket", "none"}), "bracket.gap") == 0);
}

TEST_CASE("a patch that cannot be made is refused under its path", "[cases][patch]") {
  CHECK(refused({"bracket.drp", "7 in"}) == "bracket.drp: unknown key `drp`; did you mean `drop`?");
  CHECK(refused({"braket.drop", "7 in"}) ==
        "braket.drop: unknown key `braket`; did you mean `bracket`?");
  CHECK(refused({"bracket.drop", "7"}) ==
        "bracket.drop: 7 has no unit; a length needs one, e.g. in or mm");
  CHECK(refused({"bracket", "7 in"}) ==
        "bracket: `7 in` is no change of a whole part; `none` leaves it out, and its fields change "
        "one by one");
  CHECK(refused({"members.strt.section", "2 x 0.250 in DOM"}) ==
        "members.strt.section: there is no `strt` among `members:`; did you mean `strut`?");
  CHECK(refused({"points.half", "[0, 0, 1 in]"}) ==
        "points.half: there is no point `half`; did you mean `half way`?");
  CHECK(refused({"points.half way", "1 in"}) ==
        "points.half way: a point is [x, y, z], e.g. [0, 17, 22 in]");
  CHECK(refused({"factors.weld_routin", "2"}) ==
        "factors.weld_routin: unknown key `weld_routin`; did you mean `weld_routine`?");
  CHECK(refused({"sections.tube.wall", "1/4 in"}) ==
        "sections.tube.wall: what `sections:` holds is shared by the parts that name it; change "
        "the part instead, e.g. lateral_link.tube");
  CHECK(refused({"bracket.drop", ""}) == "bracket.drop: it has no value; give e.g. 9 in");
  parts::Design no_arm = design(kLink);
  CHECK(thrown([&] {
          cases::set(no_arm, {"arm.lower", "2 x 0.250 in DOM"});
        }) == "arm.lower: the case has no `arm`");
  CHECK(thrown([&] {
          cases::set(no_arm, {"arm", ""});
        }) == "arm: the case has none to leave out; delete this entry");
}

TEST_CASE("a refused patch changes nothing", "[cases][patch]") {
  parts::Design d = design(kRich);
  const std::string before = design_text(d);
  CHECK(thrown([&] {
          cases::set(d, {"bracket.drop", "-7 in"});
        }) == "bracket.drop: -7 in is not over 0");
  CHECK(thrown([&] {
          cases::set(d, {"factors.weld_routine", "0"});
        }) == "factors.weld_routine: 0 is under 1: a part must hold the load itself; e.g. 1.5");
  CHECK(design_text(d) == before);
}

TEST_CASE("a variant can add a part when it gives all of it", "[cases][patch]") {
  const std::string bare = kLink.substr(0, kLink.find("brace:"));
  const parts::Variant braced = {"braced",
                                 {{"brace.tube", "1-1/2 x 0.120 in DOM"},
                                  {"brace.length", "34 in"},
                                  {"brace.slope", "15 deg"},
                                  {"brace.far_end", "welded to opposite rail"}}};
  CHECK(design_text(cases::apply(design(bare), braced)) == design_text(design(kLink)));
  const parts::Variant half = {"half", {{"brace.length", "34 in"}}};
  CHECK(thrown([&] { (void)cases::apply(design(bare), half); }).find("brace: `tube` is missing") ==
        0);
}

TEST_CASE("a variant that no longer makes sense is refused", "[cases][patch]") {
  const parts::Variant bare = {"bare", {{"bracket", ""}}};
  CHECK(thrown([&] { (void)cases::apply(design(kLink), bare); }) ==
        "brace: a brace holds a bracket: add `bracket:`");
  const parts::Variant steep = {"steep", {{"lateral_link.rise", "40 in"}}};
  CHECK(thrown([&] { (void)cases::apply(design(kLink), steep); }) ==
        "lateral_link.rise: 40 in is not under the length from bolt to bolt (34 in)");
}

TEST_CASE("a patch can ask for minimum sizes and for a channel", "[cases][patch]") {
  const parts::Design least = changed(kRich, {"sizes", "minimum"});
  CHECK(least.sizes == sections::Sizes::minimum);
  for (const parts::Assumption& a : least.assumed) CHECK(a.key != "sizes");
  CHECK(design_text(changed(kRich, {"members.strut.section", "4 x 2 x 1/4 in channel A36"})) ==
        design_text(
            design(with(kRich, "section: odd shop steel", "section: 4 x 2 x 1/4 in channel A36"))));
}

}  // namespace patch_test
